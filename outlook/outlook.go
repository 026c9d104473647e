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

// Store is the air of a store, January first.
type Store struct {
	Temperature [12]quantity.Temperature
	Humidity    [12]quantity.Share
}

// Question holds the inputs of Reckon.
type Question struct {
	Book   *stock.Book
	Today  civil.Date
	At     civil.Date // today or later
	Stores map[string]Store
	Kinds  func(name string) (*culture.Kind, bool) // with the garden's own figures; culture.Lookup if nil
}

// Answer is the result of Reckon.
type Answer struct {
	At        civil.Date
	Varieties []Variety  // by kind and name
	Crates    []Crate    // weight lost so far, driest first
	Rounds    []Proposal // the most informative rounds, best first
	Assumed   []string   // assumptions made where the book says nothing
}

// Variety is what to count on of one variety.
type Variety struct {
	Kind, Name string
	Clumps     int         // in store today, without those found soft
	Others     int         // divisions and corms in store today, likewise
	Elsewhere  int         // in pots, trays and beds, as they stand
	Through    odds.Amount // clumps, divisions and corms that survive to the date
	Pieces     odds.Amount // good divisions from a clump; 0 if its kind gives none
	Divided    int         // clumps of it that the book says were divided
	Good       odds.Amount // good divisions and corms at the date if all clumps are cut
	Wanted     int         // to be planted and kept in reserve
	Enough     float64     // probability of at least Wanted; 1 if Wanted is 0
	Why        string      // why there is no estimate; else empty
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
	Wrinkles   civil.When    // when the skin begins to wrinkle; zero if never
	ToDo       string
}

// Proposal is a round that would give information.
type Proposal struct {
	Code, Name string
	Spot       stock.Spot
	Count      int
	Last       civil.Date  // date of the last round there; zero if none
	Alive      odds.Amount // of these, today
}

// lying is stock in store with the data for its forecast.
type lying struct {
	lot    stock.Lot
	at     stock.Standing
	stored keeping.Stock
	store  Store
	alive  int // today, without those found soft
	last   civil.Date
	rounds []keeping.Round
}

// kept are the forms of stock that are stored.
var kept = []stock.Form{stock.Clump, stock.Division, stock.Corm}

// Reckon answers a Question. A date in the past is an error.
func Reckon(q Question) (*Answer, error) {
	if q.At.Before(q.Today) {
		return nil, fmt.Errorf("%s is past; ask for today or a later day", q.At)
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

// reckoning is the state while a question is answered.
type reckoning struct {
	Question
	order     []sort
	lying     map[sort][]lying
	elsewhere map[sort]int
	wanted    map[sort]int
	rounds    map[heap][]stock.Round
	assumed   map[string]bool
}

// heap is one lot at one spot since a day: the unit that rounds examine.
type heap struct {
	lot   stock.LotID
	spot  stock.Spot
	since civil.Date
}

// key sorts heaps, for a fixed order.
func (h heap) key() string { return h.lot.String() + " " + h.since.String() + " " + h.spot.String() }

func roundsOf(all []stock.Round) map[heap][]stock.Round {
	by := map[heap][]stock.Round{}
	for _, r := range all {
		h := heap{r.Lot, r.Spot, r.Since}
		by[h] = append(by[h], r)
	}
	return by
}

// gather groups stock by variety, and separates stored from growing stock.
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

// lie returns how a lot is stored and what its rounds found.
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
