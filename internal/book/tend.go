package book

import (
	"github.com/ncruces/go-sqlite3"

	"eyeup/civil"
)

// settleEvery is the number of entries after which a checkpoint is made.
const settleEvery = 1000

// tend maintains a book that stays open for long, while nobody waits: it makes a checkpoint
// now and then, and the daily copy after the first entry of a day.
func (b *Book) tend(written int) {
	b.unsettled += written
	if b.unsettled < settleEvery && b.isCopied() {
		return
	}
	b.unsettled = 0
	b.tending.Go(func() {
		_ = b.Settle() // if it fails it is done when the book is closed
		b.mu.Lock()
		defer b.mu.Unlock()
		b.copyToday()
	})
}

// Settle moves what was written since the last checkpoint into the main file, as far as no
// reader prevents it.
func (b *Book) Settle() error {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.why != nil || b.conn == nil {
		return nil
	}
	_, _, err := b.conn.WALCheckpoint("main", sqlite3.CHECKPOINT_PASSIVE)
	return plain(err)
}

func (b *Book) isCopied() bool {
	return b.options.NoCopies || b.copied == civil.Of(b.options.Now())
}

// copyToday makes the daily copy, unless it was already tried today. A failed copy does not
// hinder the use of the book; Check reports it.
func (b *Book) copyToday() {
	if b.why != nil || b.conn == nil || b.sequence == 0 || b.isCopied() {
		return
	}
	b.copied = civil.Of(b.options.Now())
	_ = b.dailyCopy()
}
