package paper

import (
	"errors"
	"fmt"
	"slices"

	"eyeup/civil"
	"eyeup/internal/stockbook"
	"eyeup/stock"
)

// Renaming is a lot that was renamed, so that its printed labels show an old name.
type Renaming struct {
	Lot stock.Lot
	On  civil.Date // when it was last renamed
}

// Renamings lists the lots that were renamed on a day or later and are not used up. The latest comes
// first.
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

// Renamed lists the codes of the lots that were renamed on a day or later. It fails where book is nil, and
// where there are none.
func Renamed(book *stockbook.Book, since civil.Date) ([]string, error) {
	if book == nil {
		return nil, errors.New("a folder does not record what was renamed and when; name a book, or give --lots for the lots")
	}
	all := Renamings(book, since)
	if len(all) == 0 {
		return nil, fmt.Errorf("no lot in stock was renamed since %s, so no label needs to be printed again", since)
	}
	codes := make([]string, len(all))
	for i, r := range all {
		codes[i] = string(r.Lot.Code)
	}
	return codes, nil
}
