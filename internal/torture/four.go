package main

import (
	"path/filepath"
	"time"

	"eyeup/stock"
)

// fourWriters lets four programs write in one book at once, one of them with its clock a
// day behind.
func fourWriters(folder string, until time.Time, seed uint64) (t toll) {
	path := filepath.Join(folder, "four.book")
	if !begin(&t, path) {
		return t
	}
	var children []child
	var streams []<-chan stock.ID
	for n := range uint64(4) {
		behind := time.Duration(0)
		if n == 3 {
			behind = 24 * time.Hour
		}
		c, ids, err := startWriter(path, seed+1000*n, behind)
		if err != nil {
			t.fault("%v", err)
			return t
		}
		children, streams = append(children, c), append(streams, ids)
	}
	time.Sleep(time.Until(until))
	var acknowledged []stock.ID
	for n, c := range children {
		if err := c.in.Close(); err != nil {
			t.fault("%v", err)
		}
		before := len(acknowledged)
		for id := range streams[n] {
			acknowledged = append(acknowledged, id)
		}
		if err := c.cmd.Wait(); err != nil {
			t.fault("writer %d: %v", n, err)
		}
		if len(acknowledged) == before {
			t.fault("writer %d never had its turn", n)
		}
	}
	t.count(path, acknowledged)
	t.tried = 1
	t.heldIfWhole()
	return t
}
