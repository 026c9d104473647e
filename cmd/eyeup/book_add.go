package main

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"eyeup/civil"
	"eyeup/internal/stockbook"
)

// bookAddCommand writes entries down. They come as JSON lines with --json, as words on the
// command line, or as answers to questions.
type bookAddCommand struct {
	bookFile
	Words []string `arg:"" optional:"" help:"The kind of entry and its fields, such as: moved lot=MRMM5 count=3 to.place=glass. If not given, the program asks for each field. With --json it reads entries as lines of JSON."`
	On    string   `placeholder:"DATE" help:"The day it happened. If not given, today."`
	At    string   `placeholder:"HH:MM" help:"The time of day, if it matters."`
	Who   string   `placeholder:"ID" help:"The id of the person who writes it."`
}

// Run writes them down.
func (c bookAddCommand) Run(d *door) error {
	return c.use(d, func(b *stockbook.Book) error {
		switch {
		case d.json && len(c.Words) == 0:
			return b.AddLines(d.in, func(a stockbook.BookAnswer) error { return printLine(d.out, a) })
		case len(c.Words) == 0:
			return c.ask(d, b)
		}
		kind, words := kindAndWords(c.Words)
		return c.add(d, b, kind, words, c.On)
	})
}

// kindAndWords separates the kind, which may have several words, from the fields.
func kindAndWords(words []string) (kind string, rest []string) {
	for i, w := range words {
		if strings.Contains(w, "=") {
			return strings.Join(words[:i], " "), words[i:]
		}
	}
	return strings.Join(words, " "), nil
}

// add writes one entry and says what came of it.
func (c bookAddCommand) add(d *door, b *stockbook.Book, kind string, words []string, on string) error {
	body, err := stockbook.Body(kind, words)
	if err != nil {
		return err
	}
	e, err := b.NewEntry(kind, body)
	if err != nil {
		return err
	}
	e.On, e.At, e.Who = d.today, c.At, c.Who
	if on != "" {
		if e.On, err = civil.Parse(on); err != nil {
			return err
		}
	}
	added, err := b.Append(e)
	if err != nil {
		return err
	}
	for _, a := range added {
		if d.json {
			return printLine(d.out, stockbook.BookAnswer{ID: a.ID, Born: a.Born, Notices: a.Notices})
		}
		fmt.Fprintf(d.out, "%s on %s: written down (entry %s)\n", kind, e.On, a.ID)
		for _, born := range a.Born {
			fmt.Fprintf(d.out, "  label: %s\n", born.Code)
		}
		for _, n := range a.Notices {
			fmt.Fprintf(d.out, "  note: %s\n", n)
		}
	}
	return nil
}

// ask asks for an entry, one thing after another, until the answers end.
func (c bookAddCommand) ask(d *door, b *stockbook.Book) error {
	in := bufio.NewScanner(d.in)
	for {
		kind, more := prompt(d, in, "what happened (leave empty to finish)")
		if !more || kind == "" {
			return in.Err()
		}
		questions, err := stockbook.Questions(kind)
		if err != nil {
			fmt.Fprintf(d.errs, "  %v\n", err)
			continue
		}
		on, _ := prompt(d, in, "on which day [today]")
		var words []string
		for _, q := range questions {
			text := "  " + q.Name
			if !q.Due {
				text += " [none]"
			}
			answer, more := prompt(d, in, text)
			if !more {
				return errors.New("the input ended in the middle of an entry, so it was not written down. Answer every question of it")
			}
			if answer == "." {
				break
			}
			if answer != "" {
				words = append(words, q.Name+"="+answer)
			}
		}
		if err := c.add(d, b, kind, words, on); err != nil {
			fmt.Fprintf(d.errs, "  %v\n", err)
		}
	}
}

// prompt asks one question. A dot as answer leaves all further fields empty.
func prompt(d *door, in *bufio.Scanner, text string) (answer string, more bool) {
	fmt.Fprintf(d.errs, "%s: ", text)
	more = in.Scan()
	return strings.TrimSpace(in.Text()), more
}

// printLine writes an answer as one line of JSON, at once.
func printLine(w io.Writer, a any) error {
	line, err := json.Marshal(a)
	if err != nil {
		return err
	}
	_, err = w.Write(append(line, '\n'))
	return err
}

// creator returns a function that makes files in a folder, and the folder if needed.
func creator(folder string) func(name string) (io.WriteCloser, error) {
	return func(name string) (io.WriteCloser, error) {
		path := filepath.Join(folder, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			return nil, err
		}
		return os.OpenFile(path, os.O_CREATE|os.O_TRUNC|os.O_WRONLY, 0o600)
	}
}
