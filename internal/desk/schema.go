package desk

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"eyeup/internal/report"
)

// SchemaNames returns the names under which Schema knows an answer, in order.
func SchemaNames() []string { return slices.Sorted(maps.Keys(answers)) }

// Schema returns the JSON Schema (draft 2020-12) of the named answer, such as "season"
// or "reckon frost". It fails for a name that is not known, and lists those that are.
func Schema(name string) ([]byte, error) {
	a, ok := answers[name]
	if !ok {
		return nil, fmt.Errorf("there is no schema named %q; there are: %s", name, strings.Join(SchemaNames(), ", "))
	}
	return report.SchemaOf(name, a)
}
