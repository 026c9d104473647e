package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// differences are what two answers to one command differ in.
type differences struct {
	hard []string // keys, numbers, dates, codes, counts
	soft []string // sentences
	told []string // sentences in which a number differs: a matter of words or not, so it is shown
}

// compare notes where the parts of two answers differ.
func (d *differences) compare(old, young map[string][]byte) {
	for _, name := range slices.Sorted(maps.Keys(old)) {
		if _, there := young[name]; !there {
			d.hard = append(d.hard, name+": not there any more")
			continue
		}
		d.part(name, tidied(old[name]), tidied(young[name]))
	}
	for _, name := range slices.Sorted(maps.Keys(young)) {
		if _, there := old[name]; !there {
			d.hard = append(d.hard, name+": not there before")
		}
	}
}

// endings notes which commands did not end as they should, with either program: what they would
// have answered is not compared then.
func (d *differences) endings(parts map[string][]byte) {
	for _, name := range slices.Sorted(maps.Keys(parts)) {
		if strings.HasSuffix(name, ended) {
			d.hard = append(d.hard, fmt.Sprintf("%s: %s", name, bytes.TrimSpace(parts[name])))
		}
	}
}

// part compares one file, or one thing printed, by what it is.
func (d *differences) part(name string, old, young []byte) {
	if bytes.Equal(old, young) {
		return
	}
	switch filepath.Ext(name) {
	case ".json", ".jsonl":
		if d.json(name, old, young) {
			return
		}
	case ".csv":
		if d.table(name, old, young) {
			return
		}
	case ".pdf":
		old, young = paperText(old), paperText(young)
	case ".xlsx":
		old, young = unzipped(old), unzipped(young)
	}
	d.text(name, string(old), string(young))
}

// json compares values one by one; it reports whether both are JSON.
func (d *differences) json(name string, old, young []byte) bool {
	a, err1 := values(old)
	b, err2 := values(young)
	if err1 != nil || err2 != nil {
		return false
	}
	if len(a) == 1 && len(b) == 1 {
		d.value(name, a[0], b[0])
	} else {
		d.value(name, a, b)
	}
	return true
}

// values reads JSON values, one after the other.
func values(data []byte) (all []any, err error) {
	for r := json.NewDecoder(bytes.NewReader(data)); ; {
		r.UseNumber()
		var v any
		if err := r.Decode(&v); errors.Is(err, io.EOF) {
			return all, nil
		} else if err != nil {
			return nil, err
		}
		all = append(all, v)
	}
}

func (d *differences) value(path string, old, young any) {
	switch a := old.(type) {
	case map[string]any:
		if b, is := young.(map[string]any); is {
			d.object(path, a, b)
			return
		}
	case []any:
		if b, is := young.([]any); is {
			if len(a) != len(b) {
				d.hard = append(d.hard, fmt.Sprintf("%s: %d items, now %d", path, len(a), len(b)))
			}
			for i := range min(len(a), len(b)) {
				d.value(fmt.Sprintf("%s[%d]", path, i), a[i], b[i])
			}
			return
		}
	case string:
		if b, is := young.(string); is {
			d.string(path, a, b)
			return
		}
	}
	if old != young {
		d.hard = append(d.hard, fmt.Sprintf("%s: %s, now %s", path, shown(old), shown(young)))
	}
}

func (d *differences) object(path string, old, young map[string]any) {
	for _, key := range slices.Sorted(maps.Keys(old)) {
		if b, there := young[key]; !there {
			d.hard = append(d.hard, path+"."+key+": not there any more")
		} else if key != "written" { // the moment of the run
			d.value(path+"."+key, old[key], b)
		}
	}
	for _, key := range slices.Sorted(maps.Keys(young)) {
		if _, there := old[key]; !there {
			d.hard = append(d.hard, path+"."+key+": not there before")
		}
	}
}

// string compares two strings: by the letter, but for sentences.
func (d *differences) string(path, old, young string) {
	switch {
	case old == young:
	case named(path) || !sentence(old) || !sentence(young):
		d.hard = append(d.hard, fmt.Sprintf("%s: %s, now %s", path, shown(old), shown(young)))
	case !slices.Equal(figures(old), figures(young)):
		d.told = append(d.told, fmt.Sprintf("%s:\n      %s\n      %s", path, old, young))
	default:
		d.soft = append(d.soft, fmt.Sprintf("%s:\n      %s\n      %s", path, old, young))
	}
}

// table compares cell by cell; it reports whether both are tables.
func (d *differences) table(name string, old, young []byte) bool {
	a, err1 := csv.NewReader(bytes.NewReader(old)).ReadAll()
	b, err2 := csv.NewReader(bytes.NewReader(young)).ReadAll()
	if err1 != nil || err2 != nil || len(a) == 0 || len(b) == 0 {
		return false
	}
	if !slices.Equal(a[0], b[0]) {
		d.hard = append(d.hard, fmt.Sprintf("%s: columns %q, now %q", name, a[0], b[0]))
		return true
	}
	if len(a) != len(b) {
		d.hard = append(d.hard, fmt.Sprintf("%s: %d lines, now %d", name, len(a), len(b)))
	}
	for i := 1; i < min(len(a), len(b)); i++ {
		for k, column := range a[0] {
			d.string(fmt.Sprintf("%s:%d.%s", name, i+1, column), a[i][k], b[i][k])
		}
	}
	return true
}

// text compares the numbers, dates and codes of two texts, in their order.
func (d *differences) text(name, old, young string) {
	a, b := figures(old), figures(young)
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			d.hard = append(d.hard, fmt.Sprintf("%s: number %d is %s, now %s (after %q)", name, i+1, a[i], b[i], a[max(0, i-3):i]))
			return
		}
	}
	if len(a) != len(b) {
		d.hard = append(d.hard, fmt.Sprintf("%s: %d numbers, now %d", name, len(a), len(b)))
		return
	}
	d.soft = append(d.soft, name+": the words differ, the numbers don't")
}

// print lists what differs.
func (d *differences) print(name string, prose bool) {
	if len(d.hard)+len(d.told) == 0 && (!prose || len(d.soft) == 0) {
		return
	}
	fmt.Println(name)
	for i, line := range d.hard {
		if i == most {
			fmt.Printf("  and %d more\n", len(d.hard)-most)
			break
		}
		fmt.Println("  " + line)
	}
	for _, line := range d.told {
		fmt.Println("  other numbers in a sentence (not counted): " + line)
	}
	if prose {
		for _, line := range d.soft {
			fmt.Println("  words: " + line)
		}
	}
}

// shown is v as JSON, cut where it is long.
func shown(v any) string {
	data, err := json.Marshal(v)
	if err != nil {
		return err.Error()
	}
	if len(data) > 120 {
		return string(data[:120]) + "…"
	}
	return string(data)
}

// named reports whether what stands at the end of the path is a name, whatever it looks like.
func named(path string) bool {
	key := path[strings.LastIndex(path, ".")+1:]
	key, _, _ = strings.Cut(key, "[")
	return slices.Contains([]string{"name", "plan", "variety", "place", "kind", "form", "code", "id", "from", "to"}, key)
}

var measure = regexp.MustCompile(`^[-+−]?[\d.,]+ \S+$`)

// sentence reports whether a string is for reading: it has words, and is no measure.
func sentence(s string) bool {
	return strings.ContainsRune(s, ' ') && !measure.MatchString(s)
}

var figure = regexp.MustCompile(`\d+(?:[.,:/-]\d+)*`)

// figures returns the numbers and dates of a text.
func figures(s string) []string { return figure.FindAllString(s, -1) }
