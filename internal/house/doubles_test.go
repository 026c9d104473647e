package house

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// mostEqual is from how many equal lines on two places count as a double.
const mostEqual = 10

// doubled names pairs of files that may share as many lines, and why one function would not
// serve better. Keep it short.
var doubled = map[string]string{
	"season/believe_test.go season/prove/garden_test.go": "the tests inside season can't import a package that imports season",
}

// spot is a line that counts: not blank, no comment, no import, no lone brackets.
type spot struct {
	file string
	line int // from 1
	text string
}

// double is a run of equal lines in two places.
type double struct {
	a, b  spot // where each begins
	lines int
}

// TestDoubles holds that no two places share ten or more equal lines.
func TestDoubles(t *testing.T) {
	var all [][]spot
	err := fs.WalkDir(os.DirFS("../.."), ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name := d.Name()
		if d.IsDir() && path != "." && (name[0] == '.' || name == "testdata" || name == "node_modules") {
			return fs.SkipDir
		}
		if d.IsDir() || filepath.Ext(name) != ".go" {
			return nil
		}
		text, err := os.ReadFile(filepath.Join("../..", path))
		if err == nil && !generated.Match(text) {
			all = append(all, spots(path, string(text)))
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	met := map[string]bool{}
	for _, d := range doubles(all, mostEqual) {
		pair := d.a.file + " " + d.b.file
		if _, may := doubled[pair]; may {
			met[pair] = true
			continue
		}
		t.Errorf("%s:%d and %s:%d share %d lines; let both call one function (from %q)", d.a.file, d.a.line, d.b.file, d.b.line, d.lines, d.a.text)
	}
	for pair := range doubled {
		if !met[pair] {
			t.Errorf("%s share nothing any more; take them out of doubled", pair)
		}
	}
}

var generated = regexp.MustCompile(`(?m)^// Code generated .* DO NOT EDIT\.$`)

// spots returns the lines of a file that count, with white space folded.
func spots(file, text string) (all []spot) {
	imports := false
	for i, line := range strings.Split(text, "\n") {
		line = strings.Join(strings.Fields(line), " ")
		switch {
		case imports:
			imports = line != ")"
		case line == "import (":
			imports = true
		case strings.HasPrefix(line, "import "), strings.HasPrefix(line, "//"), strings.Trim(line, "(){}[],; ") == "":
		default:
			all = append(all, spot{file, i + 1, line})
		}
	}
	return all
}

// doubles returns the longest runs of at least so many equal lines in two places, which do not
// overlap; a run that stands in three places is told as that of each later one with the first.
func doubles(files [][]spot, least int) (all []double) {
	type place struct{ file, at int }
	first := map[string]place{} // where so many lines on end stand first
	for f, lines := range files {
		for i := 0; i+least <= len(lines); i++ {
			key := run(lines[i : i+least])
			p, known := first[key]
			if !known || p.file == f && p.at+least > i {
				if !known {
					first[key] = place{f, i}
				}
				continue
			}
			before, n := files[p.file][p.at:], 0
			for n < len(before) && i+n < len(lines) && before[n].text == lines[i+n].text && (p.file != f || p.at+n < i) {
				n++
			}
			all = append(all, double{before[0], lines[i], n})
			i += n - least
		}
	}
	return all
}

// run is the text of some lines on end.
func run(lines []spot) string {
	var b strings.Builder
	for _, l := range lines {
		fmt.Fprintln(&b, l.text)
	}
	return b.String()
}

// TestFindsDoubles plants doubles.
func TestFindsDoubles(t *testing.T) {
	const body = "a()\n\n// said otherwise\nb(  1)\n}\nc()\n"
	for _, c := range []struct {
		name  string
		files []string
		want  []string
	}{
		{"none", []string{body, "a()\nb(1)\nd()\n"}, nil},
		{"in two files", []string{"x()\n" + body, "a()\nb( 1)\n c()\ny()\n"}, []string{"0:2 1:1 3"}},
		{"in one file", []string{body + "x()\n" + body}, []string{"0:1 0:8 3"}},
		{"in three", []string{body, body, body}, []string{"0:1 1:1 3", "0:1 2:1 3"}},
		{"longer", []string{body + "d()\n", body + "d()\n"}, []string{"0:1 1:1 4"}},
		{"imports are none", []string{"import (\n\"a\"\n\"b\"\n\"c\"\n)\n", "import (\n\"a\"\n\"b\"\n\"c\"\n)\n"}, nil},
		{"a row of equal lines", []string{"a()\na()\na()\na()\n"}, nil},
	} {
		var files [][]spot
		for i, text := range c.files {
			files = append(files, spots(fmt.Sprint(i), text))
		}
		var got []string
		for _, d := range doubles(files, 3) {
			got = append(got, fmt.Sprintf("%s:%d %s:%d %d", d.a.file, d.a.line, d.b.file, d.b.line, d.lines))
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
