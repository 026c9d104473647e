package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"eyeup/internal/book"
	"eyeup/stock"
)

// fillDisk lets the disk be full at each write of an append, of a copy and of the making
// of a book; what was acknowledged stays, what was not is told, and there is room again
// afterwards.
func fillDisk(folder string, until time.Time, seed uint64) (t toll) {
	for n := uint64(0); time.Now().Before(until); n++ {
		t.add(fillOnce(folder, seed+n))
		if len(t.wrong) > 0 {
			return t
		}
	}
	return t
}

func fillOnce(folder string, seed uint64) (t toll) {
	name := fmt.Sprintf("full-%d", seed)
	d := newDisk(name)
	here := filepath.Join(folder, name)
	defer os.RemoveAll(here)
	if err := os.MkdirAll(here, 0o700); err != nil {
		t.fault("%v", err)
		return t
	}
	path := filepath.Join(here, "a.book")
	o := book.Options{NoCopies: true, VFS: name, OpenPlain: d.OpenPlain}
	b := fillWhileMaking(&t, d, path, o, int(seed%20))
	if b == nil {
		return t
	}
	defer b.Close()
	h := newHand(seed)
	var acknowledged []stock.ID
	for room := range 24 {
		d.limit(room)
		t.tried++
		e := h.next()
		_, err := b.Append(e)
		d.limit(-1)
		var refused *stock.Refusal
		switch {
		case errors.As(err, &refused):
		case err == nil:
			acknowledged = append(acknowledged, e.ID)
		default:
			if _, err := b.Append(e); err != nil {
				t.fault("there is room again, yet: %v", err)
				return t
			}
			acknowledged = append(acknowledged, e.ID)
		}
		if room%6 == 5 {
			fillWhileCopying(&t, d, b, filepath.Join(here, fmt.Sprintf("copy-%d.book", room)), room)
		}
	}
	if err := b.Settle(); err != nil {
		t.fault("%v", err)
	}
	t.count(path, acknowledged)
	if t.lost == 0 && t.doubled == 0 && len(t.wrong) == 0 {
		t.held = t.tried
	}
	return t
}

func (d *disk) limit(room int) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.room = room
}

// fillWhileMaking makes a book with the disk full ever later, from a write on, until one
// can be made.
func fillWhileMaking(t *toll, d *disk, path string, o book.Options, room int) *book.Book {
	for ; ; room += 20 {
		d.limit(room)
		b, err := book.Create(path, o)
		d.limit(-1)
		if err == nil {
			return b
		}
		if _, gone := os.Stat(path); !errors.Is(gone, os.ErrNotExist) {
			t.fault("half a book was left behind: %v", err)
			return nil
		}
		if room > 3000 {
			t.fault("no book can be made: %v", err)
			return nil
		}
	}
}

// fillWhileCopying sees that a copy is whole or is not there.
func fillWhileCopying(t *toll, d *disk, b *book.Book, path string, room int) {
	d.limit(room)
	err := b.CopyTo(path)
	d.limit(-1)
	if err != nil {
		if _, gone := os.Stat(path); !errors.Is(gone, os.ErrNotExist) {
			t.fault("half a copy was left behind")
		}
		return
	}
	if _, err := held(path); err != nil {
		t.fault("the copy: %v", err)
	}
}
