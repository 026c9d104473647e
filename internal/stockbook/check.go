package stockbook

import (
	"fmt"
	"io"
	"path/filepath"
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

	ID      string        `json:"id" jsonschema:"description=the book's own id, a UUID"`
	Journal *JournalState `json:"journal" jsonschema:"description=null where there is none"`
	Copies  []CopyState   `json:"copies"`
}

// JournalState says whether the journal beside a book is whole.
type JournalState struct {
	Entries int64 `json:"entries"`
	Whole   bool  `json:"whole"`
}

// CopyState says what a daily copy holds.
type CopyState struct {
	Name    string `json:"name"`
	Entries int64  `json:"entries"`
	Whole   bool   `json:"whole"`
}

// CheckBook checks every entry of a book from the first and trusts nothing stored in it.
func CheckBook(path string, now func() time.Time) (*CheckAnswer, error) {
	r, err := book.Check(path, book.Options{Now: now})
	if err != nil {
		return nil, err
	}
	a := &CheckAnswer{
		Book: path, Whole: r.Whole(), Entries: r.Entries, Lots: r.Lots, Head: fmt.Sprintf("%x", r.Head), ID: r.ID.String(),
		Wrong: append([]string{}, r.Wrong...), Notices: append([]string{}, r.Notices...), Copies: []CopyState{},
	}
	if r.Journal != nil {
		a.Journal = &JournalState{r.Journal.Entries, r.Journal.Whole}
	}
	for _, c := range r.Copies {
		a.Copies = append(a.Copies, CopyState{filepath.Base(c.Path), c.Entries, c.Whole})
	}
	return a, nil
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
	Missing []int64    `json:"missing" jsonschema:"description=numbers of entries that were written and could not be brought back"`
	Loose   string     `json:"loose,omitempty" jsonschema:"description=the file that holds those of the missing entries that can still be read"`

	missing string // their numbers and days, in words
}

// RestoreBook replaces a damaged book by the copy named in from, or by the newest undamaged copy if from
// is empty.
func RestoreBook(path, from string, now func() time.Time) (*RestoreAnswer, error) {
	r, err := book.Restore(path, from, book.Options{Now: now})
	if err != nil {
		return nil, err
	}
	a := &RestoreAnswer{
		Book: path, From: r.From.Path, Made: r.From.Made, Saved: r.Saved, Entries: r.Entries, Aside: r.Aside,
		Missing: []int64{}, Loose: r.Loose, missing: book.Numbers(r.Missing),
	}
	for _, m := range r.Missing {
		a.Missing = append(a.Missing, m.Sequence)
	}
	return a, nil
}

// Print says what was done.
func (a *RestoreAnswer) Print(w io.Writer, _ quantity.System) {
	from := a.From
	if from == "" {
		from = "its journal"
	}
	fmt.Fprintf(w, "%s is restored from %s: %d entries", a.Book, from, a.Entries)
	if a.Saved > 0 && a.From != "" {
		fmt.Fprintf(w, ", %d of them newer than the copy", a.Saved)
	}
	fmt.Fprintln(w, ".")
	if n := len(a.Missing); n > 0 {
		report.NewPage(w).Wrap("", fmt.Sprintf("%d entries are missing: %s.", n, a.missing))
	}
	if a.Loose != "" {
		report.NewPage(w).Wrap("", fmt.Sprintf("Those that can still be read are in %s. Look through them, then write them down by: eyeup book add %s --json < %s", a.Loose, a.Book, a.Loose))
	}
	if a.Aside != "" {
		fmt.Fprintf(w, "The damaged book is kept as %s.\n", a.Aside)
	}
}
