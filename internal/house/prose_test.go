package house

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
)

const (
	mostWords   = 35  // of a sentence in the guide
	mostLines   = 5   // of a paragraph in docs/guide.md
	mostLetters = 140 // of a line of such a paragraph
)

// passage is a paragraph, a list item, a heading or a cell of a table. Code is none.
type passage struct {
	line  int // its first, from 1
	lines []string
	cell  bool // of a table
}

// TestDocsProse holds the guide to short sentences and short paragraphs. docs/commands.md is
// left out: the program writes it.
func TestDocsProse(t *testing.T) {
	files, err := filepath.Glob("../../docs/*.md")
	if err != nil || len(files) < 3 {
		t.Fatalf("the guide is not there: %v (%v)", files, err)
	}
	for _, file := range append(files, "../../README.md") {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		name := strings.TrimPrefix(filepath.ToSlash(file), "../../")
		if name == "docs/commands.md" {
			continue
		}
		for _, p := range passages(string(text)) {
			for _, fault := range p.faults(name == "docs/guide.md") {
				t.Errorf("%s:%d: %s", name, p.line, fault)
			}
		}
	}
}

// faults says what is too long in a passage; of paragraphs only where that is asked for.
func (p passage) faults(paragraphs bool) (all []string) {
	for _, s := range sentences(strings.Join(p.lines, " ")) {
		if n := len(strings.Fields(s)); n > mostWords {
			all = append(all, fmt.Sprintf("a sentence of %d words, at most %d may be: %.60s…", n, mostWords, s))
		}
	}
	if !paragraphs || p.cell {
		return all
	}
	if len(p.lines) > mostLines {
		all = append(all, fmt.Sprintf("a paragraph of %d lines, at most %d may be: %.60s…", len(p.lines), mostLines, p.lines[0]))
	}
	for i, line := range p.lines {
		if n := len([]rune(line)); n > mostLetters {
			all = append(all, fmt.Sprintf("a line of %d letters (line %d), at most %d may be", n, p.line+i, mostLetters))
		}
	}
	return all
}

var (
	item   = regexp.MustCompile(`^\s*([-*+]|\d+[.)])\s+`)
	link   = regexp.MustCompile(`!?\[([^\]]*)\]\([^)]*\)`)
	code   = regexp.MustCompile("`[^`]*`")
	ending = regexp.MustCompile(`[.!?]["”’)*_]*\s+`)
)

// passages takes Markdown apart. Code, whether fenced or indented, is left out; so are comments.
func passages(text string) (all []passage) {
	fenced, commented, open := false, false, false
	for i, line := range strings.Split(text, "\n") {
		bare := strings.TrimSpace(line)
		switch {
		case strings.HasPrefix(bare, "```"):
			fenced, open = !fenced, false
		case fenced:
		case commented || strings.HasPrefix(bare, "<!--"):
			commented, open = !strings.Contains(line, "-->"), false
		case bare == "", !open && strings.HasPrefix(line, "    "):
			open = false
		case strings.HasPrefix(bare, "|"):
			for cell := range strings.SplitSeq(strings.Trim(bare, "|"), "|") {
				all = append(all, passage{i + 1, []string{strings.TrimSpace(cell)}, true})
			}
			open = false
		case strings.HasPrefix(bare, "#"):
			all, open = append(all, passage{line: i + 1, lines: []string{strings.TrimLeft(bare, "# ")}}), false
		case open && !item.MatchString(line):
			last := &all[len(all)-1]
			last.lines = append(last.lines, bare)
		default:
			all, open = append(all, passage{line: i + 1, lines: []string{item.ReplaceAllString(line, "")}}), true
		}
	}
	return all
}

// sentences parts a passage where a point, an exclamation or a question mark is followed by
// what can begin a sentence. A piece of code counts as one word, and of a link what is read.
func sentences(text string) (all []string) {
	text = code.ReplaceAllString(link.ReplaceAllString(text, "$1"), "`…`")
	from := 0
	for _, at := range ending.FindAllStringIndex(text, -1) {
		if next := []rune(text[at[1]:]); len(next) > 0 && !unicode.IsLower(next[0]) || strings.HasPrefix(text[at[1]:], "`") {
			all = append(all, strings.TrimSpace(text[from:at[1]]))
			from = at[1]
		}
	}
	return append(all, text[from:])
}

// TestPassages holds that text is taken apart where a reader would.
func TestPassages(t *testing.T) {
	const text = "# Head\n\nOne two. Three\n`a b c` [four](five six).\n\n```\nno prose here.\n```\n- item\n  goes on\n- other\n\n| a b | c. D |\n| --- | --- |\n\n    code it is\n<!-- none\nof this -->\nEnd e.g. here.\n"
	var got []string
	for _, p := range passages(text) {
		for _, s := range sentences(strings.Join(p.lines, " ")) {
			got = append(got, fmt.Sprint(p.line, ":", s))
		}
	}
	want := []string{"1:Head", "3:One two.", "3:Three `…` four.", "9:item goes on", "11:other", "13:a b", "13:c.", "13:D", "14:---", "14:---", "19:End e.g. here."}
	if !slices.Equal(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
	long := passage{line: 1, lines: slices.Repeat([]string{strings.Repeat("word ", 30)}, 6)}
	if n := len(long.faults(true)); n != 8 { // one sentence, one paragraph, six lines
		t.Errorf("%d faults in six lines of thirty words: %q", n, long.faults(true))
	}
}
