package desk

import (
	"cmp"
	"slices"
	"strings"

	"eyeup/civil"
	"eyeup/stock"
)

// Shelf is the stock as it stands, sorted for looking things up.
type Shelf struct {
	Lots      []stock.Lot      // those of which any are left, by kind, variety and code
	Gone      int              // lots used up
	Varieties []VarietyOnShelf // by kind and name
	Places    []PlaceOnShelf   // those where any stand, by name
	Rounds    []stock.Round    // in the order in which they were gone
	Count     int              // individuals of all lots; a packet of seed is one

	words []string // by lot: what a search looks at
}

// VarietyOnShelf is what there is of a variety.
type VarietyOnShelf struct {
	stock.Variety
	Lots  []int // of Shelf.Lots
	Count int
}

// PlaceOnShelf is what stands in a place.
type PlaceOnShelf struct {
	Name   string
	Count  int
	Lots   int
	Crates []CrateOnShelf // by name; the first without one where some stand outside of crates
}

// CrateOnShelf is what stands in one crate, tray or bed.
type CrateOnShelf struct {
	Crate, Bed string
	Holdings   []Held
}

// Held is so many of a lot at one spot.
type Held struct {
	Lot int // of Shelf.Lots
	stock.Standing
	Rounds []*stock.Round // those gone there since they came, the last one last
}

// Round is the last one gone there; nil for none.
func (h Held) Round() *stock.Round {
	if len(h.Rounds) == 0 {
		return nil
	}
	return h.Rounds[len(h.Rounds)-1]
}

// Before is the round before the last one; nil for none.
func (h Held) Before() *stock.Round {
	if len(h.Rounds) < 2 {
		return nil
	}
	return h.Rounds[len(h.Rounds)-2]
}

func newShelf(b *stock.Book) *Shelf {
	s := &Shelf{Rounds: b.Rounds()}
	all := b.Lots()
	s.Lots, s.words = make([]stock.Lot, 0, len(all)), make([]string, 0, len(all))
	for _, l := range all {
		if l.Count() == 0 {
			s.Gone++
			continue
		}
		s.Lots = append(s.Lots, l)
		s.Count += l.Count()
	}
	s.sort()
	s.varieties()
	s.places()
	return s
}

// sort puts the lots in the order of their kinds, names and codes. Lots are large; so it
// is their keys that are sorted.
func (s *Shelf) sort() {
	type keyed struct {
		key string
		at  int
	}
	keys := make([]keyed, len(s.Lots))
	for i := range s.Lots {
		l := &s.Lots[i]
		keys[i] = keyed{l.Kind + "\x00" + strings.ToLower(l.Name()) + "\x00" + string(l.Code), i}
	}
	slices.SortFunc(keys, func(a, b keyed) int { return strings.Compare(a.key, b.key) })
	sorted := make([]stock.Lot, len(keys))
	for i, k := range keys {
		sorted[i] = s.Lots[k.at]
	}
	s.Lots = sorted
}

func (s *Shelf) varieties() {
	type key struct{ kind, name string }
	at := map[key]int{}
	for i := range s.Lots {
		l := &s.Lots[i]
		s.words = append(s.words, strings.ToLower(strings.Join([]string{string(l.Code), l.Name(), l.Kind, spotWords(l)}, " ")))
		k := key{l.Kind, l.Name()}
		n, known := at[k]
		if !known {
			n = len(s.Varieties)
			at[k] = n
			v := l.Variety
			v.Name = l.Name()
			s.Varieties = append(s.Varieties, VarietyOnShelf{Variety: v})
		}
		s.Varieties[n].Lots = append(s.Varieties[n].Lots, i)
		s.Varieties[n].Count += l.Count()
	}
}

func spotWords(l *stock.Lot) string {
	var words []string
	for _, s := range l.Standing {
		words = append(words, s.Spot.Place, string(s.Spot.Form))
	}
	return strings.Join(words, " ")
}

func (s *Shelf) places() {
	type heap struct {
		lot   stock.LotID
		at    stock.Spot
		since civil.Date
	}
	rounds := map[heap][]*stock.Round{}
	for i := range s.Rounds {
		r := &s.Rounds[i]
		at := heap{r.Lot, r.Spot, r.Since}
		rounds[at] = append(rounds[at], r)
	}
	places := map[string]map[[2]string][]Held{}
	for i, l := range s.Lots {
		for _, st := range l.Standing {
			if places[st.Spot.Place] == nil {
				places[st.Spot.Place] = map[[2]string][]Held{}
			}
			k := [2]string{st.Spot.Crate, st.Spot.Bed}
			places[st.Spot.Place][k] = append(places[st.Spot.Place][k], Held{i, st, rounds[heap{l.ID, st.Spot, st.Since}]})
		}
	}
	for name, crates := range places {
		p := PlaceOnShelf{Name: name}
		lots := map[int]bool{}
		for k, held := range crates {
			p.Crates = append(p.Crates, CrateOnShelf{k[0], k[1], held})
			for _, h := range held {
				p.Count += h.Count
				lots[h.Lot] = true
			}
		}
		p.Lots = len(lots)
		slices.SortFunc(p.Crates, func(x, y CrateOnShelf) int {
			return cmp.Or(byNumber(x.Crate, y.Crate), byNumber(x.Bed, y.Bed))
		})
		s.Places = append(s.Places, p)
	}
	slices.SortFunc(s.Places, func(x, y PlaceOnShelf) int { return cmp.Compare(x.Name, y.Name) })
}

// byNumber orders crates as a grower counts them: 2 before 10.
func byNumber(a, b string) int {
	if isNumber(a) && isNumber(b) {
		a, b = strings.TrimLeft(a, "0"), strings.TrimLeft(b, "0")
		return cmp.Or(cmp.Compare(len(a), len(b)), cmp.Compare(a, b))
	}
	return cmp.Compare(a, b)
}

func isNumber(s string) bool {
	return s != "" && strings.Trim(s, "0123456789") == ""
}

// Search returns the indexes of the lots that match every word of the query in their code, name, kind,
// place or form. Upper and lower case do not matter.
func (s *Shelf) Search(query string) []int {
	words := strings.Fields(strings.ToLower(query))
	var found []int
	for i, text := range s.words {
		if !slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(text, w) }) {
			found = append(found, i)
		}
	}
	return found
}

// Place returns what stands in a place, and whether anything does.
func (s *Shelf) Place(name string) (PlaceOnShelf, bool) {
	i := slices.IndexFunc(s.Places, func(p PlaceOnShelf) bool { return p.Name == name })
	if i < 0 {
		return PlaceOnShelf{Name: name}, false
	}
	return s.Places[i], true
}
