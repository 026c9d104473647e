package stockbook

import (
	"fmt"
	"io"
	"time"

	"eyeup/civil"
	"eyeup/internal/book"
	"eyeup/internal/report"
	"eyeup/quantity"
)

// CheckAnswer says whether a book is undamaged.
type CheckAnswer struct {
	Book    string   `json:"book"`
	Whole   bool     `json:"whole"`
	Entries int64    `json:"entries"`
	Lots    int      `json:"lots"`
	Head    string   `json:"head" jsonschema:"description=hash of the last entry"`
	Wrong   []string `json:"wrong"`
	Notices []string `json:"notices"`
}

// CheckBook checks every entry of a book from the first and trusts nothing stored in it.
func CheckBook(path string, now func() time.Time) (*CheckAnswer, error) {
	r, err := book.Check(path, book.Options{Now: now})
	if err != nil {
		return nil, err
	}
	return &CheckAnswer{path, r.Whole(), r.Entries, r.Lots, fmt.Sprintf("%x", r.Head), append([]string{}, r.Wrong...), append([]string{}, r.Notices...)}, nil
}

// Print writes the result in one line, then what is wrong.
func (a *CheckAnswer) Print(w io.Writer, _ quantity.System) {
	if a.Whole {
		fmt.Fprintf(w, "%s is whole: %d entries, %d lots, last hash %.16s…\n", a.Book, a.Entries, a.Lots, a.Head)
	} else {
		fmt.Fprintf(w, "%s is not whole:\n", a.Book)
	}
	for _, s := range a.Wrong {
		report.NewPage(w).Wrap("  ", s)
	}
	for _, s := range a.Notices {
		report.NewPage(w).Wrap("  note: ", s)
	}
}

// RestoreAnswer says what restoring a book did.
type RestoreAnswer struct {
	Book    string     `json:"book"`
	From    string     `json:"from"`
	Made    civil.Date `json:"made" jsonschema:"description=the day of the copy; null if the copy was named"`
	Saved   int        `json:"saved" jsonschema:"description=entries newer than the copy that could be saved"`
	Entries int64      `json:"entries"`
	Aside   string     `json:"aside,omitempty" jsonschema:"description=the file that the damaged book was moved to"`
}

// RestoreBook replaces a damaged book by the copy named in from, or by the newest undamaged copy if from
// is empty.
func RestoreBook(path, from string, now func() time.Time) (*RestoreAnswer, error) {
	r, err := book.Restore(path, from, book.Options{Now: now})
	if err != nil {
		return nil, err
	}
	return &RestoreAnswer{path, r.From.Path, r.From.Made, r.Saved, r.Entries, r.Aside}, nil
}

// Print says what was done.
func (a *RestoreAnswer) Print(w io.Writer, _ quantity.System) {
	fmt.Fprintf(w, "%s is restored from %s: %d entries", a.Book, a.From, a.Entries)
	if a.Saved > 0 {
		fmt.Fprintf(w, ", %d of them saved from the damaged book", a.Saved)
	}
	fmt.Fprintln(w, ".")
	if a.Aside != "" {
		fmt.Fprintf(w, "The damaged book is kept as %s.\n", a.Aside)
	}
}
