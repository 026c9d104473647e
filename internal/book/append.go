package book

import (
	"bytes"
	"errors"
	"fmt"
	"time"

	"github.com/ncruces/go-sqlite3"

	"eyeup/stock"
)

// Answer is the result of one entry that was sent.
type Answer struct {
	ID       stock.ID     `json:"id"`
	Sequence int64        `json:"sequence"`
	Again    bool         `json:"again,omitzero"` // the book already held it; it counts once
	Born     []stock.Born `json:"born,omitzero"`
	Notices  []string     `json:"notices,omitzero"`
}

// Append adds a batch of entries: all of them, or none and an error. On success they are on
// the disk. An entry that the book already holds with the same content is answered again and
// counts once; one with other content is refused. An entry without a time of writing gets the
// time of the book's clock.
func (b *Book) Append(entries ...stock.Entry) ([]Answer, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.why != nil {
		return nil, b.why
	}
	answers, err := b.append(entries)
	if err != nil {
		return nil, b.plain(err)
	}
	return answers, nil
}

func (b *Book) append(entries []stock.Entry) (answers []Answer, err error) {
	tx, err := b.lock()
	if err != nil {
		return nil, err
	}
	defer func() {
		if err != nil {
			b.stock.TakeBack()
			_ = tx.Rollback()
		}
	}()
	answers, fresh, err := b.sort(entries)
	if err != nil {
		return nil, err
	}
	if len(fresh) == 0 {
		return answers, tx.Rollback()
	}
	added, err := b.stock.Add(fresh...)
	if err != nil {
		return nil, err
	}
	rows, err := b.addRows(fresh)
	if err != nil {
		return nil, err
	}
	if err = b.commit(tx, rows); err != nil {
		return nil, err
	}
	b.stock.Keep()
	answerFresh(answers, added, b.sequence)
	last := rows[len(rows)-1]
	b.sequence, b.head = last.sequence, last.hash
	b.tend(len(fresh))
	return answers, nil
}

// lock begins to write: the book is caught up with what others wrote, and its journal
// ends where it ends.
func (b *Book) lock() (tx sqlite3.Txn, err error) {
	for range 2 {
		if tx, err = b.conn.BeginImmediate(); err != nil {
			return tx, err
		}
		if err = b.catchUp(); err == nil && b.why != nil {
			err = b.why
		}
		if err == nil && b.isEven() {
			return tx, nil
		}
		_ = tx.Rollback()
		if err == nil {
			err = b.evenOut()
		}
		if err != nil {
			return tx, err
		}
	}
	return tx, errors.New("another program changes the journal beside the book without the book; close it and try again")
}

// addRows writes entries into the file, each with the hash that follows from the last.
func (b *Book) addRows(fresh []stock.Entry) ([]row, error) {
	rows := make([]row, len(fresh))
	sequence, head := b.sequence, b.head
	for i := range fresh {
		r := row{sequence + 1, fresh[i], chain(head, fresh[i].Canonical())}
		if err := errors.Join(b.fill(&r), b.insert.Exec()); err != nil {
			return nil, err
		}
		rows[i], sequence, head = r, r.sequence, r.hash
	}
	return rows, nil
}

// commit makes rows durable: first in the journal, then in the file, if that is still the
// file at the book's path.
func (b *Book) commit(tx sqlite3.Txn, rows []row) error {
	if err := b.stillThere(); err != nil {
		return err
	}
	undo := func() {}
	if b.journal != nil {
		var err error
		if undo, err = b.journal.write(rows); err != nil {
			return err
		}
	}
	if err := tx.Commit(); err != nil {
		undo()
		return err
	}
	return nil
}

// sort separates new entries from those that the book already holds.
func (b *Book) sort(entries []stock.Entry) (answers []Answer, fresh []stock.Entry, err error) {
	answers = make([]Answer, len(entries))
	now := b.options.Now()
	for i, e := range entries {
		answers[i].ID = e.ID
		if b.stock.Holds(e.ID) {
			if err := b.again(&e, &answers[i]); err != nil {
				return nil, nil, err
			}
			continue
		}
		if e.Written.IsZero() {
			e.Written = now.UTC().Truncate(time.Second)
			if e.Offset == "" {
				e.Offset = now.Format("-07:00")
			}
		}
		fresh = append(fresh, e)
	}
	return answers, fresh, nil
}

// again answers an entry that the book already holds, if it has the same content. The sender
// may leave out the time of writing.
func (b *Book) again(e *stock.Entry, a *Answer) error {
	held, err := b.entry(e.ID)
	if err != nil {
		return err
	}
	sent := *e
	if sent.Written.IsZero() {
		sent.Written = held.entry.Written
		if sent.Offset == "" {
			sent.Offset = held.entry.Offset
		}
	}
	if !bytes.Equal(sent.Canonical(), held.entry.Canonical()) {
		return fmt.Errorf("the book already holds entry %s with other content: %s of %s; give this one a new id, or correct the other", e.ID, held.entry.Kind, held.entry.On)
	}
	a.Sequence, a.Again = held.sequence, true
	for nth := 0; ; nth++ {
		l, err := b.stock.Find(stock.LotID{Entry: e.ID, Nth: nth}.String())
		if err != nil {
			return nil // no more of them
		}
		a.Born = append(a.Born, stock.Born{Lot: l.ID, Code: l.Code})
	}
}

// entry reads one entry.
func (b *Book) entry(id stock.ID) (row, error) {
	s, _, err := b.conn.Prepare(rowByID)
	if err != nil {
		return row{}, err
	}
	defer s.Close()
	if err := s.BindBlob(1, id[:]); err != nil {
		return row{}, err
	}
	if !s.Step() {
		if err := s.Err(); err != nil {
			return row{}, err
		}
		return row{}, fmt.Errorf("there is no entry %s in the book", id)
	}
	return readRow(s)
}

// Entry returns one entry as it was written.
func (b *Book) Entry(id stock.ID) (stock.Entry, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	r, err := b.entry(id)
	return r.entry, plain(err)
}

// answerFresh fills in the answers for the new entries, in their order.
func answerFresh(answers []Answer, added []stock.Added, sequence int64) {
	n := 0
	for i := range answers {
		if answers[i].Again {
			continue
		}
		sequence++
		answers[i].Sequence, answers[i].Born, answers[i].Notices = sequence, added[n].Born, added[n].Notices
		n++
	}
}
