package desk

import (
	"eyeup/civil"
	"eyeup/internal/stockbook"
)

// ReadList reads a stock list, CSV or XLSX, and checks it. It writes nothing into the book.
func (d *Desk) ReadList(name string, content []byte) (*stockbook.StockListAnswer, error) {
	return stockbook.ReadStock(name, content, nil, d.book)
}

// WriteList writes a stock list into the book, all of it or nothing.
func (d *Desk) WriteList(list *stockbook.StockListAnswer, on civil.Date, by stockbook.Writer) error {
	return list.Write(d.book.As(by), on)
}
