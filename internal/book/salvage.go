package book

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"slices"

	"eyeup/civil"
	"eyeup/stock"
)

// salvage is all that a damaged book can be restored from.
type salvage struct {
	path    string
	options Options
	id      stock.ID       // zero where nothing says it any more
	chosen  Copy           // its path is empty where there is none
	damaged *Book          // open for reading; nil where it can't be opened
	journal *JournalReport // nil where there is none

	saved   int
	missing []Missing
	loose   map[int64][]byte // entries that can be read but have lost their place
}

func (s *salvage) close() {
	if s.damaged != nil {
		_ = s.damaged.conn.Close()
	}
}

// rebuild makes the book anew at a path: the copy, and what journal and damaged book hold
// beyond it. What one of them lacks the other may have, so each is asked in turn.
func (s *salvage) rebuild(fresh string) error {
	defer s.close()
	removeAll(fresh)
	err := error(nil)
	if s.chosen.Path != "" {
		err = copyFile(s.chosen.Path, fresh, s.options)
	} else {
		err = beginFresh(fresh, s.id, s.options)
	}
	if err != nil {
		return fmt.Errorf("the book can't be made anew beside the damaged one: %w", plain(err))
	}
	b, err := Open(fresh, s.options)
	if err != nil {
		return err
	}
	for first := b.sequence; ; {
		before := b.sequence
		if err := errors.Join(b.takeRows(s.fromJournal), b.takeRows(s.fromDamaged)); err != nil {
			return errors.Join(err, b.Close())
		}
		if b.sequence == before {
			s.saved = int(b.sequence - first)
			break
		}
	}
	s.tellMissing(b.sequence)
	s.takeBeside(b)
	return b.Close()
}

// takeBeside brings over what stands beside the entries: papers that are whole, and names
// of people that the copy does not know. What can't be read is left.
func (s *salvage) takeBeside(b *Book) {
	if s.damaged == nil {
		return
	}
	names, _ := s.damaged.Papers()
	for _, name := range names {
		if content, err := s.damaged.Paper(name); err == nil {
			_, _ = b.KeepPaper(content)
		}
	}
	known, _ := b.People()
	people, _ := s.damaged.People()
	for id, name := range people {
		if _, is := known[id]; !is {
			_ = b.Call(id, name)
		}
	}
}

// takeRows adds to the book the rows that each gives, as far as they follow.
func (b *Book) takeRows(each func(after int64, head hash, take func(*row) error)) error {
	tx, err := b.conn.BeginImmediate()
	if err != nil {
		return err
	}
	var failed error
	each(b.sequence, b.head, func(r *row) error {
		if err := b.take(r); err != nil {
			return err // it does not follow: no more can be taken from here
		}
		failed = errors.Join(b.fill(r), b.insert.Exec())
		return failed
	})
	if failed != nil {
		return errors.Join(plain(failed), tx.Rollback())
	}
	return plain(tx.Commit())
}

// fromJournal gives the journal's entries after one.
func (s *salvage) fromJournal(after int64, head hash, take func(*row) error) {
	if s.journal == nil || !s.isOfBook(s.journal.id) {
		return
	}
	f, err := os.Open(s.path + journalSuffix)
	if err != nil {
		return
	}
	defer f.Close()
	rest := span{after: after, head: head}
	_ = rest.read(f, take)
	s.keepLoose(rest.loose)
}

// isOfBook reports whether something that bears an id is of the book; one that bears none
// may be, and its chain must show it.
func (s *salvage) isOfBook(id stock.ID) bool { return id.IsZero() || s.id.IsZero() || id == s.id }

// fromDamaged gives the damaged book's entries after one. Where a page can't be read, those
// on other pages still can, so each is asked for by its number.
func (s *salvage) fromDamaged(after int64, _ hash, take func(*row) error) {
	if s.damaged == nil {
		return
	}
	for n := after + 1; n <= s.highest(); n++ {
		r, err := s.damaged.rowAt(n)
		if err != nil {
			return
		}
		if err := take(&r); err != nil {
			return
		}
	}
}

// rowAt reads the entry of a sequence.
func (b *Book) rowAt(sequence int64) (row, error) {
	s, _, err := b.conn.Prepare(`select ` + columns + ` from entries where sequence = ?`)
	if err != nil {
		return row{}, err
	}
	defer s.Close()
	if err := s.BindInt64(1, sequence); err != nil {
		return row{}, err
	}
	if !s.Step() {
		return row{}, errors.Join(s.Err(), os.ErrNotExist)
	}
	return readRow(s)
}

// highest is the highest sequence that anything speaks of.
func (s *salvage) highest() int64 {
	most := int64(0)
	if s.damaged != nil {
		most, _ = s.damaged.first("select max(sequence) from entries")
	}
	if s.journal != nil && s.isOfBook(s.journal.id) {
		most = max(most, s.journal.highest)
	}
	return most
}

// tellMissing lists what was written after the last entry that could be brought back, and
// keeps what of it can still be read.
func (s *salvage) tellMissing(last int64) {
	for n := last + 1; n <= s.highest(); n++ {
		m := Missing{Sequence: n}
		if s.journal != nil {
			m.On = s.journal.days[n]
		}
		if s.damaged != nil && m.On.IsZero() {
			if r, err := s.damaged.rowAt(n); err == nil {
				m.On = r.entry.On
				s.keepLoose([]looseLine{{n, r.line()}})
			}
		}
		if text := s.loose[n]; text != nil && m.On.IsZero() {
			if l, err := readOne(bytes.TrimSpace(text)); err == nil {
				m.On = l.Entry.On
			}
		}
		s.missing = append(s.missing, m)
	}
}

func (s *salvage) keepLoose(lines []looseLine) {
	if s.loose == nil {
		s.loose = map[int64][]byte{}
	}
	for _, l := range lines {
		if s.loose[l.sequence] == nil {
			s.loose[l.sequence] = l.text
		}
	}
}

// writeLoose writes those of the missing entries that can still be read into a file beside
// the book, as lines for: eyeup book add.
func (s *salvage) writeLoose() (string, error) {
	var out bytes.Buffer
	for _, m := range s.missing {
		text := s.loose[m.Sequence]
		if text == nil {
			continue
		}
		if l, err := readOne(bytes.TrimSpace(text)); err == nil {
			out.Write(l.Entry.Canonical())
			out.WriteByte('\n')
		}
	}
	if out.Len() == 0 {
		return "", nil
	}
	name := freeName(fmt.Sprintf("%s.missing-%s.jsonl", s.path, civil.Of(s.options.Now())))
	return name, plainFile(os.WriteFile(name, out.Bytes(), 0o600))
}

// Numbers words the numbers and days of entries, such as "301 to 491 (3 May 2027 to 9 May
// 2027)".
func Numbers(missing []Missing) string {
	if len(missing) == 0 {
		return "none"
	}
	says := fmt.Sprint(missing[0].Sequence)
	if last := missing[len(missing)-1].Sequence; last != missing[0].Sequence {
		says += fmt.Sprintf(" to %d", last)
	}
	var days []civil.Date
	for _, m := range missing {
		if !m.On.IsZero() {
			days = append(days, m.On)
		}
	}
	if len(days) == 0 {
		return says + " (their days can't be read any more)"
	}
	slices.SortFunc(days, func(a, b civil.Date) int { return int(a.Sub(b)) })
	if first, last := days[0], days[len(days)-1]; first != last {
		return fmt.Sprintf("%s (%s to %s)", says, first, last)
	}
	return fmt.Sprintf("%s (%s)", says, days[0])
}
