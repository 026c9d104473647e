package stockbook

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"

	"github.com/pelletier/go-toml/v2"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/stock"
)

// A book describes its garden by entries "described": what "garden", one for each part of
// garden.toml (garden, normals, offset, season, prices, figures), and what "place", one
// for each place. Their bodies are those tables as JSON, measures as they were typed. The
// weather file and what loggers recorded are papers, each named by what "weather".
const (
	GardenFile  = "garden.toml"
	StockHeader = "variety,kind,form,count,place\n"
	logFile     = "log.jsonl"
)

// Folder lays out what the book says of the garden as a folder, in memory.
func (s *Book) Folder() (Drawer, []stock.Holding, error) {
	var parts, places []stock.Description
	var holdings []stock.Holding
	s.Read(func(b *stock.Book) {
		parts, places, holdings = b.Described("garden"), b.Described("place"), b.Holdings()
	})
	if len(parts) == 0 {
		return nil, nil, errors.New("the book does not say yet where the garden lies; bring in a folder by: eyeup book new FILE --folder FOLDER")
	}
	table, err := tableOf(parts, places)
	if err != nil {
		return nil, nil, err
	}
	text, err := toml.Marshal(table)
	if err != nil {
		return nil, nil, err
	}
	folder := Drawer{GardenFile: text, "stock.csv": []byte(StockHeader)}
	for _, name := range filesOf(table) {
		content, named, err := s.book.Weather(name)
		if err != nil {
			return nil, nil, err
		}
		if named {
			folder[name] = content
		}
	}
	return folder, holdings, nil
}

// filesOf names the files that a garden's table rests on: weather, and what loggers recorded.
func filesOf(table map[string]any) []string {
	var all []string
	name := func(in any, key string) {
		if m, ok := in.(map[string]any); ok {
			if file, _ := m[key].(string); file != "" {
				all = append(all, file)
			}
		}
	}
	name(table["garden"], "weather")
	places, _ := table["place"].([]any)
	for _, p := range places {
		name(p, "logged")
	}
	return all
}

// tableOf puts garden.toml together again from its parts.
func tableOf(parts, places []stock.Description) (map[string]any, error) {
	table := map[string]any{}
	for _, p := range parts {
		body, err := TomlOf(p.Body)
		if err != nil {
			return nil, fmt.Errorf("garden %s: %w", p.Name, err)
		}
		table[p.Name] = body
	}
	var all []any
	for _, p := range places {
		body, err := TomlOf(p.Body)
		if err != nil {
			return nil, fmt.Errorf("place %s: %w", p.Name, err)
		}
		if gone, _ := body["gone"].(bool); gone {
			continue
		}
		body["name"] = p.Name
		all = append(all, body)
	}
	table["place"] = all
	return table, nil
}

// TomlOf reads JSON as TOML would have it: whole numbers stay whole.
func TomlOf(body []byte) (map[string]any, error) {
	d := json.NewDecoder(bytes.NewReader(body))
	d.UseNumber()
	var m map[string]any
	if err := d.Decode(&m); err != nil {
		return nil, err
	}
	return plainNumbers(m).(map[string]any), nil
}

func plainNumbers(v any) any {
	switch v := v.(type) {
	case map[string]any:
		for k, x := range v {
			v[k] = plainNumbers(x)
		}
	case []any:
		for i, x := range v {
			v[i] = plainNumbers(x)
		}
	case json.Number:
		if n, err := v.Int64(); err == nil {
			return n
		}
		f, _ := v.Float64() // the decoder has read it as a number
		return f
	}
	return v
}

// ReadFolder makes an empty book of a garden folder: from its log, to the same last hash,
// where it has one; else its garden is described and its stock taken in on a day.
func (s *Book) ReadFolder(folder fs.FS, name string, on civil.Date) error {
	log, err := folder.Open(logFile)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return s.TakeFolder(folder, name, on)
	case err != nil:
		return err
	}
	defer log.Close()
	if err := errors.Join(s.takePapers(folder), s.takePeople(folder)); err != nil {
		return err
	}
	if err := s.book.ReadLog(log); err != nil {
		return fmt.Errorf("%s: %w", path.Join(name, logFile), err)
	}
	return nil
}

// TakeFolder describes the garden of a folder and takes in its stock, in one go.
func (s *Book) TakeFolder(folder fs.FS, name string, on civil.Date) error {
	read, err := exchange.ReadGarden(folder, name)
	if err != nil {
		return err
	}
	text, err := fs.ReadFile(folder, GardenFile)
	if err != nil {
		return err
	}
	var bodies []Said
	for _, file := range read.Files() {
		content, err := fs.ReadFile(folder, file)
		if err != nil {
			return fmt.Errorf("%s/%s: %w", name, file, err)
		}
		hash, err := s.book.KeepPaper(content)
		if err != nil {
			return err
		}
		bodies = append(bodies, Said{"described", map[string]any{"what": "weather", "name": file, "body": map[string]any{"paper": hash}}})
	}
	described, err := describedGarden(text)
	if err != nil {
		return err
	}
	bodies = append(append(bodies, described...), StockSaid(read.Stock)...)
	return s.AppendSaid(bodies, on)
}

// Said is an entry yet without id and day.
type Said struct {
	Kind string
	Body map[string]any
}

// describedGarden makes entries of garden.toml, which has been read and found good.
func describedGarden(text []byte) ([]Said, error) {
	var table map[string]any
	if err := toml.Unmarshal(text, &table); err != nil {
		return nil, err
	}
	var all []Said
	for _, part := range slices.Sorted(maps.Keys(table)) {
		if part != "place" {
			all = append(all, Said{"described", map[string]any{"what": "garden", "name": part, "body": table[part]}})
		}
	}
	places, _ := table["place"].([]any)
	for _, p := range places {
		body, _ := p.(map[string]any)
		name := fmt.Sprint(body["name"])
		delete(body, "name")
		all = append(all, Said{"described", map[string]any{"what": "place", "name": name, "body": body}})
	}
	return all, nil
}

// AppendSaid writes entries of one day in one go.
func (s *Book) AppendSaid(all []Said, on civil.Date) error {
	entries := make([]stock.Entry, len(all))
	for i, one := range all {
		body, err := json.Marshal(one.Body)
		if err != nil {
			return err
		}
		if entries[i], err = s.NewEntry(one.Kind, body); err != nil {
			return err
		}
		entries[i].On = on
	}
	_, err := s.Append(entries...)
	return err
}
