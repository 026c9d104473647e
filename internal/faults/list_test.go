package faults

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// fault is one wrong sign or constant, and the package whose tests must see it.
type fault struct {
	file, old, new, test string
	at                   string // where it is listed
}

func (f fault) isWhole() bool { return f.file != "" && f.old != "" && f.test != "" && f.old != f.new }

// lists reads every list of this folder.
func lists(t *testing.T) []fault {
	t.Helper()
	names, err := filepath.Glob("*.txt")
	if err != nil || len(names) == 0 {
		t.Fatalf("no lists of faults here (%v)", err)
	}
	var all []fault
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		faults, err := parse(name, string(text))
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, faults...)
	}
	return all
}

// parse reads one list.
func parse(name, text string) ([]fault, error) {
	var all []fault
	var f fault
	for i, line := range strings.Split(text+"\n\n", "\n") {
		at := fmt.Sprintf("%s:%d", name, i+1)
		key, value, _ := strings.Cut(line, ":")
		value = strings.TrimSpace(value)
		switch {
		case strings.HasPrefix(line, "#"):
		case strings.TrimSpace(line) == "":
			if f != (fault{}) && !f.isWhole() {
				return nil, fmt.Errorf("%s: the fault above lacks its file, old or test, or changes nothing", at)
			}
			if f.isWhole() {
				all = append(all, f)
			}
			f = fault{}
		case key == "file":
			f.file, f.at = value, at
		case key == "old":
			f.old = value
		case key == "new":
			f.new = value
		case key == "test":
			f.test = value
		default:
			return nil, fmt.Errorf("%s: %q is not file:, old:, new: or test:", at, line)
		}
	}
	return all, nil
}
