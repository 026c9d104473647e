package main

import (
	"bufio"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"time"

	"eyeup/civil"
	"eyeup/internal/book"
	"eyeup/stock"
)

// autumn is the day on which everything happens here.
var autumn = civil.MustOn(2026, 11, 2)

// hand writes entries that chance gives it, each with an id that is never used again.
type hand struct {
	chance *rand.Rand
	ids    io.Reader
	lots   []string
}

func newHand(seed uint64) *hand {
	var key [32]byte
	binary.LittleEndian.PutUint64(key[:], seed)
	return &hand{rand.New(rand.NewPCG(seed, 9)), rand.NewChaCha8(key), nil}
}

// next writes the next entry: stock taken in, moved, given away, looked at, or a note.
func (h *hand) next() stock.Entry {
	id, err := stock.NewID(time.Now(), h.ids)
	if err != nil {
		panic(err)
	}
	e := stock.Entry{ID: id, Version: 1, On: autumn}
	what := h.chance.IntN(5)
	if len(h.lots) == 0 {
		what = 0
	}
	var lot string
	if what > 0 {
		lot = h.lots[h.chance.IntN(len(h.lots))]
	}
	body := ""
	switch what {
	case 0:
		e.Kind = "taken in"
		body = fmt.Sprintf(`{"count":%d,"form":"clump","kind":"dahlia","place":"cellar","variety":"Variety %d"}`, 50+h.chance.IntN(50), h.chance.IntN(40))
		h.lots = append(h.lots, stock.LotID{Entry: id}.String())
	case 1:
		e.Kind = "given away"
		body = fmt.Sprintf(`{"count":1,"lot":%q}`, lot)
	case 2:
		e.Kind = "round"
		body = fmt.Sprintf(`{"firm":%d,"lot":%q,"whole":true}`, 30+h.chance.IntN(20), lot)
	case 3:
		e.Kind = "divided"
		body = fmt.Sprintf(`{"clumps":1,"from":%q,"good":%d}`, lot, 1+h.chance.IntN(8))
	case 4:
		e.Kind = "note"
		body = fmt.Sprintf(`{"text":"%s"}`, note[:h.chance.IntN(len(note))])
	}
	e.Body = []byte(body)
	return e
}

const note = "A note may be short or long, so that entries end anywhere within a page of the book, and now and then beyond it."

// write is one writing program: it prints the id of each entry when the book has
// acknowledged it, until it is killed or its input ends.
func write(path string, seed uint64, behind time.Duration) int {
	o := book.Options{NoCopies: true, Busy: time.Minute, Now: func() time.Time { return time.Now().Add(-behind) }}
	b, err := book.Open(path, o)
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	done := make(chan struct{})
	go func() { _, _ = io.Copy(io.Discard, os.Stdin); close(done) }()
	h := newHand(seed)
	out := bufio.NewWriter(os.Stdout)
	for n := 0; ; n++ {
		select {
		case <-done:
			if err := b.Close(); err != nil {
				fmt.Fprintln(os.Stderr, err)
				return 1
			}
			return 0
		default:
		}
		e := h.next()
		_, err := b.Append(e)
		var refused *stock.Refusal
		switch {
		case errors.As(err, &refused):
			continue
		case err != nil:
			fmt.Fprintln(os.Stderr, err)
			return 1
		}
		fmt.Fprintln(out, e.ID)
		if err := out.Flush(); err != nil {
			return 1
		}
		if n%100 == 99 {
			_ = b.Settle() // checkpoints are interrupted too
		}
	}
}
