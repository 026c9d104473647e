package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"eyeup/internal/desk"
	"eyeup/internal/garden"
	"eyeup/internal/paper"
	"eyeup/internal/plans"
	"eyeup/internal/report"
	"eyeup/internal/stockbook"
)

// writeCommand holds the ways out.
type writeCommand struct {
	Calendar writeCalendarCommand `cmd:"" help:"The jobs of a season for any calendar program."`
	Folder   writeFolderCommand   `cmd:"" help:"The garden as a folder in plain text."`
	Labels   writeLabelsCommand   `cmd:"" help:"Labels, stake tags and crate cards as PDF."`
	Lists    writeListsCommand    `cmd:"" help:"Lists for the bench, the cellar, the shop and the patch as PDF."`
	Tables   writeTablesCommand   `cmd:"" help:"Everything as spreadsheet or as CSV with types and units."`
}

// withGarden opens a garden by its book or its folder, or the invented one where none is
// named, and lets do something with it. book is nil for a folder, and so is the plan that is followed. Without a plan the
// weather of a folder is left unread, and may be missing.
func withGarden(d *door, name string, plan bool, do func(g *garden.Garden, followed *plans.Followed, book *stockbook.Book) error) error {
	if info, err := os.Stat(name); err == nil && !info.IsDir() {
		return bookFile{name}.use(d, func(b *stockbook.Book) error {
			g, followed, err := desk.OpenBookGarden(b)
			if err != nil {
				return err
			}
			return do(g, followed, b)
		})
	}
	var g *garden.Garden
	var followed *plans.Followed
	var err error
	if plan || name == "" {
		g, followed, err = openGarden(d, name)
	} else {
		g, err = paper.OpenStock(os.DirFS(name), name)
	}
	if err != nil {
		return err
	}
	return do(g, followed, nil)
}

// intoFile lets write fill a file: all of it, or nothing is changed.
func intoFile(name string, write func(io.Writer) (*report.WrittenAnswer, error)) (*report.WrittenAnswer, error) {
	var b bytes.Buffer
	a, err := write(&b)
	if err != nil {
		return nil, err
	}
	if err := os.WriteFile(name, b.Bytes(), 0o644); err != nil {
		return nil, fmt.Errorf("the file can't be written: %w", err)
	}
	a.File = name
	return a, nil
}

// intoFolder lets write fill a folder that is not there yet, or is empty.
func intoFolder(name string, write func(create func(string) (io.WriteCloser, error)) (*report.WrittenAnswer, error)) (*report.WrittenAnswer, error) {
	held, err := os.ReadDir(name)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		return nil, fmt.Errorf("--out %s can't be a folder: %w", name, err)
	}
	if len(held) > 0 {
		return nil, fmt.Errorf("--out %s holds files already, and nothing is written over; name a folder that is empty or not there yet", name)
	}
	if err := os.MkdirAll(name, 0o755); err != nil {
		return nil, fmt.Errorf("the folder can't be made: %w", err)
	}
	a, err := write(func(file string) (io.WriteCloser, error) { return os.Create(filepath.Join(name, file)) })
	if err != nil {
		return nil, err
	}
	a.File = name
	return a, nil
}
