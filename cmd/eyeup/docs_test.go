package main

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/alecthomas/kong"
)

var update = flag.Bool("update", false, "write docs/commands.md and the guide's picture anew")

// TestDocsCommands holds docs/commands.md to what the program says of itself.
func TestDocsCommands(t *testing.T) {
	const file = "../../docs/commands.md"
	var doc bytes.Buffer
	doc.WriteString("# Commands\n\nWhat `eyeup … --help` says of each command. Written by `go test ./cmd/eyeup -run Docs -update`.\n")
	for _, words := range leaves(kong.Must(&commands{}).Model.Node, nil) {
		var out, errs bytes.Buffer
		if code := run(append(words, "--help"), nil, &out, &errs, scriptDay); code != 0 {
			t.Fatalf("%v --help ended with %d: %s", words, code, errs.String())
		}
		fmt.Fprintf(&doc, "\n## eyeup %s\n\n```\n%s\n```\n", strings.Join(words, " "), strings.TrimSpace(own(out.String())))
	}
	if *update {
		if err := os.WriteFile(file, doc.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	have, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(have, doc.Bytes()) {
		t.Error("docs/commands.md is stale: go test ./cmd/eyeup -run Docs -update")
	}
}

// leaves returns the words of every command that does something.
func leaves(n *kong.Node, before []string) [][]string {
	var all [][]string
	for _, child := range n.Children {
		if child.Hidden {
			continue
		}
		words := append(append([]string{}, before...), child.Name)
		if len(child.Children) > 0 {
			all = append(all, leaves(child, words)...)
			continue
		}
		all = append(all, words)
	}
	return all
}

// own leaves out the flags that every command has.
func own(help string) string {
	var kept []string
	skip := false
	for _, line := range strings.Split(help, "\n") {
		trimmed := strings.TrimSpace(line)
		switch {
		case strings.HasPrefix(trimmed, "-h, --help"), strings.HasPrefix(trimmed, "--json"),
			strings.HasPrefix(trimmed, "--units"), strings.HasPrefix(trimmed, "--today"):
			skip = true
		case skip && (trimmed == "" || strings.HasPrefix(trimmed, "-")):
			skip = false
		}
		if !skip {
			kept = append(kept, strings.TrimRight(line, " "))
		}
	}
	text := strings.ReplaceAll(strings.TrimSpace(strings.Join(kept, "\n")), "Flags:\n\n", "Flags:\n")
	return strings.TrimSpace(strings.TrimSuffix(text, "\nFlags:"))
}
