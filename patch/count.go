package patch

import "math"

// What things count for, in places. A place that a variety lacks of its wish counts by the
// wish and by how much is lost already, so that what is lacking is shared out; the rest is
// set against that. These are choices of ours, told with every list.
const (
	mustCounts   = 4.0   // a place lost to a variety that is a must
	wouldCounts  = 1.0   // to one that is liked
	couldCounts  = 0.25  // to one that could go
	overCounts   = 2.0   // a place above a share and its slack
	underCounts  = 1.0   // a place below a share and its slack
	shortCounts  = 0.5   // a plant that must be got first
	beyondCounts = 0.125 // taken off for a place beyond the wish that room is left for
)

// quarters is what each quarter of a wish that is lost counts, first to last.
var quarters = [4]float64{1, 1.25, 1.5, 2}

func (w Wish) counts() float64 {
	switch w {
	case Must:
		return mustCounts
	case Would:
		return wouldCounts
	}
	return couldCounts
}

// quarter returns how many places the q-th quarter of a wish has, 0 to 3.
func quarter(plant, q int) int { return plant*(q+1)/4 - plant*q/4 }

// Count is what a list counts for, in places; less is better.
type Count struct {
	Wish  float64 // places lacking of wishes, less what is beyond them
	Mix   float64 // places outside the wished mix
	Short float64 // plants that must be got first
}

// Total returns the sum.
func (c Count) Total() float64 { return c.Wish + c.Mix + c.Short }

// lost returns what a variety with x places counts for by its wish.
func (v *Variety) lost(x int) float64 {
	if x > v.Plant {
		return -beyondCounts * float64(x-v.Plant)
	}
	total, lacking := 0.0, v.Plant-x
	for q, counts := range quarters {
		n := min(lacking, quarter(v.Plant, q))
		total += float64(n) * counts * v.Wish.counts()
		lacking -= n
	}
	return total
}

// short returns how many plants must be got first for x places and the reserve.
func (v *Variety) short(x int) int {
	sure, known := v.sure()
	if !known {
		return 0
	}
	return max(0, x+v.Reserve-sure)
}

// sums is a list with what is needed to tell quickly what a change of it counts for.
type sums struct {
	b      *Brief
	groups []group
	of     [][]bool
	places []int
	used   float64 // m²
	plants int
	inMix  []int // places of each mix
	in     []int // places of each group
	least  []int // by variety; 0 where musts do not fit
	firm   []bool
}

func newSums(b *Brief) *sums {
	s := &sums{b: b, places: make([]int, len(b.Varieties))}
	s.groups, s.of = b.groups()
	s.inMix, s.in = make([]int, len(s.of)), make([]int, len(s.groups))
	s.least, s.firm = b.floors()
	for i := range b.Varieties {
		if s.firm[i] {
			s.add(i, s.least[i])
		}
	}
	return s
}

// floors returns the least that each variety is planted with and whether that is firm. Where
// the musts do not fit together their least is let go of, since some must be told.
func (b *Brief) floors() (least []int, firm []bool) {
	least, firm = make([]int, len(b.Varieties)), make([]bool, len(b.Varieties))
	fit := b.MustRoom() <= float64(b.room())+slight && (b.Places == 0 || b.mustPlants() <= b.Places)
	for i := range b.Varieties {
		v := &b.Varieties[i]
		least[i] = max(1, v.Least)
		if v.Wish == Must {
			firm[i] = fit && v.most() > 0
			if !fit {
				least[i] = 1
			}
		}
	}
	return least, firm
}

// slight is what sums of areas may lose in rounding, in m².
const slight = 1e-9

func (b *Brief) room() float64 {
	if b.Room == 0 {
		return math.Inf(1)
	}
	return float64(b.Room)
}

// MustRoom returns the room that the musts take at their least, in m².
func (b *Brief) MustRoom() float64 {
	total := 0.0
	for i := range b.Varieties {
		if v := &b.Varieties[i]; v.Wish == Must && v.most() > 0 {
			total += float64(max(1, v.Least)) * v.area()
		}
	}
	return total
}

func (b *Brief) mustPlants() int {
	total := 0
	for i := range b.Varieties {
		if v := &b.Varieties[i]; v.Wish == Must && v.most() > 0 {
			total += max(1, v.Least)
		}
	}
	return total
}

// add gives a variety n places more.
func (s *sums) add(i, n int) {
	s.places[i] += n
	s.plants += n
	s.used += float64(n) * s.b.Varieties[i].area()
	for m := range s.of {
		if s.of[m][i] {
			s.inMix[m] += n
		}
	}
	for g := range s.groups {
		if s.groups[g].in[i] {
			s.in[g] += n
		}
	}
}

// fits reports whether the patch has room for all.
func (s *sums) fits() bool {
	return (s.b.Room == 0 || s.used <= float64(s.b.Room)+slight) && (s.b.Places == 0 || s.plants <= s.b.Places)
}

// outside returns by how many places a group lies above (over nothing) or below its share.
func (s *sums) outside(g int) float64 {
	group, total, in := &s.groups[g], float64(s.inMix[s.groups[g].mix]), float64(s.in[g])
	if over := in - group.high*total; over > 0 {
		return over
	}
	return min(0, in-group.low*total)
}

// mixCount returns what a group counts for.
func (s *sums) mixCount(g int) float64 {
	if outside := s.outside(g); outside > 0 {
		return overCounts * outside
	} else {
		return -underCounts * outside
	}
}

// count returns what the list counts for.
func (s *sums) count() Count {
	var c Count
	for i := range s.b.Varieties {
		v := &s.b.Varieties[i]
		c.Wish += v.lost(s.places[i])
		c.Short += shortCounts * float64(v.short(s.places[i]))
	}
	for g := range s.groups {
		c.Mix += s.mixCount(g)
	}
	return c
}

// Count returns what a list counts for: places by variety, in the order of the brief. ok is
// false when it does not fit the patch, or gives some variety fewer than its least or more
// than its most. It shares nothing with the programme.
func (b *Brief) Count(places []int) (c Count, ok bool) {
	s := newSums(b)
	ok = true
	for i, n := range places {
		s.add(i, n-s.places[i])
		ok = ok && n >= 0 && n <= b.Varieties[i].most() && (n >= s.least[i] || n == 0 && !s.firm[i])
	}
	return s.count(), ok && s.fits()
}
