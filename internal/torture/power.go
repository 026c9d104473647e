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

// cutPower writes in a book on a disk whose power is cut at random moments, and looks what
// is left each time: every entry acknowledged before must be there.
func cutPower(folder string, until time.Time, seed uint64) (t toll) {
	for n := uint64(0); time.Now().Before(until); n++ {
		t.add(cutOnce(folder, seed+n))
		if len(t.wrong) > 0 {
			return t
		}
	}
	return t
}

// cutOnce fills one book and cuts its power a dozen times.
func cutOnce(folder string, seed uint64) (t toll) {
	chance := rand.New(rand.NewPCG(seed, 2))
	name := fmt.Sprintf("power-%d", seed)
	d := newDisk(name)
	here := filepath.Join(folder, name)
	defer os.RemoveAll(here)
	if err := os.MkdirAll(here, 0o700); err != nil {
		t.fault("%v", err)
		return t
	}
	b, err := book.Create(filepath.Join(here, "a.book"), book.Options{NoCopies: true, VFS: name, OpenPlain: d.OpenPlain})
	if err != nil {
		t.fault("%v", err)
		return t
	}
	defer b.Close()
	h := newHand(seed)
	var acknowledged []stock.ID
	for cut := range 12 {
		for range chance.IntN(12) {
			e := h.next()
			_, err := b.Append(e)
			var refused *stock.Refusal
			if errors.As(err, &refused) {
				continue
			}
			if err != nil {
				t.fault("%v", err)
				return t
			}
			acknowledged = append(acknowledged, e.ID)
		}
		if chance.IntN(4) == 0 {
			_ = b.Settle()
		}
		after := afterCut(d, here, cut, chance, acknowledged)
		after.tried = 1
		after.heldIfWhole()
		t.add(after)
	}
	return t
}

// afterCut looks at what a cut has left, writes one entry more, and looks again.
func afterCut(d *disk, here string, cut int, chance *rand.Rand, acknowledged []stock.ID) (t toll) {
	left := filepath.Join(here, fmt.Sprintf("cut-%d", cut))
	if err := os.MkdirAll(left, 0o700); err != nil {
		t.fault("%v", err)
		return t
	}
	if err := d.cut(left, chance); err != nil {
		t.fault("%v", err)
		return t
	}
	path := filepath.Join(left, "a.book")
	t.count(path, acknowledged)
	if len(t.wrong) > 0 {
		return t
	}
	again, err := book.Open(path, book.Options{NoCopies: true})
	if err != nil {
		t.fault("%v", err)
		return t
	}
	defer again.Close()
	if _, err := again.Append(newHand(chance.Uint64()).next()); err != nil {
		t.fault("after a cut nothing can be written: %v", err)
	}
	return t
}
