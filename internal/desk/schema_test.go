package desk

import (
	"encoding/json"
	"testing"
)

// TestSchemasAreSchemas compiles every schema that is published.
func TestSchemasAreSchemas(t *testing.T) {
	for _, name := range SchemaNames() {
		b, err := Schema(name)
		if err != nil || !json.Valid(b) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
