package book

import (
	"crypto/rand"
	"errors"

	"eyeup/stock"
)

// ID returns the book's own id, a UUID. A new book gets one of version 7. A book of the
// first form, which had none, takes it from the hash of its first entry (version 8); it
// is zero while such a book is empty and can't be written.
func (b *Book) ID() stock.ID {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.id
}

// identify reads the book's id, and gives it one where it has none yet.
func (b *Book) identify() error {
	if id, err := b.storedID(); err != nil || !id.IsZero() {
		b.id = id
		return err
	}
	first, err := b.hashOf(1)
	if err == nil {
		b.id = idOf(first)
	}
	if b.why != nil {
		return nil
	}
	if err != nil {
		if b.id, err = stock.NewID(b.options.Now(), rand.Reader); err != nil {
			return err
		}
	}
	return b.storeID()
}

// storeID writes the book's id, unless another program has written one meanwhile.
func (b *Book) storeID() (err error) {
	tx, err := b.conn.BeginImmediate()
	if err != nil {
		return err
	}
	defer tx.End(&err)
	stored, err := b.storedID()
	if err != nil || !stored.IsZero() {
		b.id = stored
		return err
	}
	return b.writeID()
}

func (b *Book) writeID() error {
	s, _, err := b.conn.Prepare("insert into identity (id) values (?)")
	if err != nil {
		return err
	}
	defer s.Close()
	return errors.Join(s.BindBlob(1, b.id[:]), s.Exec())
}

// takeID gives an empty book the id of the log that it is read from.
func (b *Book) takeID(id stock.ID) error {
	b.id = id
	return errors.Join(b.conn.Exec("delete from identity"), b.writeID())
}

// storedID returns the id in the file; zero where there is none.
func (b *Book) storedID() (id stock.ID, err error) {
	if tables, err := b.first("select count(*) from sqlite_schema where name = 'identity'"); err != nil || tables == 0 {
		return id, err
	}
	s, _, err := b.conn.Prepare("select id from identity")
	if err != nil {
		return id, err
	}
	defer s.Close()
	if s.Step() {
		copy(id[:], s.ColumnRawBlob(0))
	}
	return id, s.Err()
}

// idOf makes the id of a book from the hash of its first entry: UUID version 8 (RFC 9562).
func idOf(first hash) (id stock.ID) {
	copy(id[:], first[:])
	id[6] = id[6]&0x0f | 0x80
	id[8] = id[8]&0x3f | 0x80
	return id
}
