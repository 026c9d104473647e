package report

import (
	"encoding/json"
	"fmt"
	"io"

	"eyeup/quantity"
)

// Answer is what a question is answered with.
type Answer interface {
	// Print writes the answer as a grower reads it, at most 80 columns wide, with
	// measures in the given system.
	Print(w io.Writer, units quantity.System)
}

// WriteJSON writes the answer for programs: indented JSON that follows its schema.
func WriteJSON(w io.Writer, a Answer) error {
	b, err := json.MarshalIndent(a, "", "  ")
	if err != nil {
		return fmt.Errorf("the answer can't be written as JSON: %w", err)
	}
	_, err = w.Write(append(b, '\n'))
	return err
}
