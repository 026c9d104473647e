package book

import (
	"time"

	"github.com/ncruces/go-sqlite3"

	"eyeup/civil"
)

const (
	// settleEvery is the number of entries after which a checkpoint is made.
	settleEvery = 1000

	// quietFor is how long nothing is written before what was written is folded in.
	quietFor = time.Second
)

// tend maintains a book that stays open for long, while nobody waits: it makes a checkpoint
// now and then, and the daily copy after the first entry of a day.
func (b *Book) tend(written int) {
	b.unsettled += written
	b.settleWhenQuiet()
	if b.unsettled < settleEvery && b.isCopied() {
		return
	}
	b.unsettled = 0
	b.tending.Go(func() {
		_ = b.Settle() // if it fails it is done when the book is closed
		b.copyToday()
	})
}

// settleWhenQuiet folds what was written into the one file once nothing has been written
// for a while, so that the file alone is the whole book. The lock is held.
func (b *Book) settleWhenQuiet() {
	if b.quiet != nil && b.quiet.Stop() {
		b.tending.Done()
	}
	b.tending.Add(1)
	b.quiet = time.AfterFunc(quietFor, func() {
		defer b.tending.Done()
		_ = b.Settle() // what can't be now is done when the book is put down
	})
}

// hush ends the waiting for quiet: the book is put down.
func (b *Book) hush() {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.quiet != nil && b.quiet.Stop() {
		b.tending.Done()
	}
	b.quiet = nil
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

// isCopied reports whether the daily copy was tried today. The lock is held.
func (b *Book) isCopied() bool {
	return b.options.NoCopies || b.copied == civil.Of(b.options.Now())
}

// copyToday makes the daily copies, if they have not been tried today. One that can't be
// made keeps nobody from the book; a check tells. The lock is not held, so that others may
// write meanwhile.
func (b *Book) copyToday() {
	b.mu.Lock()
	due := b.why == nil && b.conn != nil && b.sequence > 0 && !b.isCopied()
	if due {
		b.copied = civil.Of(b.options.Now())
	}
	b.mu.Unlock()
	if !due {
		return
	}
	for _, folder := range b.copyFolders() {
		_ = b.dailyCopy(folder)
	}
	_ = b.mendJournal()
}
