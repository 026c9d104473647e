package main

import (
	"bytes"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/alecthomas/kong"
)

var (
	fenced  = regexp.MustCompile("(?ms)^```([a-z]*)\n(.*?)^```$")
	comment = regexp.MustCompile(`\s+#.*$`)
)

// typed splits a command line as a shell does: at spaces, but within double quotes.
func typed(line string) []string {
	var words []string
	word, quoted, begun := "", false, false
	for _, r := range comment.ReplaceAllString(line, "") + " " {
		switch {
		case r == '"':
			quoted, begun = !quoted, true
		case r == ' ' && !quoted:
			if begun {
				words = append(words, word)
			}
			word, begun = "", false
		default:
			word, begun = word+string(r), true
		}
	}
	return words
}

// TestDocsGuideRuns types the guide's commands one after the other, in an empty folder, as a
// grower would; its table is saved as the list that the commands read.
func TestDocsGuideRuns(t *testing.T) {
	guide := pageText(t, "../../docs/guide.md")
	t.Chdir(t.TempDir())
	ran := 0
	for _, block := range fenced.FindAllStringSubmatch(guide, -1) {
		if block[1] == "csv" {
			if err := os.WriteFile("my-list.csv", []byte(block[2]), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if block[1] != "sh" {
			continue
		}
		for line := range strings.Lines(block[2]) {
			words := typed(strings.TrimSpace(line))
			if len(words) == 0 || words[0] != "eyeup" {
				t.Fatalf("%q is no command of the program", line)
			}
			var out, errs bytes.Buffer
			if code := run(words[1:], strings.NewReader(""), &out, &errs, scriptDay); code != 0 {
				t.Errorf("%s ended with %d: %s", strings.TrimSpace(line), code, errs.String())
			}
			ran++
		}
	}
	if ran < 20 {
		t.Errorf("only %d commands were run", ran)
	}
}

var inWords = regexp.MustCompile("`(eyeup [^`]+)`")

// TestDocsCommandsAreRight asks that every command that a page spells out has words and flags
// that the program knows. Words in capitals stand for what the reader puts in their place.
func TestDocsCommandsAreRight(t *testing.T) {
	parser := kong.Must(&commands{}, kong.Exit(func(int) {}))
	known := leaves(parser.Model.Node, nil)
	seen := 0
	for file, text := range papers(t) {
		lines := inWords.FindAllStringSubmatch(text, -1)
		for line := range strings.Lines(text) {
			if trimmed := strings.TrimSpace(line); strings.HasPrefix(trimmed, "eyeup ") {
				lines = append(lines, []string{"", trimmed})
			}
		}
		for _, line := range lines {
			words := typed(line[1])[1:]
			for len(words) > 0 && strings.HasPrefix(words[0], "--today") {
				words = words[2:]
			}
			command := commandOf(known, words)
			if command == nil {
				if !strings.ContainsAny(line[1], "…|") && !isGroup(known, words) {
					t.Errorf("%s: %q is no command", file, line[1])
				}
				continue
			}
			seen++
			var help, errs bytes.Buffer
			run(append(append([]string{}, command...), "--help"), nil, &help, &errs, scriptDay)
			for _, word := range words {
				flag, _, _ := strings.Cut(word, "=")
				if strings.HasPrefix(flag, "--") && !strings.Contains(help.String(), flag) {
					t.Errorf("%s: %q: the command has no flag %s", file, line[1], flag)
				}
			}
		}
	}
	if seen < 80 {
		t.Errorf("only %d commands were looked at", seen)
	}
}

// commandOf is the command that words begin with; nil where there is none.
func commandOf(known [][]string, words []string) []string {
	for _, command := range known {
		if len(words) >= len(command) && strings.Join(words[:len(command)], " ") == strings.Join(command, " ") {
			return command
		}
	}
	return nil
}

// isGroup reports whether words stand for several commands, such as those of reckon.
func isGroup(known [][]string, words []string) bool {
	return len(words) == 1 && slices.ContainsFunc(known, func(command []string) bool { return command[0] == words[0] })
}

// The limits of what one reads at the bench.
const (
	longestSentence = 35   // words, in README and guide
	longestGuide    = 3000 // words
	longestBlock    = 5    // lines of a paragraph of the guide
)

var (
	sentenceEnd = regexp.MustCompile(`[.!?]["”*_)]*\s`)
	item        = regexp.MustCompile(`(?m)^\s*([-*]|\d+\.)\s+`)
)

// paragraphs are a page's running texts and cells of tables, without its commands.
func paragraphs(text string) []string {
	text = fenced.ReplaceAllString(text, "")
	text = item.ReplaceAllString(text, "\n")
	var all []string
	for block := range strings.SplitSeq(text, "\n\n") {
		switch {
		case strings.HasPrefix(block, "    "):
		case strings.HasPrefix(strings.TrimSpace(block), "|"):
			all = append(all, strings.FieldsFunc(block, func(r rune) bool { return r == '|' || r == '\n' })...)
		default:
			all = append(all, block)
		}
	}
	return all
}

// TestDocsReadEasily holds README and guide to short sentences, and the guide to its length.
func TestDocsReadEasily(t *testing.T) {
	words := 0
	for _, file := range []string{"../../README.md", "../../docs/guide.md"} {
		for _, block := range paragraphs(pageText(t, file)) {
			for _, sentence := range sentenceEnd.Split(block+" ", -1) {
				if n := len(strings.Fields(sentence)); n > longestSentence {
					t.Errorf("%s: a sentence of %d words: %s", file, n, strings.TrimSpace(sentence))
				}
			}
			if guide := strings.HasSuffix(file, "guide.md"); guide {
				words += len(strings.Fields(strings.Trim(block, "- ")))
				if lines := strings.Count(strings.TrimSpace(block), "\n") + 1; lines > longestBlock {
					t.Errorf("%s: a paragraph of %d lines: %s", file, lines, block)
				}
			}
		}
	}
	if words < 1000 || words > longestGuide {
		t.Errorf("the guide has %d words", words)
	}
}
