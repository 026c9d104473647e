package patch

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Why explains to the grower why the i-th variety of the brief has its number of places.
func (l *List) Why(i int) string {
	s := l.s
	v, n := &s.b.Varieties[i], s.places[i]
	switch {
	case v.Plant == 0 && n == 0:
		return "not wanted in the patch this year"
	case n == v.Plant && v.Wish == Must:
		return "a must, so it has all of its places"
	case n == v.Plant:
		return "all the places wanted"
	case n > v.Plant:
		return fmt.Sprintf("%s more than wanted, since there are room and plants", counted(n-v.Plant, "place"))
	}
	lost := "lost " + counted(v.Plant-n, "place")
	if n == 0 {
		lost = "makes way completely"
		if v.Least > 1 {
			lost += fmt.Sprintf(" (fewer than %d are not worth planting)", v.Least)
		}
	}
	return lost + ": " + strings.Join(append(s.reasons(i), s.instead(i)...), ", and ")
}

// reasons lists what prevents one more place.
func (s *sums) reasons(i int) []string {
	v := &s.b.Varieties[i]
	t, may := s.up(i)
	if !may {
		return []string{fmt.Sprintf("at most %d places are allowed", v.most())}
	}
	c, fits := s.change(t)
	if fits {
		return s.free(i, t, c)
	}
	full := "the patch is full"
	from, c, found := s.givers(t)
	if !found {
		return []string{full, "nothing else can give way"}
	}
	all := []string{full}
	if c.Mix > telling {
		all = append(all, s.missed(i, append(slices.Clone(from), t))...)
	}
	if c.Wish > telling || len(all) == 1 {
		all = append(all, s.stronger(v, &s.b.Varieties[from[0].i]))
	}
	if c.Short > telling {
		all = append(all, "more of it would have to be acquired first")
	}
	return all
}

// free says why a place with room for it is not given.
func (s *sums) free(i int, t step, c Count) []string {
	var all []string
	if c.Mix > telling {
		all = s.missed(i, []step{t})
	}
	if c.Short > telling {
		all = append(all, "more of it would have to be acquired first, which costs more than it gains")
	}
	if len(all) == 0 {
		all = append(all, "one more place improves the list by too little to matter")
	}
	return all
}

// givers returns the steps down that best make room for a step up, and the change of cost of
// all of them together; false if no room can be made.
func (s *sums) givers(t step) (from []step, c Count, found bool) {
	s.add(t.i, t.by)
	for found = s.fits(); !found; found = s.fits() {
		d, may := s.cheapest(t.i)
		if !may {
			break
		}
		s.add(d.i, d.by)
		from = append(from, d)
	}
	for _, d := range from {
		s.add(d.i, -d.by)
	}
	s.add(t.i, -t.by)
	if found {
		c, _ = s.change(append(slices.Clone(from), t)...)
	}
	return from, c, found
}

// cheapest returns the step down, of any variety but one, that loses least for the room it
// frees; false if there is none.
func (s *sums) cheapest(but int) (best step, found bool) {
	least := math.Inf(1)
	for i := range s.places {
		t, may := s.down(i)
		if !may || i == but {
			continue
		}
		c, _ := s.change(t)
		loss := c.Total() / float64(-t.by)
		if area := s.b.Varieties[i].area(); s.b.Room > 0 && area > 0 {
			loss /= area
		}
		if loss < least {
			best, least, found = t, loss, true
		}
	}
	return best, found
}

// stronger says why another variety keeps its place.
func (s *sums) stronger(v, other *Variety) string {
	switch {
	case other.Wish == v.Wish && v.Wish == Must:
		return "all musts give up their share"
	case other.Wish == v.Wish && v.Wish == Would:
		return "all of the would-like varieties give up their share"
	case other.Wish == v.Wish:
		return "it could go, as the others that give way"
	case v.Wish == Could:
		return "it could go, while others are musts or would be liked"
	case other.Wish == Must:
		return "the musts come first"
	}
	return "others have already given up more"
}

// missed names the shares that the steps would violate further.
func (s *sums) missed(i int, steps []step) []string {
	before := make([]float64, len(s.groups))
	for g := range s.groups {
		before[g] = s.mixCount(g)
	}
	for _, t := range steps {
		s.add(t.i, t.by)
	}
	var worse []int
	for g := range s.groups {
		if s.mixCount(g)-before[g] > telling && s.of[s.groups[g].mix][i] {
			worse = append(worse, g)
		}
	}
	for _, t := range steps {
		s.add(t.i, -t.by)
	}
	var own, others []string
	for _, g := range worse {
		if s.groups[g].in[i] {
			own = append(own, s.groups[g].name)
		} else {
			others = append(others, s.groups[g].name)
		}
	}
	switch {
	case len(own) > 0:
		return []string{fmt.Sprintf("%s %s already have their share", strings.Join(own, " and "), plural(s.b.Varieties[i].Kind))}
	case len(others) > 0:
		return []string{fmt.Sprintf("%s %s lack theirs", strings.Join(others, " and "), plural(s.b.Varieties[i].Kind))}
	}
	return []string{"it would upset the mix"}
}

// plural returns the plural of a kind.
func plural(kind string) string {
	switch {
	case strings.HasSuffix(kind, "s"):
		return kind
	case strings.HasSuffix(kind, "o"):
		return kind + "es"
	}
	return kind + "s"
}

// order ranks timings by how early they flower.
var order = map[string]int{"early": 1, "mid": 2, "late": 3}

// instead names a planted variety with the same colour that flowers no later, if there is one.
func (s *sums) instead(i int) []string {
	v := &s.b.Varieties[i]
	family, timing := v.Word(), order[string(v.Timing)]
	if family == "" || timing == 0 {
		return nil
	}
	best := -1
	for j := range s.b.Varieties {
		o := &s.b.Varieties[j]
		at, whole := order[string(o.Timing)], s.places[j] > 0 && s.places[j] >= o.Plant
		if j == i || o.Kind != v.Kind || o.Word() != family || at == 0 || at > timing || !whole {
			continue
		}
		if best < 0 || order[string(o.Timing)] < order[string(s.b.Varieties[best].Timing)] ||
			o.Timing == s.b.Varieties[best].Timing && s.places[j] > s.places[best] {
			best = j
		}
	}
	if best < 0 {
		return nil
	}
	when := "at the same time"
	if order[string(s.b.Varieties[best].Timing)] < timing {
		when = "earlier"
	}
	return []string{s.b.Varieties[best].Name + " gives the same colour " + when}
}

func counted(n int, of string) string {
	words := []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"}
	number := fmt.Sprint(n)
	if n < len(words) {
		number = words[n]
	}
	if n != 1 {
		of += "s"
	}
	return number + " " + of
}
