package book

import (
	"github.com/ncruces/go-sqlite3"

	"eyeup/civil"
)

// settleEvery is after how many entries what was written is folded into the one file.
const settleEvery = 1000

// tend sees to a book that lies open for long, while nobody waits: what was written is
// folded in now and then, and the first entry of a day is followed by that day's copy.
func (b *Book) tend(written int) {
	b.unsettled += written
	if b.unsettled < settleEvery && b.isCopied() {
		return
	}
	b.unsettled = 0
	b.tending.Go(func() {
		_ = b.Settle() // what can't be now is done when the book is put down
		b.mu.Lock()
		defer b.mu.Unlock()
		b.copyToday()
	})
}

// Settle folds what was written since into the one file, as far as nobody is reading it.
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

// copyToday makes the daily copy, if it has not been tried today. One that can't be made
// keeps nobody from the book; a check tells.
func (b *Book) copyToday() {
	if b.why != nil || b.conn == nil || b.sequence == 0 || b.isCopied() {
		return
	}
	b.copied = civil.Of(b.options.Now())
	_ = b.dailyCopy()
}
