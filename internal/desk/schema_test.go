package desk

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

// holds reports an answer that does not follow the schema published under its name.
// The schema is read by an independent validator.
func holds(t *testing.T, name string, a Answer) {
	t.Helper()
	schema, err := schemaOf(name, a)
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
	if err := WriteJSON(&written, a); err != nil {
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

// TestSchemasAreSchemas compiles every schema that is published.
func TestSchemasAreSchemas(t *testing.T) {
	for _, name := range SchemaNames() {
		b, err := Schema(name)
		if err != nil || !json.Valid(b) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
