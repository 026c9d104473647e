package patch

import "math"

// Weights of the count, in places. A missing place of a variety costs by its wish and by how
// much of the wish is already missing, so that losses are shared out; everything else is
// weighed against that. The weights are our choice and are printed with every list.
const (
	mustCounts   = 4.0   // a missing place of a must-have variety
	wouldCounts  = 1.0   // of one that the grower would like
	couldCounts  = 0.25  // of one that could go
	overCounts   = 2.0   // a place above a share plus slack
	underCounts  = 1.0   // a place below a share minus slack
	shortCounts  = 0.5   // a plant that must first be acquired
	beyondCounts = 0.125 // credit for a place beyond the wish
)

// quarters is the cost factor of each missing quarter of a wish, first to last.
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

// Count is the cost of a list, in places; less is better.
type Count struct {
	Wish  float64 // missing places, minus the credit for places beyond the wishes
	Mix   float64 // places outside the wanted mix
	Short float64 // plants that must first be acquired
}

// Total returns the sum.
func (c Count) Total() float64 { return c.Wish + c.Mix + c.Short }

// lost returns the cost of a variety with x places by its wish.
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

// short returns how many plants must be acquired for x places and the reserve.
func (v *Variety) short(x int) int {
	sure, known := v.sure()
	if !known {
		return 0
	}
	return max(0, x+v.Reserve-sure)
}

// sums is a list with the running sums that make the cost of a change fast to compute.
type sums struct {
	b      *Brief
	groups []group
	of     [][]bool
	places []int
	used   float64 // m²
	plants int
	inMix  []int // places of each mix
	in     []int // places of each group
	least  []int // by variety; 0 if the musts do not fit
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

// floors returns the least places of each variety and whether that is binding. If the musts do
// not fit together their minimum is dropped, so that there is a list at all.
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

// slight is the rounding error allowed in sums of areas, in m².
const slight = 1e-9

func (b *Brief) room() float64 {
	if b.Room == 0 {
		return math.Inf(1)
	}
	return float64(b.Room)
}

// MustRoom returns the area that the musts need at their minimum, in m².
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

// add gives a variety n more places.
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

// fits reports whether the list fits the patch.
func (s *sums) fits() bool {
	return (s.b.Room == 0 || s.used <= float64(s.b.Room)+slight) && (s.b.Places == 0 || s.plants <= s.b.Places)
}

// outside returns by how many places a group is above (positive) or below (negative) its
// share.
func (s *sums) outside(g int) float64 {
	group, total, in := &s.groups[g], float64(s.inMix[s.groups[g].mix]), float64(s.in[g])
	if over := in - group.high*total; over > 0 {
		return over
	}
	return min(0, in-group.low*total)
}

// mixCount returns the cost of a group.
func (s *sums) mixCount(g int) float64 {
	if outside := s.outside(g); outside > 0 {
		return overCounts * outside
	} else {
		return -underCounts * outside
	}
}

// count returns the cost of the list.
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

// Count returns the cost of a list: places by variety, in the order of the brief. ok is false
// if it does not fit the patch, or if a variety has fewer places than its least or more than
// its most. It shares no code with the programme.
func (b *Brief) Count(places []int) (c Count, ok bool) {
	s := newSums(b)
	ok = true
	for i, n := range places {
		s.add(i, n-s.places[i])
		ok = ok && n >= 0 && n <= b.Varieties[i].most() && (n >= s.least[i] || n == 0 && !s.firm[i])
	}
	return s.count(), ok && s.fits()
}
