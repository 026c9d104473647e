package outlook

import (
	"cmp"
	"errors"
	"maps"
	"math"
	"slices"
	"strings"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/keeping"
	"eyeup/odds"
	"eyeup/stock"
)

// usualPack is the packing assumed where the book gives none. A kind's usual success refers to
// it.
const usualPack = "vermiculite"

// stored returns the stock in a store and the store's air. It assumes the usual for the kind
// where the book says nothing, and records each assumption.
func (r *reckoning) stored(kind *culture.Kind, name string, at stock.Spot, pack string) (keeping.Stock, Store) {
	s := keeping.Stock{Kind: name, Form: string(at.Form), Pack: pack, Culture: kind}
	if pack == "" || !slices.Contains(keeping.Packs(), pack) {
		if pack == "" {
			r.assumed["packing, where the book does not give it: "+usualPack] = true
		} else {
			r.assumed[pack+" packing, for which there are no figures: as "+usualPack] = true
		}
		s.Pack = usualPack
	}
	store, known := r.Stores[at.Place]
	if known {
		return s, store
	}
	r.assumed["the air of "+at.Place+", which the book does not describe: as usual for the kind"] = true
	return s, usualStore(kind)
}

// usualStore returns a store as advised for a kind, at half humidity all year.
func usualStore(kind *culture.Kind) (s Store) {
	celsius, humidity := math.NaN(), culture.Usual("store.air")
	if kind != nil {
		if f, known := kind.Figure("store.temperature"); known {
			celsius = f.Value
		}
	}
	for m := range 12 {
		s.Temperature[m], s.Humidity[m] = celsiusOf(celsius), shareOf(humidity)
	}
	return s
}

// asKept converts rounds of the book to rounds of package keeping, which removes soft stock:
// stock that stays in store and is soft again in the next round is not counted as lost twice.
func asKept(rounds []stock.Round, since civil.Date) []keeping.Round {
	var all []keeping.Round
	soft := 0
	for _, r := range rounds {
		gone := r.Soft + r.Lost
		if r.Whole {
			gone = max(0, gone-soft)
			soft = r.Soft
		}
		all = append(all, keeping.Round{Day: float64(r.On.Sub(since)), Firm: r.Firm, Wrinkled: r.Wrinkled, Lost: gone})
	}
	return all
}

// spells returns the air of the store from the day stock was stored to another.
func (y *lying) spells(to civil.Date) []keeping.Spell {
	if to.Before(y.at.Since) {
		return nil
	}
	return keeping.Monthly(y.store.Temperature, y.store.Humidity, civil.Span{From: y.at.Since, To: to.AddDays(-1)})
}

// paces are the beliefs about how fast each kind and each variety is lost in this garden.
type paces struct {
	kinds     map[string]keeping.Pace
	varieties map[sort]keeping.Pace
	why       map[string]error // by kind: why nothing can be computed
}

// paces uses every round of the book: first each variety alone, then the kind from its
// varieties, then each variety again, shrunk towards its kind.
func (r *reckoning) paces() *paces {
	p := &paces{map[string]keeping.Pace{}, map[sort]keeping.Pace{}, map[string]error{}}
	for _, key := range r.order {
		for i := range r.lying[key] {
			if _, known := p.kinds[key.kind]; !known && p.why[key.kind] == nil {
				y := &r.lying[key][i]
				pace, err := keeping.Reckoned(y.stored, y.spells(r.At))
				if err != nil {
					p.why[key.kind] = err
					continue
				}
				p.kinds[key.kind] = pace
			}
		}
	}
	told := p.hear(r.heaps())
	for _, key := range slices.SortedFunc(maps.Keys(told), compareSorts) {
		h := told[key]
		p.kinds[key.kind] = h.to(p.kinds[key.kind], spreadOfVarieties(p.kinds[key.kind]))
	}
	for _, key := range r.order {
		if pace, known := p.kinds[key.kind]; known {
			p.varieties[key] = told[key].to(pace.OfVariety(), 0)
		}
	}
	return p
}

