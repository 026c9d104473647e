package outlook

import (
	"fmt"
	"slices"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/keeping"
	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/stock"
)

// Store is what the air of a store is like, January first.
type Store struct {
	Temperature [12]quantity.Temperature
	Humidity    [12]quantity.Share
}

// Question is what is asked.
type Question struct {
	Book   *stock.Book
	Today  civil.Date
	At     civil.Date // today or later
	Stores map[string]Store
	Kinds  func(name string) (*culture.Kind, bool) // with the garden's own figures; culture.Lookup if nil
}

// Answer is what to count on.
type Answer struct {
	At        civil.Date
	Varieties []Variety  // by kind and name
	Crates    []Crate    // what each has lost so far, driest first
	Rounds    []Proposal // where a round would tell most, best first
	Assumed   []string   // what was taken for granted for want of anything better
}

// Variety is what to count on of one variety.
type Variety struct {
	Kind, Name string
	Clumps     int         // in store today, those found soft left out
	Others     int         // divisions and corms in store today, likewise
	Elsewhere  int         // in pots, trays and beds, as they stand
	Through    odds.Amount // clumps, divisions and corms that come through to the date
	Pieces     odds.Amount // good divisions from a clump; nothing where its kind gives none
	Divided    int         // clumps of it divided in this book
	Good       odds.Amount // good divisions and corms at the date, all clumps being cut
	Wanted     int         // to be planted and kept in reserve
	Enough     float64     // odds that there are as many as wanted; 1 where none are
	Why        string      // why nothing is said, where nothing can be
}

// Crate is one lot in one crate of a store.
type Crate struct {
	Code, Name string
	Spot       stock.Spot
	Count      int
	Pack       string
	Since      civil.Date
	Lost       odds.Amount   // share of weight, 0 to 1
	State      keeping.State // at the middle
	Wrinkles   civil.When    // when skin begins to wrinkle; none where it never does
	ToDo       string
}

// Proposal is a round that would tell something.
type Proposal struct {
	Code, Name string
	Spot       stock.Spot
	Count      int
	Last       civil.Date  // of the last round there, none where there was none
	Alive      odds.Amount // of these, today
}

// lying is stock in store, with all that is needed to say what becomes of it.
type lying struct {
	lot    stock.Lot
	at     stock.Standing
	stored keeping.Stock
	store  Store
	alive  int // today, those found soft left out
	last   civil.Date
	rounds []keeping.Round
}

// kept are the forms that lie in a store.
var kept = []stock.Form{stock.Clump, stock.Division, stock.Corm}

// Reckon answers a Question. It fails for a date that is past.
func Reckon(q Question) (*Answer, error) {
	if q.At.Before(q.Today) {
		return nil, fmt.Errorf("%s is past; ask for today or a day to come", q.At)
	}
	if q.Kinds == nil {
		q.Kinds = culture.Lookup
	}
	r := &reckoning{Question: q, assumed: map[string]bool{}, rounds: roundsOf(q.Book.Rounds())}
	r.gather()
	a := &Answer{At: q.At}
	paces := r.paces()
	yields := r.yields()
	for _, key := range r.order {
		a.Varieties = append(a.Varieties, r.variety(key, paces, yields))
	}
	a.Crates = r.crates()
	a.Rounds = r.proposals(paces)
	for what := range r.assumed {
		a.Assumed = append(a.Assumed, what)
	}
	slices.Sort(a.Assumed)
	return a, nil
}

// sort is a variety of a kind.
type sort struct{ kind, name string }

// reckoning is a question on its way to an answer.
type reckoning struct {
	Question
	order     []sort
	lying     map[sort][]lying
	elsewhere map[sort]int
	wanted    map[sort]int
	rounds    map[heap][]stock.Round
	assumed   map[string]bool
}

// heap is one lot at one spot since a day: what rounds look at.
type heap struct {
	lot   stock.LotID
	spot  stock.Spot
	since civil.Date
}

// key orders heaps, so that they are always taken in the same order.
func (h heap) key() string { return h.lot.String() + " " + h.since.String() + " " + h.spot.String() }

func roundsOf(all []stock.Round) map[heap][]stock.Round {
	by := map[heap][]stock.Round{}
	for _, r := range all {
		h := heap{r.Lot, r.Spot, r.Since}
		by[h] = append(by[h], r)
	}
	return by
}

// gather sorts what stands by variety, and what lies in store from what grows.
func (r *reckoning) gather() {
	r.lying, r.elsewhere, r.wanted = map[sort][]lying{}, map[sort]int{}, map[sort]int{}
	for _, h := range r.Book.Holdings() {
		r.wanted[sort{h.Variety.Kind, h.Variety.Name}] += h.Plant + h.Reserve
	}
	for _, l := range r.Book.Lots() {
		key := sort{l.Kind, l.Name()}
		for _, st := range l.Standing {
			if st.Spot.Form == stock.Seed {
				continue
			}
			if !slices.Contains(r.order, key) {
				r.order = append(r.order, key)
			}
			if !slices.Contains(kept, st.Spot.Form) {
				r.elsewhere[key] += st.Count
				continue
			}
			r.lying[key] = append(r.lying[key], r.lie(l, st))
		}
	}
	slices.SortFunc(r.order, compareSorts)
}

// lie finds out how a lot lies in store, and what the rounds have found of it.
func (r *reckoning) lie(l stock.Lot, st stock.Standing) lying {
	y := lying{lot: l, at: st, alive: st.Count}
	kind, _ := r.Kinds(l.Kind)
	y.stored, y.store = r.stored(kind, l.Kind, st.Spot, st.Pack)
	rounds := r.rounds[heap{l.ID, st.Spot, st.Since}]
	y.rounds = asKept(rounds, st.Since)
	if n := len(rounds); n > 0 {
		y.last = rounds[n-1].On
		if rounds[n-1].Whole {
			y.alive = max(0, st.Count-rounds[n-1].Soft)
		}
	}
	return y
}
