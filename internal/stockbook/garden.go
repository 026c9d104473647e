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

// A book describes its garden in entries of kind "described". There is one with what "garden" for each
// part of garden.toml (garden, normals, offset, season, prices, figures), and one with what "place" for
// each place. Their bodies are those tables as JSON, with measures as they were typed. Weather files and
// logger files are papers, each named by an entry with what "weather".
const (
	GardenFile  = "garden.toml"
	StockHeader = "variety,kind,form,count,place\n"
	logFile     = "log.jsonl"
)

// Folder returns the garden that the book describes as a folder in memory, and its stock. It fails if the
// book describes none.
func (s *Book) Folder() (MemoryFolder, []stock.Holding, error) {
	var parts, places []stock.Description
	var holdings []stock.Holding
	s.Read(func(b *stock.Book) {
		parts, places, holdings = b.Described("garden"), b.Described("place"), b.Holdings()
	})
	if len(parts) == 0 {
		return nil, nil, errors.New("the book does not describe a garden yet; make a book from a garden's folder with: eyeup book new FILE --folder FOLDER")
	}
	table, err := tableOf(parts, places)
	if err != nil {
		return nil, nil, err
	}
	text, err := toml.Marshal(table)
	if err != nil {
		return nil, nil, err
	}
	folder := MemoryFolder{GardenFile: text, "stock.csv": []byte(StockHeader)}
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

// filesOf names the files that a garden's table refers to: weather files and logger files.
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

// tableOf joins the described parts and places to the table of a garden.toml.
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

// TomlOf reads a JSON object with the types of TOML: whole numbers become int64, others float64.
func TomlOf(body []byte) (map[string]any, error) {
	d := json.NewDecoder(bytes.NewReader(body))
	d.UseNumber()
	var m map[string]any
	if err := d.Decode(&m); err != nil {
		return nil, err
	}
	return plainNumbers(m).(map[string]any), nil
}

// plainNumbers replaces each json.Number by an int64 or a float64.
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
		f, _ := v.Float64() // never fails: the decoder checked that it is a number
		return f
	}
	return v
}

// ReadFolder fills an empty book from a garden's folder. If the folder has a log, the book becomes the
// same as the one that wrote it, up to the last hash. Otherwise it takes the garden's description and
// takes in its stock on a day, as TakeFolder does.
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

// TakeFolder writes entries that describe the garden of a folder and take in its stock: all or none.
func (s *Book) TakeFolder(folder fs.FS, name string, on civil.Date) error {
	read, err := exchange.ReadGarden(folder, name)
	if err != nil {
		return err
	}
	text, err := fs.ReadFile(folder, GardenFile)
	if err != nil {
		return err
	}
	var drafts []Draft
	for _, file := range read.Files() {
		content, err := fs.ReadFile(folder, file)
		if err != nil {
			return fmt.Errorf("%s/%s: %w", name, file, err)
		}
		hash, err := s.book.KeepPaper(content)
		if err != nil {
			return err
		}
		drafts = append(drafts, Draft{"described", map[string]any{"what": "weather", "name": file, "body": map[string]any{"paper": hash}}})
	}
	described, err := describedGarden(text)
	if err != nil {
		return err
	}
	drafts = append(append(drafts, described...), StockDrafts(read.Stock)...)
	return s.AppendDrafts(drafts, on)
}

// Draft is the kind and body of an entry that has no id and day yet.
type Draft struct {
	Kind string
	Body map[string]any
}

// describedGarden drafts the entries that describe the garden of a garden.toml. The text must have been
// checked by exchange.ReadGarden.
func describedGarden(text []byte) ([]Draft, error) {
	var table map[string]any
	if err := toml.Unmarshal(text, &table); err != nil {
		return nil, err
	}
	var all []Draft
	for _, part := range slices.Sorted(maps.Keys(table)) {
		if part != "place" {
			all = append(all, Draft{"described", map[string]any{"what": "garden", "name": part, "body": table[part]}})
		}
	}
	places, _ := table["place"].([]any)
	for _, p := range places {
		body, _ := p.(map[string]any)
		name := fmt.Sprint(body["name"])
		delete(body, "name")
		all = append(all, Draft{"described", map[string]any{"what": "place", "name": name, "body": body}})
	}
	return all, nil
}

// AppendDrafts writes drafts as entries of one day, all or none.
func (s *Book) AppendDrafts(all []Draft, on civil.Date) error {
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
