package testkit

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"eyeup/internal/report"
	"eyeup/quantity"
)

// Narrow reports lines of a printed answer that are wider than a page.
func Narrow(t *testing.T, a report.Answer) string {
	t.Helper()
	var out bytes.Buffer
	for _, units := range []quantity.System{quantity.Metric, quantity.US} {
		a.Print(&out, units)
	}
	for line := range strings.Lines(out.String()) {
		if n := utf8.RuneCountInString(strings.TrimSuffix(line, "\n")); n > report.PageWidth {
			t.Errorf("%d columns: %s", n, line)
		}
	}
	return out.String()
}

// Holds reports an answer that does not follow the schema published under its name.
// The schema is read by an independent validator.
func Holds(t *testing.T, name string, a report.Answer) {
	t.Helper()
	schema, err := report.SchemaOf(name, a)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(schema))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("schema.json", doc); err != nil {
		t.Fatal(err)
	}
	compiled, err := c.Compile("schema.json")
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	var written bytes.Buffer
	if err := report.WriteJSON(&written, a); err != nil {
		t.Fatal(err)
	}
	answer, err := jsonschema.UnmarshalJSON(&written)
	if err != nil {
		t.Fatal(err)
	}
	if err := compiled.Validate(answer); err != nil {
		t.Errorf("%s: %v", name, err)
	}
}
