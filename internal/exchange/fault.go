package exchange

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Fault is one thing wrong in a file: where it is, what is wrong, and what to do.
type Fault struct {
	File   string
	Line   int // from 1; 0 where the whole file is meant
	Column int // from 1; 0 where the whole line is meant
	What   string

	// Of garden.toml, for a form that asks for its keys; see Said.
	Part string // such as patch, place/glass; empty where no part is meant
	Key  string // in it, such as mix.2.slack; empty for the part as a whole
	Form string // what is wrong with it, without its key and without the signs of a file
}

// Error says where the fault lies and what it is, such as "garden.toml:12:8: …".
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

// Faults are all the things found wrong in one reading, file by file from the top.
type Faults []Fault

// mostFaults is how many faults are told at once.
const mostFaults = 10

// Error tells the faults, one a line, ten at most.
func (f Faults) Error() string {
	lines := make([]string, 0, mostFaults+1)
	for i, fault := range f {
		if i == mostFaults {
			lines = append(lines, fmt.Sprintf("and %d more; put these right first", len(f)-mostFaults))
			break
		}
		lines = append(lines, fault.Error())
	}
	return strings.Join(lines, "\n")
}

// Unwrap gives each fault by itself.
func (f Faults) Unwrap() []error {
	errs := make([]error, len(f))
	for i, fault := range f {
		errs[i] = fault
	}
	return errs
}

// err returns the faults in the order of their file, or nothing where there are none.
func (f Faults) err() error {
	if len(f) == 0 {
		return nil
	}
	slices.SortStableFunc(f, func(a, b Fault) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	return f
}
