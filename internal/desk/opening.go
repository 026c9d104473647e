package desk

import (
	"fmt"

	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/plans"
	"eyeup/internal/stockbook"
	"eyeup/stock"
)

// OpenBookGarden opens the garden that a book describes, with the stock it holds, and the plan that
// the book says is followed, nil for none.
func OpenBookGarden(s *stockbook.Book) (*garden.Garden, *plans.Followed, error) {
	folder, holdings, err := s.Folder()
	if err != nil {
		return nil, nil, err
	}
	read, err := exchange.ReadGarden(folder, s.Kept())
	if err != nil {
		return nil, nil, fmt.Errorf("the book's description of the garden can't be used: %w", err)
	}
	read.Stock = holdings
	g, err := garden.New(read, folder)
	if err != nil {
		return nil, nil, err
	}
	last := plans.LastDecided(s)
	var followed *plans.Followed
	s.Read(func(b *stock.Book) { followed = plans.FollowedBy(last, b, holdings) })
	return g, followed, nil
}
