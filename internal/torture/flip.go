package main

import (
	"bytes"
	"errors"
	"math/rand/v2"
	"os"
	"path/filepath"
	"time"

	"eyeup/internal/book"
)

// flipBytes flips a byte anywhere in a book: a check finds it, or the log is the same.
func flipBytes(folder string, until time.Time, seed uint64) (t toll) {
	chance := rand.New(rand.NewPCG(seed, 3))
	path := filepath.Join(folder, "flipped.book")
	b, err := book.Create(path, book.Options{NoCopies: true})
	if err != nil {
		t.fault("%v", err)
		return t
	}
	h := newHand(seed)
	for range 400 {
		if _, err := b.Append(h.next()); err == nil {
			t.acknowledged++
		}
	}
	var log bytes.Buffer
	if err := errors.Join(b.WriteLog(&log), b.Close()); err != nil {
		t.fault("%v", err)
		return t
	}
	whole, err := os.ReadFile(path)
	if err != nil {
		t.fault("%v", err)
		return t
	}
	for time.Now().Before(until) {
		at := chance.IntN(len(whole))
		whole[at] ^= 0x40
		err := os.WriteFile(path, whole, 0o600)
		whole[at] ^= 0x40
		if err != nil {
			t.fault("%v", err)
			return t
		}
		if !foundOrHarmless(path, log.Bytes()) {
			t.fault("byte %d of the book was flipped, and nothing was said", at)
			t.lost++
		}
	}
	return t
}

// foundOrHarmless reports whether a check finds the damage, or the log is as it was.
func foundOrHarmless(path string, log []byte) bool {
	o := book.Options{NoCopies: true}
	r, err := book.Check(path, o)
	if err != nil || !r.Whole() {
		return true
	}
	b, err := book.Open(path, o)
	if err != nil {
		return false
	}
	defer b.Close()
	var now bytes.Buffer
	return b.WriteLog(&now) == nil && bytes.Equal(now.Bytes(), log)
}
