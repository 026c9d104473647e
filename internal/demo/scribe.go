package demo

import (
	"encoding/json"
	"math/rand/v2"
	"time"

	"eyeup/civil"
	"eyeup/stock"
)

// Gardener is the id of the person who wrote the invented garden's entries.
const Gardener = "p1"

// Scribe writes entries of the invented garden, always the same ones.
type Scribe struct {
	chance *rand.Rand
	ids    *rand.ChaCha8
}

// NewScribe returns a scribe in its initial state.
func NewScribe() *Scribe {
	return &Scribe{rand.New(rand.NewPCG(2027, 34)), rand.NewChaCha8([32]byte{20, 27})}
}

// said is the body of an entry.
type said map[string]any

// Entry makes an entry written in the evening of its day.
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

// some returns how many of n have an outcome with the given probability.
func (s *Scribe) some(n int, odds float64) int {
	k := 0
	for range n {
		if s.chance.Float64() < odds {
			k++
		}
	}
	return k
}
