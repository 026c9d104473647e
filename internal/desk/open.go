package desk

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/stockbook"
	"eyeup/stock"
)

// Scratch is a desk whose book is thrown away when it is closed.
type Scratch struct {
	*Desk
	folder string
}

// Close closes the book and deletes it.
func (s *Scratch) Close() error {
	s.Rest()
	return errors.Join(s.book.Close(), os.RemoveAll(s.folder))
}

// DemoDesk opens the invented garden, with three years of history, for the next season from today on.
func DemoDesk(today civil.Date, now func() time.Time) (*Scratch, error) {
	return scratch(now, func(b *stockbook.Book) error {
		if err := b.Demo(); err != nil {
			return err
		}
		return planFor(b, today)
	})
}

// FolderDesk opens a garden folder. Entries are kept only while the program runs.
func FolderDesk(folder fs.FS, name string, today civil.Date, now func() time.Time) (*Scratch, error) {
	return scratch(now, func(b *stockbook.Book) error { return b.ReadFolder(folder, name, today) })
}

func scratch(now func() time.Time, fill func(*stockbook.Book) error) (*Scratch, error) {
	folder, err := os.MkdirTemp("", "eyeup-")
	if err != nil {
		return nil, fmt.Errorf("no temporary folder could be made for the book: %w", err)
	}
	b, err := stockbook.New(filepath.Join(folder, "scratch.book"), now)
	if err != nil {
		return nil, errors.Join(err, os.RemoveAll(folder))
	}
	err = fill(b)
	var d *Desk
	if err == nil {
		d, err = NewDesk(b, true)
	}
	if err != nil {
		return nil, errors.Join(err, b.Close(), os.RemoveAll(folder))
	}
	return &Scratch{d, folder}, nil
}

// planFor lets the garden plan for the season that lies ahead of today, where its own is
// another.
func planFor(s *stockbook.Book, today civil.Date) error {
	ahead, err := garden.OpenDemo(today)
	if err != nil {
		return err
	}
	g, _, err := OpenBookGarden(s)
	if err != nil || g.Season.PlantYear == ahead.Season.PlantYear {
		return err
	}
	body, err := seasonBody(s)
	if err != nil || body == nil {
		return err
	}
	body["plant_year"] = ahead.Season.PlantYear
	return s.AppendDrafts([]stockbook.Draft{{Kind: "described", Body: map[string]any{"what": "garden", "name": "season", "body": body}}}, today)
}

// seasonBody is what the book says of the season.
func seasonBody(s *stockbook.Book) (body map[string]any, err error) {
	s.Read(func(b *stock.Book) {
		for _, part := range b.Described("garden") {
			if part.Name == "season" {
				body, err = stockbook.TomlOf(part.Body)
			}
		}
	})
	return body, err
}