func compareSorts(a, b sort) int {
	return cmp.Or(strings.Compare(a.kind, b.kind), strings.Compare(a.name, b.name))
}

// heard is the evidence of rounds about a variety's pace: mean of the logarithm and weight
// (one over its variance); zero without rounds.
type heard struct{ mean, weight float64 }

// hear updates the prior for any variety of the kind by the rounds of each variety, and then
// removes the prior, so that the evidence remains.
func (p *paces) hear(all []looked) map[sort]heard {
	after := map[sort]keeping.Pace{}
	for i := range all {
		h := &all[i]
		pace, begun := after[h.key]
		if !begun {
			kind, known := p.kinds[h.key.kind]
			if !known {
				continue
			}
			pace = kind.OfVariety()
		}
		after[h.key] = h.fold(pace)
	}
	told := map[sort]heard{}
	for key, a := range after {
		prior := p.kinds[key.kind].OfVariety()
		before, now := 1/square(prior.Spread), 1/square(a.Spread)
		if now > before*(1+1e-9) {
			mean := (math.Log(a.Middle)*now - math.Log(prior.Middle)*before) / (now - before)
			told[key] = heard{mean, now - before}
		}
	}
	return told
}

// to adds evidence to a belief. apart is the variance between what the evidence is about and
// what the belief is about.
func (h heard) to(p keeping.Pace, apart float64) keeping.Pace {
	if h.weight == 0 {
		return p
	}
	weight := 1 / (1/h.weight + square(apart))
	before := 1 / square(p.Spread)
	mean := (math.Log(p.Middle)*before + h.mean*weight) / (before + weight)
	return keeping.Pace{Middle: math.Exp(mean), Spread: math.Sqrt(1 / (before + weight))}
}

// spreadOfVarieties returns how much varieties of a kind differ, by package keeping.
func spreadOfVarieties(kind keeping.Pace) float64 {
	return math.Sqrt(square(kind.OfVariety().Spread) - square(kind.Spread))
}

// looked is a heap examined by rounds, in this winter or another.
type looked struct {
	heap   heap
	key    sort
	stored keeping.Stock
	spells []keeping.Spell
	rounds []keeping.Round
}

// fold updates a pace by the rounds; rounds that can't be used leave it unchanged.
func (l *looked) fold(p keeping.Pace) keeping.Pace {
	after, err := p.After(l.stored, l.spells, l.rounds)
	if err != nil || math.IsNaN(after.Middle) {
		return p
	}
	return after
}

func (r *reckoning) heaps() []looked {
	var all []looked
	for h, rounds := range r.rounds {
		if !slices.Contains(kept, h.spot.Form) {
			continue
		}
		first, last := rounds[0], rounds[len(rounds)-1]
		kind, _ := r.Kinds(first.Kind)
		stored, store := r.stored(kind, first.Kind, h.spot, first.Pack)
		span := civil.Span{From: h.since, To: last.On.AddDays(-1)}
		all = append(all, looked{
			h, sort{first.Kind, first.Variety}, stored,
			keeping.Monthly(store.Temperature, store.Humidity, span), asKept(rounds, h.since),
		})
	}
	slices.SortFunc(all, func(a, b looked) int { return strings.Compare(a.heap.key(), b.heap.key()) })
	return all
}

// through returns the belief about the share of living stock that survives to a day, counted
// from the last round or from the day of storing.
func (y *lying) through(p keeping.Pace, to civil.Date) (odds.Beta, error) {
	from := y.at.Since
	if !y.last.IsZero() {
		from = y.last
	}
	days := float64(to.Sub(y.at.Since))
	if days <= 0 || !from.Before(to) {
		return odds.BetaOf(1-1e-9, 1e6), nil
	}
	return p.Through(y.stored, y.spells(to), float64(from.Sub(y.at.Since)), days)
}

// plainWhy rewords why nothing can be computed.
func plainWhy(err error) string {
	if errors.Is(err, keeping.ErrFrozen) {
		return "its store freezes: check it and note what is firm"
	}
	return err.Error()
}
