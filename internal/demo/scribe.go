package demo

import (
	"encoding/json"
	"math/rand/v2"
	"time"

	"eyeup/civil"
	"eyeup/stock"
)

// Gardener is the id of whoever wrote the invented garden's entries.
const Gardener = "p1"

// Scribe writes entries of the invented garden down: the same ones each time.
type Scribe struct {
	chance *rand.Rand
	ids    *rand.ChaCha8
}

// NewScribe returns a scribe at the beginning.
func NewScribe() *Scribe {
	return &Scribe{rand.New(rand.NewPCG(2027, 34)), rand.NewChaCha8([32]byte{20, 27})}
}

// said is what an entry has to say.
type said map[string]any

// Entry writes an entry down in the evening of its day.
func (s *Scribe) Entry(on civil.Date, kind string, body map[string]any) stock.Entry {
	evening := on.UTC().Add(23 * time.Hour)
	id, err := stock.NewID(evening, s.ids)
	if err != nil {
		panic(err) // this chance never ends
	}
	text, err := json.Marshal(body)
	if err != nil {
		panic(err) // texts and numbers alone
	}
	canonical, err := stock.Canonical(text)
	if err != nil {
		panic(err)
	}
	return stock.Entry{ID: id, Kind: kind, Version: 1, On: on, Written: evening, Offset: "-05:00", Who: Gardener, Body: canonical}
}

// upTo draws a whole number from 0 to most.
func (s *Scribe) upTo(most int) int { return s.chance.IntN(most + 1) }

// some draws how many of n, each with the given odds.
func (s *Scribe) some(n int, odds float64) int {
	k := 0
	for range n {
		if s.chance.Float64() < odds {
			k++
		}
	}
	return k
}
