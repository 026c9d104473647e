package main

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"time"

	"eyeup/internal/book"
	"eyeup/stock"
)

// jumpClock opens a book day after day with a clock that now and then jumps by years, both
// ways, deletes the book, and restores it: no copy that mattered was cleared away, and the
// one that holds most is taken.
func jumpClock(folder string, until time.Time, seed uint64) (t toll) {
	for n := uint64(0); time.Now().Before(until); n++ {
		t.add(jumpOnce(filepath.Join(folder, fmt.Sprintf("jump-%d", n)), seed+n))
		if len(t.wrong) > 0 {
			return t
		}
	}
	return t
}

func jumpOnce(here string, seed uint64) (t toll) {
	defer os.RemoveAll(here)
	chance := rand.New(rand.NewPCG(seed, 4))
	path := filepath.Join(here, "a.book")
	if err := os.MkdirAll(here, 0o700); err != nil {
		t.fault("%v", err)
		return t
	}
	now := time.Date(2027, 1, 1, 9, 0, 0, 0, time.UTC)
	clock := func() time.Time { return now }
	h := newHand(seed)
	b, err := book.Create(path, book.Options{Now: clock, NoCopies: true})
	var acknowledged []stock.ID
	for day := 0; err == nil && day < 40; day++ {
		true := now
		if chance.IntN(8) == 0 {
			now = now.AddDate(chance.IntN(140)-70, 0, 0)
		}
		for range 3 {
			e := h.next()
			if _, err := b.Append(e); err == nil {
				acknowledged = append(acknowledged, e.ID)
			}
		}
		if err = b.Close(); err == nil {
			b, err = book.Open(path, book.Options{Now: clock}) // makes the copy of the day
		}
		now = true.AddDate(0, 0, 1)
	}
	if err == nil {
		err = b.Close()
	}
	for _, gone := range []string{path, path + ".journal"} {
		if err == nil {
			err = os.Remove(gone)
		}
	}
	if err == nil {
		_, err = book.Restore(path, "", book.Options{Now: clock})
	}
	t.tried++
	if err != nil {
		t.fault("clock: %v", err)
		return t
	}
	t.count(path, acknowledged)
	t.heldIfWhole()
	return t
}
