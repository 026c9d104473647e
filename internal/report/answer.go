package report

import (
	"encoding/json"
	"fmt"
	"io"

	"eyeup/quantity"
)

// Answer is the answer to a question. It is printed for a grower or written as JSON for a program.
type Answer interface {
	// Print writes the answer for a grower, at most PageWidth columns wide, with measures
	// in the given units.
	Print(w io.Writer, units quantity.System)
}

// WriteJSON writes the answer for a program: indented JSON that follows the schema of SchemaOf.
func WriteJSON(w io.Writer, a Answer) error {
	b, err := json.MarshalIndent(a, "", "  ")
	if err != nil {
		return fmt.Errorf("the answer can't be written as JSON: %w", err)
	}
	_, err = w.Write(append(b, '\n'))
	return err
}
