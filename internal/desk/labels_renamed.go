package desk

import (
	"errors"
	"fmt"

	"eyeup/civil"
	"eyeup/stock"
)

// Renamed lists the lots that got another name on a day or after it, and still stand: their
// labels say the old one. It fails without a book, and where there are none.
func Renamed(book *StockBook, since civil.Date) ([]string, error) {
	if book == nil {
		return nil, errors.New("a folder does not tell what was renamed and when; name a book, or the lots themselves by --lots")
	}
	var codes []string
	var fault error
	book.Read(func(b *stock.Book) {
		for _, lot := range b.Lots() {
			if lot.Count() == 0 {
				continue
			}
			life, err := b.Life(lot.ID.String())
			if err != nil {
				fault = err
				return
			}
			for _, m := range life {
				if m.Kind == "named" && !m.On.Before(since) {
					codes = append(codes, string(lot.Code))
					break
				}
			}
		}
	})
	if fault == nil && len(codes) == 0 {
		fault = fmt.Errorf("no lot that stands was renamed since %s; no label is due again", since)
	}
	return codes, fault
}
