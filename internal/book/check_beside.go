package book

import (
	"cmp"
	"fmt"
	"path/filepath"
	"slices"

	"eyeup/civil"
	"eyeup/stock"
)

// CopyReport is what a check found of one daily copy.
type CopyReport struct {
	Path    string
	Made    civil.Date // by its name; zero where that says no day
	Entries int64
	Whole   bool
	ID      stock.ID
	head    hash
	first   stock.ID // of its first entry
}

// checkWAL sees that nothing was lost between the file and its write-ahead log.
func (r *Report) checkWAL(b *Book) {
	w, err := readWAL(b.path)
	if err != nil {
		r.wrong("the write-ahead log %s-wal can't be read: %v", filepath.Base(b.path), err)
		return
	}
	if w.lost == 0 {
		return
	}
	r.walDamaged = fmt.Sprintf("the write-ahead log %s-wal is damaged: %d pages behind the damage can't be read", filepath.Base(b.path), w.lost)
}

// checkJournal holds the journal against the book.
func (r *Report) checkJournal(b *Book) {
	j, err := readJournal(b.path)
	if err != nil {
		r.Notices = append(r.Notices, fmt.Sprintf("the journal can't be read: %v", err))
	}
	r.Journal = j
	switch {
	case j == nil && r.walDamaged != "":
		r.wrong("%s, and there is no journal that would say what stood there", r.walDamaged)
	case j == nil:
		r.Notices = append(r.Notices, "there is no journal beside the book; the next time it is opened for writing one is begun")
	case j.id != r.ID && !j.id.IsZero():
		r.wrong("the journal beside the book is of another book (%s)", j.id)
	case !j.Whole:
		r.Notices = append(r.Notices, fmt.Sprintf("a line of the journal is damaged behind entry %d", j.Entries))
		if j.highest > r.Entries || r.walDamaged != "" {
			r.wrong("%s; the journal speaks of %d entries, the book holds %d; see: eyeup restore", cmp.Or(r.walDamaged, "entries are missing"), j.highest, r.Entries)
		}
	case j.Entries > r.Entries && r.followedBy(b, j):
		r.Notices = append(r.Notices, fmt.Sprintf("the journal holds %d entries that the file lacks; they are taken in when the book is opened", j.Entries-r.Entries))
	case j.Entries > r.Entries:
		r.wrong("the journal holds %d entries, the book %d, and they don't follow; see: eyeup restore", j.Entries, r.Entries)
	case j.Entries == r.Entries && j.head != r.Head:
		r.wrong("the journal says something else than the book; see: eyeup restore")
	case r.walDamaged != "":
		r.Notices = append(r.Notices, r.walDamaged+"; the journal shows that no entry is missing")
	}
}

// followedBy reports whether the journal goes on where the book ends, without a fault.
func (r *Report) followedBy(b *Book, j *JournalReport) bool {
	return len(r.Wrong) == 0 && (r.Entries == 0 || j.hashes[r.Entries] == r.Head)
}

// CheckCopies checks every daily copy of the book at path, beside it and in another
// folder, where one is given; those that hold most entries come first.
func CheckCopies(path string, o Options) ([]CopyReport, error) {
	b := &Book{path: path, options: o}
	var all []CopyReport
	for _, folder := range b.copyFolders() {
		copies, err := copiesIn(folder)
		if err != nil {
			return nil, err
		}
		for _, c := range copies {
			all = append(all, checkCopy(c, o))
		}
	}
	slices.SortStableFunc(all, func(a, b CopyReport) int { return cmp.Compare(b.Entries, a.Entries) })
	return all, nil
}

// checkCopy checks one copy; nobody writes it meanwhile.
func checkCopy(c Copy, o Options) CopyReport {
	r, err := checkAlone(c.Path, still(o))
	return CopyReport{Path: c.Path, Made: c.Made, Entries: r.Entries, Whole: err == nil && r.Whole(), ID: r.ID, head: r.Head, first: r.first}
}

// checkCopies sees that the copies hold nothing that the book has lost.
func (r *Report) checkCopies(b *Book) {
	all, err := CheckCopies(b.path, b.options)
	if err != nil {
		r.Notices = append(r.Notices, fmt.Sprintf("the daily copies can't be read: %v", err))
		return
	}
	r.Copies = all
	if len(all) == 0 && r.Entries > 0 {
		r.Notices = append(r.Notices, "there is no daily copy beside the book yet")
	}
	today := civil.Of(b.options.Now())
	for _, c := range all {
		r.checkOneCopy(b, c, today)
	}
}

func (r *Report) checkOneCopy(b *Book, c CopyReport, today civil.Date) {
	name := filepath.Base(c.Path)
	switch held, err := b.hashOf(c.Entries); {
	case !c.Whole:
		r.Notices = append(r.Notices, fmt.Sprintf("the copy %s is damaged", name))
	case c.ID != r.ID:
		r.Notices = append(r.Notices, fmt.Sprintf("the copy %s is of another book (%s); move it away", name, c.ID))
	case c.Entries > r.Entries:
		r.wrong("the copy %s holds %d entries, the book only %d; see: eyeup restore", name, c.Entries, r.Entries)
	case err == nil && held != c.head:
		r.wrong("the copy %s holds other entries than the book; one of them was changed", name)
	}
	if c.Made.After(today.AddDays(1)) {
		r.Notices = append(r.Notices, fmt.Sprintf("the copy %s bears a day to come: the clock was wrong when it was made", name))
	}
}
