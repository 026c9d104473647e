package main

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/alecthomas/kong"

	"eyeup/internal/exchange"
)

// papers are the pages that a reader meets, from this folder.
func papers(t *testing.T) map[string]string {
	t.Helper()
	texts := map[string]string{}
	for _, folder := range []string{"../../*.md", "../../docs/*.md"} {
		files, err := filepath.Glob(folder)
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: no page (%v)", folder, err)
		}
		for _, file := range files {
			texts[file] = pageText(t, file)
		}
	}
	return texts
}

func pageText(t *testing.T, file string) string {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// TestDocsNameEveryCommand asks that every command is explained on a page written by hand.
func TestDocsNameEveryCommand(t *testing.T) {
	var all strings.Builder
	for file, text := range papers(t) {
		if filepath.Base(file) != "commands.md" {
			all.WriteString(text)
		}
	}
	for _, words := range leaves(kong.Must(&commands{}).Model.Node, nil) {
		if command := "eyeup " + strings.Join(words, " "); !strings.Contains(all.String(), command) {
			t.Errorf("no page but docs/commands.md speaks of %q", command)
		}
	}
}

var (
	linked  = regexp.MustCompile(`\]\(([^)\s]+)\)|src="([^"]+)"`)
	heading = regexp.MustCompile(`(?m)^#+ (.+)$`)
	unsaid  = regexp.MustCompile(`[^\p{L}\p{N}\- ]`)
)

// anchors are the addresses of a page's headings, as code hosts make them: in small letters,
// without punctuation, a stroke for each space.
func anchors(text string) []string {
	var all []string
	for _, h := range heading.FindAllStringSubmatch(text, -1) {
		all = append(all, strings.ReplaceAll(unsaid.ReplaceAllString(strings.ToLower(h[1]), ""), " ", "-"))
	}
	return all
}

// TestDocsLinks follows every link from page to page, to the heading, and to every picture.
func TestDocsLinks(t *testing.T) {
	followed := 0
	for file, text := range papers(t) {
		for _, link := range linked.FindAllStringSubmatch(text, -1) {
			to := link[1] + link[2]
			if strings.Contains(to, "://") {
				continue
			}
			followed++
			page, part, _ := strings.Cut(to, "#")
			target := file
			if page != "" {
				target = filepath.Join(filepath.Dir(file), page)
			}
			if _, err := os.Stat(target); err != nil {
				t.Errorf("%s links to %s: %v", file, to, err)
				continue
			}
			if part != "" && !slices.Contains(anchors(pageText(t, target)), part) {
				t.Errorf("%s links to %s, where no heading is so called", file, to)
			}
		}
	}
	if followed < 40 {
		t.Errorf("only %d links were followed", followed)
	}
}

// TestDocsGardenFile asks that every key that the garden's folder may have is explained.
func TestDocsGardenFile(t *testing.T) {
	text := pageText(t, "../../docs/garden-file.md") + pageText(t, "../../docs/planting-list.md")
	parts := exchange.Parts()
	for _, sort := range []exchange.Sort{exchange.Store, exchange.Room, exchange.Glass, exchange.Frame, exchange.Ground} {
		parts = append(parts, exchange.PlacePart(sort))
	}
	asked := 0
	for _, part := range parts {
		for _, word := range exchange.Words(part) {
			for _, key := range strings.Split(word.Key, ".") {
				if key == "#" || key == "*" {
					continue
				}
				asked++
				if !strings.Contains(text, "`"+key+"`") && !strings.Contains(text, "patch."+key+"]") {
					t.Errorf("%s: the key %q of %s is explained nowhere", part, key, word.Key)
				}
			}
		}
	}
	if asked < 80 {
		t.Errorf("only %d keys were looked for", asked)
	}
}

// TestDocsStockLists asks that every column of a stock list is explained.
func TestDocsStockLists(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "garden")
	var out, errs bytes.Buffer
	if code := run([]string{"write", "folder", "--out", folder}, nil, &out, &errs, scriptDay); code != 0 {
		t.Fatalf("ended with %d: %s", code, errs.String())
	}
	columns, err := csv.NewReader(strings.NewReader(pageText(t, filepath.Join(folder, "stock.csv")))).Read()
	if err != nil || len(columns) < 12 {
		t.Fatalf("%d columns: %v", len(columns), err)
	}
	text := pageText(t, "../../docs/stock-lists.md")
	for _, column := range columns {
		if !strings.Contains(text, "`"+column+"`") {
			t.Errorf("docs/stock-lists.md says nothing of the column %q", column)
		}
	}
}

// TestDocsPicture holds the picture of the guide to what the program draws.
func TestDocsPicture(t *testing.T) {
	const file = "../../docs/pictures/season.svg"
	drawn := filepath.Join(t.TempDir(), "season.svg")
	var out, errs bytes.Buffer
	if code := run([]string{"season", "--picture", drawn}, nil, &out, &errs, scriptDay); code != 0 {
		t.Fatalf("ended with %d: %s", code, errs.String())
	}
	if *update {
		if err := os.WriteFile(file, []byte(pageText(t, drawn)), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if pageText(t, file) != pageText(t, drawn) {
		t.Error("docs/pictures/season.svg is stale: go test ./cmd/eyeup -run Docs -update")
	}
}
