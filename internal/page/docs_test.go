package page

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the list of actions in docs/pages.md anew")

// TestDocsPages holds the list of actions in docs/pages.md to the forms there are.
func TestDocsPages(t *testing.T) {
	const file = "../../docs/pages.md"
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	const head, foot = "| action | fields |\n| --- | --- |\n", "| `POST /undo`"
	from, to := strings.Index(string(text), head)+len(head), strings.Index(string(text), foot)
	if from < len(head) || to < from {
		t.Fatal("docs/pages.md has no list of actions")
	}
	var rows strings.Builder
	for _, a := range actions {
		fmt.Fprintf(&rows, "| `POST /write/%s` | %s |\n", strings.ReplaceAll(a.Kind, " ", "-"), fieldsOf(a))
	}
	if *update {
		whole := string(text[:from]) + rows.String() + string(text[to:])
		if err := os.WriteFile(file, []byte(whole), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if string(text[from:to]) != rows.String() {
		t.Error("docs/pages.md is stale: go test ./internal/page -run Docs -update")
	}
	for _, f := range []string{"GET /season", "POST /season/best", "POST /season/best/stop", "POST /bring"} {
		if !strings.Contains(string(text), strings.TrimPrefix(f, "GET ")) {
			t.Errorf("docs/pages.md says nothing of %s", f)
		}
	}
}

// fieldsOf lists the fields of an action, those that must be said in bold.
func fieldsOf(a action) string {
	var all []string
	for _, f := range a.Fields {
		name := "`" + f.Name + "`"
		if f.Due {
			name = "**" + name + "**"
		}
		switch {
		case f.Type == yes:
			name += " (yes)"
		case f.Type == choice:
			name += " (" + strings.Join(without(f.Choices, ""), ", ") + ")"
		}
		all = append(all, name)
	}
	return strings.Join(all, ", ")
}

func without(all []string, none string) []string {
	var kept []string
	for _, one := range all {
		if one != none {
			kept = append(kept, one)
		}
	}
	return kept
}
