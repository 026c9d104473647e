package reading

import (
	"fmt"
	"strings"
	"unicode"
)

// Fault is an error in a file: where, what is wrong, what to do.
type Fault struct {
	Line int    // line of the file, from 1; 0: no particular line
	What string // what is wrong
	Do   string // what to do next
}

// Error writes the fault as "line 7: what is wrong; what to do".
func (f *Fault) Error() string {
	if f.Line == 0 {
		return f.What + "; " + f.Do
	}
	return fmt.Sprintf("line %d: %s; %s", f.Line, f.What, f.Do)
}

// Shown quotes a piece of a file for a message, at most forty bytes of it.
func Shown(b []byte) string {
	const most = 40
	if len(b) > most {
		return fmt.Sprintf("%q…", b[:most])
	}
	return fmt.Sprintf("%q", b)
}

// Plain makes a name from a file printable: without control characters, with a question mark
// for bytes that are not UTF-8, and at most eighty characters long.
func Plain(b []byte) string {
	const most = 80
	text := []rune(strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return -1
		}
		return r
	}, strings.ToValidUTF8(string(b), "?")))
	return strings.TrimSpace(string(text[:min(most, len(text))]))
}
