package exchange

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"slices"

	"eyeup/place"
	"eyeup/place/logger"
	"eyeup/weather/reading"
)

// ReadLog reads a logger's record. The name is used only in messages.
func ReadLog(name string, r io.Reader) (*logger.Record, error) {
	record, err := logger.Read(r)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return record, nil
}

// readLog reads the file that the key "logged" of a place names, which must be in the folder.
func (g *Garden) readLog(s *section, file string) *place.Series {
	if !fs.ValidPath(file) {
		s.refuseFile("logged", fmt.Sprintf("%q is not in the folder; put the file beside %s and give its name", file, gardenFile), file)
		return nil
	}
	content, err := readFile(g.files, g.folder, file)
	if err != nil {
		s.refuseFile("logged", fmt.Sprintf("the file %s is not in the folder or can't be read; put it beside %s, or leave the key out", file, gardenFile), file)
		return nil
	}
	record, err := logger.Read(bytes.NewReader(content))
	var fault *reading.Fault
	switch {
	case errors.As(err, &fault):
		s.refuseKey("logged", "%s, %v", file, fault)
		return nil
	case err != nil:
		s.refuseKey("logged", "%s: %v", file, err)
		return nil
	}
	return &record.Series
}

// refuseFile reports a missing file: what is the message for a folder; for a form it says that
// files come with a garden folder.
func (s *section) refuseFile(key, what, file string) {
	s.refuseAs(s.place(key), key, key+": "+what, fmt.Sprintf("the garden has no file %q; files are imported with a garden folder", file))
}

// Files returns the names of the files that the garden uses beside garden.toml and stock.csv:
// the weather, unless it is made up, and the loggers' records.
func (g *Garden) Files() []string {
	var all []string
	if !g.Weather.IsMadeUp() {
		all = append(all, g.Weather.File)
	}
	for _, p := range g.Places {
		if p.LogFile != "" && !slices.Contains(all, p.LogFile) {
			all = append(all, p.LogFile)
		}
	}
	return all
}
