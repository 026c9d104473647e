package main

import (
	"path/filepath"
	"testing"

	"eyeup/internal/book"
	"eyeup/stock"
)

// One sync makes a go durable, however many entries it has; none more, none less.
func TestOneSyncForEachGo(t *testing.T) {
	d := newDisk("counting")
	b, err := book.Create(filepath.Join(t.TempDir(), "a.book"), book.Options{NoCopies: true, VFS: "counting", OpenPlain: d.OpenPlain})
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	h := newHand(1)
	if _, err := b.Append(h.next()); err != nil { // the first of a session also syncs the log's head
		t.Fatal(err)
	}
	goes, before := 0, d.syncs
	var last stock.Entry
	for range 200 {
		e := h.next()
		if _, err := b.Append(e); err == nil {
			goes++
			last = e
		}
	}
	if got := d.syncs - before; got != goes || goes < 100 {
		t.Errorf("%d syncs for %d goes", got, goes)
	}
	before = d.syncs
	if _, err := b.Append(last); err != nil || d.syncs != before {
		t.Errorf("sent again: %d syncs more, %v", d.syncs-before, err)
	}
}

func TestPowerLoss(t *testing.T) {
	told(t, cutOnce(t.TempDir(), 11))
}

func TestDiskFull(t *testing.T) {
	told(t, fillOnce(t.TempDir(), 11))
}

func told(t *testing.T, got toll) {
	t.Helper()
	if got.acknowledged == 0 || got.lost > 0 || got.doubled > 0 || len(got.wrong) > 0 {
		t.Errorf("%+v", got)
	}
}
