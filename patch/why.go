package patch

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Why says in a grower's words why the i-th variety of the brief has the places it has.
func (l *List) Why(i int) string {
	s := l.s
	v, n := &s.b.Varieties[i], s.places[i]
	switch {
	case v.Plant == 0 && n == 0:
		return "not wanted in the patch this year"
	case n == v.Plant && v.Wish == Must:
		return "a must, and all of its places"
	case n == v.Plant:
		return "all the places it was wanted in"
	case n > v.Plant:
		return fmt.Sprintf("%s more than wished, since there is room and there are plants", counted(n-v.Plant, "place"))
	}
	lost := "lost " + counted(v.Plant-n, "place")
	if n == 0 {
		lost = "makes way altogether"
		if v.Least > 1 {
			lost += fmt.Sprintf(" (fewer than %d are not worth planting)", v.Least)
		}
	}
	return lost + ": " + strings.Join(append(s.reasons(i), s.instead(i)...), ", and ")
}

// reasons say what hinders one place more.
func (s *sums) reasons(i int) []string {
	v := &s.b.Varieties[i]
	t, may := s.up(i)
	if !may {
		return []string{fmt.Sprintf("%d places at most were asked for", v.most())}
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
		all = append(all, "more of it would have to be got first")
	}
	return all
}

// free says why a place that there is room for is not given.
func (s *sums) free(i int, t step, c Count) []string {
	var all []string
	if c.Mix > telling {
		all = s.missed(i, []step{t})
	}
	if c.Short > telling {
		all = append(all, "more of it would have to be got first, which it is not worth")
	}
	if len(all) == 0 {
		all = append(all, "one place more betters the list by too little to tell")
	}
	return all
}

// givers returns the steps down that could best make room for a step up, and what all of
// them together would change; false where no room can be made.
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

// cheapest returns the step down of any variety but one that loses least for the room it
// gives; false where none can be taken.
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
		return "all that are musts give their share"
	case other.Wish == v.Wish && v.Wish == Would:
		return "all that are liked give their share"
	case other.Wish == v.Wish:
		return "it is among those that could go"
	case v.Wish == Could:
		return "it could go, while others are liked or musts"
	case other.Wish == Must:
		return "the musts come first"
	}
	return "others have given more of theirs already"
}

// missed names the shares that the steps would push further out.
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
		return []string{fmt.Sprintf("%s %s have their share already", strings.Join(own, " and "), plural(s.b.Varieties[i].Kind))}
	case len(others) > 0:
		return []string{fmt.Sprintf("%s %s lack theirs", strings.Join(others, " and "), plural(s.b.Varieties[i].Kind))}
	}
	return []string{"it would put the mix out"}
}

// plural writes a kind as many.
func plural(kind string) string {
	switch {
	case strings.HasSuffix(kind, "s"):
		return kind
	case strings.HasSuffix(kind, "o"):
		return kind + "es"
	}
	return kind + "s"
}

// order is how soon timings flower.
var order = map[string]int{"early": 1, "mid": 2, "late": 3}

// instead names a variety that gives the same colour no later, if one has places.
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
