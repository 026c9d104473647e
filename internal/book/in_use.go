package book

import (
	"errors"
	"fmt"

	"github.com/gofrs/flock"
)

// lockSuffix is what the name of the file has after the book's own by which programs tell
// each other that the book is open. The file is empty and stays.
const lockSuffix = "-lock"

// ErrOpen is returned for a restoring while a program has the book open.
var ErrOpen = errors.New("the book is open in another program")

// holdOpen says to others that the book is open for writing, until it is put down. Where
// the file system knows no such locks, nothing is said.
func (b *Book) holdOpen() error {
	if b.why != nil || b.options.noJournal {
		return nil
	}
	l := flock.New(b.path+lockSuffix, flock.SetPermissions(0o600))
	got, err := l.TryRLock()
	if err != nil {
		return nil // no such locks here; network reports such folders
	}
	if !got {
		return errors.New("the book is being restored by another program; wait until it has ended")
	}
	b.inUse = l
	return nil
}

// takeAlone makes sure that no program has the book at path open, and keeps others from
// opening it until free is called.
func takeAlone(path string) (free func(), err error) {
	l := flock.New(path+lockSuffix, flock.SetPermissions(0o600))
	got, err := l.TryLock()
	if err != nil {
		return func() {}, nil // no such locks here
	}
	if !got {
		return nil, fmt.Errorf("%w; close its pages and every other program that uses it, then restore", ErrOpen)
	}
	return func() { _ = l.Close() }, nil
}
