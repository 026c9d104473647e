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

// WriteFolder writes the book as a folder: the log, people's names, the papers, and garden.toml,
// stock.csv and the weather if the book describes a garden. ReadFolder makes the same book from it.
// create opens each file.
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
	paperPrefix = "paper-" // the hash of the paper follows
	peopleFile  = "people.json"
)

// writeGarden writes the files that can be read without a book: garden.toml, stock.csv and the weather. It
// writes none if the book does not describe a garden.
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

// takePapers stores the papers of a folder in the book.
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
			return fmt.Errorf("%s: the paper was changed: its content does not have the hash in its name; put the original file back", name)
		}
	}
	return nil
}

// takePeople takes over the folder's names of people.
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
