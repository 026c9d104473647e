package desk

import "eyeup/civil"

// ReadList looks through a stock list, CSV or XLSX. Nothing is written down.
func (d *Desk) ReadList(name string, content []byte) (*StockListAnswer, error) {
	return ReadStock(name, content, nil, d.book)
}

// WriteList takes in a stock list, all of it or nothing.
func (d *Desk) WriteList(list *StockListAnswer, on civil.Date, by Writer) error {
	return list.Write(d.book.As(by), on)
}
