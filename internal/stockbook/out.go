package stockbook

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strings"

	"eyeup/internal/exchange"
)

// WriteFolder writes the book as a folder that ReadFolder makes the same book of:
// garden.toml, stock.csv, the log, the papers and the names of people. Each file is
// opened by create.
func (s *Book) WriteFolder(create func(name string) (io.WriteCloser, error)) error {
	write := func(name string, f func(io.Writer) error) error {
		w, err := create(name)
		if err != nil {
			return err
		}
		if err := f(w); err != nil {
			_ = w.Close()
			return fmt.Errorf("%s: %w", name, err)
		}
		return w.Close()
	}
	if err := write(logFile, s.book.WriteLog); err != nil {
		return err
	}
	people, err := s.book.People()
	if err != nil {
		return err
	}
	if len(people) > 0 {
		if err := write(peopleFile, func(w io.Writer) error { return json.NewEncoder(w).Encode(people) }); err != nil {
			return err
		}
	}
	papers, err := s.book.Papers()
	if err != nil {
		return err
	}
	for _, hash := range papers {
		content, err := s.book.Paper(hash)
		if err != nil {
			return err
		}
		if err := write(paperPrefix+hash, func(w io.Writer) error { _, err := w.Write(content); return err }); err != nil {
			return err
		}
	}
	return s.writeGarden(create, write)
}

const (
	paperPrefix = "paper-" // before its hash
	peopleFile  = "people.json"
)

// writeGarden writes what can be read without a book: garden.toml, stock.csv, the weather.
// A book that does not say where its garden lies has none of it.
func (s *Book) writeGarden(create func(string) (io.WriteCloser, error), write func(string, func(io.Writer) error) error) error {
	folder, holdings, err := s.Folder()
	if err != nil {
		return nil
	}
	read, err := exchange.ReadGarden(folder, s.Kept())
	if err != nil {
		return err
	}
	read.Stock = holdings
	if err := exchange.WriteGarden(read, create); err != nil {
		return err
	}
	for _, name := range read.Files() {
		if err := write(name, func(w io.Writer) error { _, err := w.Write(folder[name]); return err }); err != nil {
			return err
		}
	}
	return nil
}

// takePapers keeps the papers of a folder in the book.
func (s *Book) takePapers(folder fs.FS) error {
	names, err := fs.Glob(folder, paperPrefix+"*")
	if err != nil {
		return err
	}
	for _, name := range names {
		content, err := fs.ReadFile(folder, name)
		if err != nil {
			return err
		}
		hash, err := s.book.KeepPaper(content)
		if err != nil {
			return err
		}
		if hash != strings.TrimPrefix(name, paperPrefix) {
			return fmt.Errorf("%s: the paper was changed; its name tells the hash of what it says", name)
		}
	}
	return nil
}

// takePeople calls people as the folder does.
func (s *Book) takePeople(folder fs.FS) error {
	text, err := fs.ReadFile(folder, peopleFile)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	var people map[string]string
	if err == nil {
		err = json.Unmarshal(text, &people)
	}
	if err != nil {
		return fmt.Errorf("%s: %w", peopleFile, err)
	}
	for id, name := range people {
		if err := s.book.Call(id, name); err != nil {
			return err
		}
	}
	return nil
}
