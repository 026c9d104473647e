package stockbook

import (
	"io/fs"

	"eyeup/internal/demo"
	"eyeup/internal/exchange"
	"eyeup/stock"
)

// Demo fills an empty book with the invented garden: its description, its varieties, and three years of
// history. The entries are the same each time.
func (s *Book) Demo() error {
	text, err := fs.ReadFile(demo.Garden(), GardenFile)
	if err != nil {
		return err
	}
	all, err := describedGarden(text)
	if err != nil {
		return err
	}
	read, err := exchange.ReadGarden(demo.Garden(), "the invented garden")
	if err != nil {
		return err
	}
	scribe := demo.NewScribe()
	var entries []stock.Entry
	for _, one := range append(all, describedVarieties(read.Stock)...) {
		entries = append(entries, scribe.Entry(demo.Begin, one.Kind, one.Body))
	}
	if _, err = s.Append(append(entries, scribe.History()...)...); err != nil {
		return err
	}
	return s.Call(demo.Gardener, "the gardener")
}
