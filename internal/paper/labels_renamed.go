package paper

import (
	"errors"
	"fmt"
	"slices"

	"eyeup/civil"
	"eyeup/internal/stockbook"
	"eyeup/stock"
)

// Renaming is a lot that got another name: its labels say the old one.
type Renaming struct {
	Lot stock.Lot
	On  civil.Date // when it was named last
}

// Renamings lists the lots that got another name on a day or after it, and still stand, the
// last renamed first.
func Renamings(book *stockbook.Book, since civil.Date) []Renaming {
	var all []Renaming
	book.Read(func(b *stock.Book) {
		for _, lot := range b.Lots() {
			if on := lot.Last("named"); lot.Count() > 0 && !on.IsZero() && !on.Before(since) {
				all = append(all, Renaming{lot, on})
			}
		}
	})
	slices.SortStableFunc(all, func(a, b Renaming) int { return int(b.On.Sub(a.On)) })
	return all
}

// Renamed lists their codes. It fails without a book, and where there are none.
func Renamed(book *stockbook.Book, since civil.Date) ([]string, error) {
	if book == nil {
		return nil, errors.New("a folder does not tell what was renamed and when; name a book, or the lots themselves by --lots")
	}
	all := Renamings(book, since)
	if len(all) == 0 {
		return nil, fmt.Errorf("no lot that stands was renamed since %s; no label is due again", since)
	}
	codes := make([]string, len(all))
	for i, r := range all {
		codes[i] = string(r.Lot.Code)
	}
	return codes, nil
}
