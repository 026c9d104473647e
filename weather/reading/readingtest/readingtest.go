// Package readingtest helps the tests of weather files: it opens a station of the open data,
// and holds a reader to refusing what is damaged, at the right line. Tests alone use it.
package readingtest

import (
	"bytes"
	"errors"
	"io"
	"testing"

	"eyeup/internal/opendata"
	"eyeup/weather"
	"eyeup/weather/reading"
)

// Record reads the station with the id from a file of internal/opendata; without an id, the first.
func Record(t testing.TB, file, id string, read func(io.Reader) ([]*weather.Record, error)) *weather.Record {
	t.Helper()
	records, err := read(opendata.Open(t, file))
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range records {
		if id == "" || r.Station.ID == id {
			return r
		}
	}
	t.Fatalf("no station %s in %s", id, file)
	return nil
}

// Lines are the lines of a file, each with its end.
type Lines [][]byte

// Split returns the lines of a file.
func Split(whole []byte) Lines { return bytes.SplitAfter(whole, []byte("\n")) }

// Joined is the text of the lines.
func (l Lines) Joined() string { return string(bytes.Join(l, nil)) }

// First is the text of the first n lines.
func (l Lines) First(n int) string { return l[:n].Joined() }

// Without is the text without one line, counted from 1.
func (l Lines) Without(line int) string { return l[:line-1].Joined() + l[line:].Joined() }

// Swapped is the text with one line changed, counted from 1: to stands where from first stood.
func (l Lines) Swapped(line int, from, to string) string {
	changed := bytes.Replace(l[line-1], []byte(from), []byte(to), 1)
	return l[:line-1].Joined() + string(changed) + l[line:].Joined()
}

// Refused holds that a text is refused at the line, counted from 1, with a word on what to do.
func Refused(t *testing.T, name string, err error, line int) {
	t.Helper()
	var f *reading.Fault
	if !errors.As(err, &f) || f.Line != line || f.Do == "" {
		t.Errorf("%s: %v; want a refusal of line %d", name, err, line)
	}
}
