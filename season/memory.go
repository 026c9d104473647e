package season

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"

	"eyeup/culture"
	"eyeup/place"
)

// Memory keeps what the seasons of one garden have in common from one to the next: what its
// places were like in every year, and how plants fared by each way through them. A change of
// prices or counts then runs no place and leads no plant through its years again, and a change
// of one level only what passes that place. What is remembered is never taken for anything
// else: a season comes out the same with it and without. It may serve several at once. Its
// zero value is empty.
type Memory struct {
	mu  sync.Mutex
	now *recall
}

// recall is what is remembered. All of it rests on the same ground.
type recall struct {
	ground   string
	garden   *Given // holds what the ground names by its address
	rates    rates
	climates remembered[climateKey, *climate]
	lives    remembered[lifeKey, lifeOrWhy]
	lived    remembered[livedKey, *outcome]
	takes    remembered[weighed, []Take]
	settled  sync.Once
}

// settle bounds what is remembered by what the first season of the garden asked for: as many
// ways lived through, and twice as many climates, so that each of a house's levels can be
// looked at in turn. A climate of ten kinds and thirty years takes some 3 MB, a way some 5 KB.
func (r *recall) settle() {
	r.settled.Do(func() {
		r.climates.keepTo(2 * r.climates.len())
		r.lived.keepTo(r.lived.len())
		r.takes.keepTo(r.lived.most)
	})
}

// of returns what is remembered of a garden, and nothing where it is not the one of before.
func (k *Memory) of(b *Brief) *recall {
	kinds := b.Given.kindsOfStock()
	ground := groundOf(b, kinds)
	if k == nil {
		return newRecall(b, ground, kinds)
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.now == nil || k.now.ground != ground {
		k.now = newRecall(b, ground, kinds)
	}
	return k.now
}

func newRecall(b *Brief, ground string, kinds []*culture.Kind) *recall {
	return &recall{ground: ground, garden: &b.Given, rates: ratesOf(kinds)}
}

// kindsOfStock returns the kinds of all the stock, wanted or not, by their names.
func (g *Given) kindsOfStock() []*culture.Kind {
	known := map[string]*culture.Kind{}
	for _, h := range g.Stock {
		if k, is := g.Kinds(h.Variety.Kind); is {
			known[k.Name] = k
		}
	}
	var kinds []*culture.Kind
	for _, name := range slices.Sorted(maps.Keys(known)) {
		kinds = append(kinds, known[name])
	}
	return kinds
}

// groundOf identifies everything that all seasons of a garden rest on, however they are changed,
// to the last digit: its weather, site and span, its kinds, and its places without their
// levels and what their heat costs. The hours of the weather are distinguished by where they
// lie, so they must not be changed once a season has been worked out of them.
func groundOf(b *Brief, kinds []*culture.Kind) string {
	var s strings.Builder
	fmt.Fprintf(&s, "%#v %#v %#v", b.Given.Site, b.Given.Span, b.Asked.Fits)
	for _, hours := range b.Given.Weather {
		fmt.Fprintf(&s, " %p", hours)
	}
	for _, p := range b.Given.Places {
		p.Levels, p.Level, p.Energy = nil, nil, Price{}
		fmt.Fprintf(&s, " %#v", p)
	}
	for _, k := range kinds {
		fmt.Fprintf(&s, " %#v", *k)
	}
	return s.String()
}

// climateKey identifies a place at a setting.
type climateKey struct {
	place   int
	setting string
}

// exactly identifies a setting, to the last digit.
func exactly(s place.Setting) string { return fmt.Sprintf("%#v", s.Steps) }

// lifeOrWhy is the life of a sort of batch, or why it has none.
type lifeOrWhy struct {
	*life
	why error
}

// remembered keeps what was computed, the latest at least. It may serve several at once: what
// two ask for at the same time is computed once.
type remembered[K comparable, V any] struct {
	mu         sync.Mutex
	most       int                // of the young; 0: there is no end to them
	young, old map[K]*reckoned[V] // when the young are too many they are the old, who are forgotten
}

type reckoned[V any] struct {
	once  sync.Once
	value V
}

// get returns what is known under a key, reckoning it where it is not.
func (r *remembered[K, V]) get(key K, reckon func() V) V {
	one := r.at(key)
	one.once.Do(func() { one.value = reckon() })
	return one.value
}

func (r *remembered[K, V]) at(key K) *reckoned[V] {
	r.mu.Lock()
	defer r.mu.Unlock()
	one := r.young[key]
	if one != nil {
		return one
	}
	if one = r.old[key]; one == nil {
		one = &reckoned[V]{}
	}
	if r.young == nil || r.most > 0 && len(r.young) >= r.most {
		r.old, r.young = r.young, map[K]*reckoned[V]{}
	}
	r.young[key] = one
	return one
}

// len returns how many are remembered.
func (r *remembered[K, V]) len() int {
	r.mu.Lock()
	defer r.mu.Unlock()
	return len(r.young) + len(r.old)
}

// keepTo bounds how many are remembered: the latest most at least, and at most twice as many.
func (r *remembered[K, V]) keepTo(most int) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.most = most
}

// liveAll lives through all that plans at some levels may choose from, on as many cores as
// there are.
func (m *Planner) liveAll(all []Levels) {
	var sorts []sortOf
	var wait sync.WaitGroup
	for _, b := range m.batches {
		if one := (sortOf{b.life, b.store}); !slices.Contains(sorts, one) {
			sorts = append(sorts, one)
			wait.Go(func() {
				for _, at := range all {
					m.options(b, at)
				}
			})
		}
	}
	wait.Wait()
}
