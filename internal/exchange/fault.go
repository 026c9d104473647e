package exchange

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Fault is one error in a file: where it is, what is wrong, and what to do.
type Fault struct {
	File   string
	Line   int // from 1; 0: the whole file
	Column int // from 1; 0: the whole line
	What   string

	// Of garden.toml only, for a form with its keys; see Said.
	Part string // such as patch or place/glass; empty: none
	Key  string // within Part, such as mix.2.slack; empty: the whole part
	Form string // what is wrong, without the key and the syntax of the file
}

// Error returns the place and the message, such as "garden.toml:12:8: …".
func (f Fault) Error() string {
	where := f.File
	if f.Line > 0 {
		where += fmt.Sprintf(":%d", f.Line)
	}
	if f.Line > 0 && f.Column > 0 {
		where += fmt.Sprintf(":%d", f.Column)
	}
	return where + ": " + f.What
}

// Faults are all errors found in one reading, by file, from the top.
type Faults []Fault

// mostFaults is how many faults Error lists.
const mostFaults = 10

// Error lists the faults, one a line, at most ten.
func (f Faults) Error() string {
	lines := make([]string, 0, mostFaults+1)
	for i, fault := range f {
		if i == mostFaults {
			lines = append(lines, fmt.Sprintf("and %d more; correct these first", len(f)-mostFaults))
			break
		}
		lines = append(lines, fault.Error())
	}
	return strings.Join(lines, "\n")
}

// Unwrap returns each fault.
func (f Faults) Unwrap() []error {
	errs := make([]error, len(f))
	for i, fault := range f {
		errs[i] = fault
	}
	return errs
}

// err returns the faults in the order of their file, or nil if there are none.
func (f Faults) err() error {
	if len(f) == 0 {
		return nil
	}
	slices.SortStableFunc(f, func(a, b Fault) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	return f
}
