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

// ReadLog reads what a logger recorded. The name serves for messages alone.
func ReadLog(name string, r io.Reader) (*logger.Record, error) {
	record, err := logger.Read(r)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return record, nil
}

// readLog reads the file that the key "logged" of a place names; it lies in the folder.
func (g *Garden) readLog(s *section, file string) *place.Series {
	if !fs.ValidPath(file) {
		s.refuseKey("logged", "%q does not lie in the folder; put the file beside %s and give its name", file, gardenFile)
		return nil
	}
	content, err := readFile(g.files, g.folder, file)
	if err != nil {
		s.refuseKey("logged", "%s is no file of the folder that can be read; put it beside %s, or leave the key out", file, gardenFile)
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

// Files names the files of the folder that the garden rests on beside garden.toml and
// stock.csv: the weather, unless it is made up, and what loggers recorded.
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
