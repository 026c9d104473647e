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

// writeCommand holds the commands that write files.
type writeCommand struct {
	Calendar writeCalendarCommand `cmd:"" help:"Write the jobs of a season as a calendar file."`
	Folder   writeFolderCommand   `cmd:"" help:"Write the garden as a folder of plain text files."`
	Labels   writeLabelsCommand   `cmd:"" help:"Write labels, stake tags and crate cards as PDF."`
	Lists    writeListsCommand    `cmd:"" help:"Write lists for the bench, the cellar, the shop and the patch as PDF."`
	Tables   writeTablesCommand   `cmd:"" help:"Write all tables as a spreadsheet, or as CSV with types and units."`
}

// withGarden opens a garden by its book or its folder, or the invented one if none is
// named, and calls do with it. book is nil for a folder, and so is the plan that is followed. If plan is false, the weather of a
// folder is not read, and may be missing.
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

// intoFile lets write fill a file. If write fails, the file is not changed.
func intoFile(name string, write func(io.Writer) (*report.WrittenAnswer, error)) (*report.WrittenAnswer, error) {
	var b bytes.Buffer
	a, err := write(&b)
	if err != nil {
		return nil, err
	}
	if err := os.WriteFile(name, b.Bytes(), 0o644); err != nil {
		return nil, fmt.Errorf("the file can't be written: %w. Name a file in a folder that exists", err)
	}
	a.File = name
	return a, nil
}

// intoFolder lets write fill a folder that is empty or does not exist.
func intoFolder(name string, write func(create func(string) (io.WriteCloser, error)) (*report.WrittenAnswer, error)) (*report.WrittenAnswer, error) {
	held, err := os.ReadDir(name)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		return nil, fmt.Errorf("--out %s can't be used as a folder: %w. Name another", name, err)
	}
	if len(held) > 0 {
		return nil, fmt.Errorf("--out %s already has files, and none is overwritten. Name a folder that is empty or does not exist", name)
	}
	if err := os.MkdirAll(name, 0o755); err != nil {
		return nil, fmt.Errorf("the folder can't be made: %w. Name another", err)
	}
	a, err := write(func(file string) (io.WriteCloser, error) { return os.Create(filepath.Join(name, file)) })
	if err != nil {
		return nil, err
	}
	a.File = name
	return a, nil
}
