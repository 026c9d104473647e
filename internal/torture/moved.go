package main

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"time"

	"eyeup/internal/book"
	"eyeup/stock"
)

// befalls is what befalls the file of a book while it is open.
var befalls = []struct {
	name string
	do   func(path string) error
	undo func(path string) error // back to how it was; nil where that can't be
}{
	{"moved", func(p string) error { return os.Rename(p, p+".x") }, func(p string) error { return os.Rename(p+".x", p) }},
	{"hard-linked", func(p string) error { return os.Link(p, p+".x") }, func(p string) error { return os.Remove(p + ".x") }},
	{"deleted", os.Remove, nil},
	{"replaced", func(p string) error {
		return errors.Join(os.Rename(p, p+".x"), os.WriteFile(p, []byte("SQLite format 3\x00"), 0o600))
	}, func(p string) error { return os.Rename(p+".x", p) }},
	{"without its write-ahead log", func(p string) error { return os.Remove(p + "-wal") }, nil},
}

// moveFiles moves, deletes, replaces and links the file of an open book between entries:
// what is acknowledged is there afterwards, in the book or brought back by a restoring.
func moveFiles(folder string, until time.Time, seed uint64) (t toll) {
	chance := rand.New(rand.NewPCG(seed, 5))
	for n := uint64(0); time.Now().Before(until); n++ {
		t.add(moveOnce(filepath.Join(folder, fmt.Sprintf("move-%d", n)), seed+n, chance))
		if len(t.wrong) > 0 {
			return t
		}
	}
	return t
}

func moveOnce(here string, seed uint64, chance *rand.Rand) (t toll) {
	defer os.RemoveAll(here)
	path := filepath.Join(here, "a.book")
	if err := os.MkdirAll(here, 0o700); err != nil {
		t.fault("%v", err)
		return t
	}
	b, err := book.Create(path, book.Options{NoCopies: true})
	if err != nil {
		t.fault("%v", err)
		return t
	}
	h := newHand(seed)
	var acknowledged []stock.ID
	write := func() {
		for range 1 + chance.IntN(20) {
			e := h.next()
			if _, err := b.Append(e); err == nil {
				acknowledged = append(acknowledged, e.ID)
			}
		}
	}
	write()
	what := befalls[chance.IntN(len(befalls))]
	t.tried++
	err = what.do(path)
	before := len(acknowledged)
	write()
	if err != nil || len(acknowledged) > before {
		t.fault("%s: %d entries were acknowledged after it (%v)", what.name, len(acknowledged)-before, err)
	}
	if what.undo != nil {
		if err := what.undo(path); err != nil {
			t.fault("%s: %v", what.name, err)
		}
		write()
	}
	if err := b.Close(); err != nil && what.undo != nil {
		t.fault("%s: %v", what.name, err)
	}
	if r, err := book.Check(path, book.Options{NoCopies: true}); what.name == "deleted" || err != nil || !r.Whole() {
		if _, err := book.Restore(path, "", book.Options{NoCopies: true, Now: time.Now}); err != nil {
			t.fault("%s: %v", what.name, err)
		}
	}
	t.count(path, acknowledged)
	t.heldIfWhole()
	return t
}
