package desk

import (
	"eyeup/civil"
	"eyeup/internal/stockbook"
)

// ReadList looks through a stock list, CSV or XLSX. Nothing is written down.
func (d *Desk) ReadList(name string, content []byte) (*stockbook.StockListAnswer, error) {
	return stockbook.ReadStock(name, content, nil, d.book)
}

// WriteList takes in a stock list, all of it or nothing.
func (d *Desk) WriteList(list *stockbook.StockListAnswer, on civil.Date, by stockbook.Writer) error {
	return list.Write(d.book.As(by), on)
}
