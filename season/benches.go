package season

import (
	"math"
)

// benches keeps account of the room that is left in each place and week.
type benches struct {
	free    map[int][]float64 // m², by bench and week; the ground is counted but never refuses
	fits    float64
	planner *Planner
	wanted  map[*outcome]map[int][]float64 // m² a plant takes, by outcome, bench and week
}

// lamps returns the bench that stands for the lit part of a place.
func (m *Planner) Lamps(place int) int { return len(m.Given.Places) + place }

// roomOf returns the room there is on a bench, in m².
func (m *Planner) roomOf(bench int) float64 {
	if bench >= len(m.Given.Places) {
		return float64(m.Given.Places[bench-len(m.Given.Places)].Lit)
	}
	return float64(m.Given.Places[bench].Room)
}

// newBenches are the empty benches, on a basis of room that suffices in so great a share of years.
func (m *Planner) newBenches(fits float64) *benches {
	b := &benches{free: map[int][]float64{}, fits: fits, planner: m, wanted: map[*outcome]map[int][]float64{}}
	for i, p := range m.Given.Places {
		b.free[i] = m.freeOn(i)
		if p.Lit > 0 {
			b.free[m.Lamps(i)] = m.freeOn(m.Lamps(i))
		}
	}
	return b
}

// FreeIn is the room on a bench in a week, in m², that nothing takes which grows already.
func (m *Planner) FreeIn(bench, week int) float64 {
	return max(0, m.roomOf(bench)-m.grown(bench, week))
}

// freeOn is the room on a bench, week by week, that nothing takes which grows already.
func (m *Planner) freeOn(bench int) []float64 {
	free := make([]float64, m.Weeks)
	for week := range free {
		free[week] = m.FreeIn(bench, week)
	}
	return free
}

// room is the outcome's need of room: see outcome.room.
func (b *benches) room(o *outcome) map[int][]float64 {
	if b.wanted[o] == nil {
		b.wanted[o] = o.room(b.fits, b.planner.Weeks, b.planner)
	}
	return b.wanted[o]
}

// most returns how many plants of an outcome there is room for, at most count.
func (b *benches) most(o *outcome, count int) int {
	for bench, need := range b.room(o) {
		if bench == o.route.groundPlace {
			continue
		}
		for week, area := range need {
			if area > 0 {
				count = min(count, int(math.Floor(b.free[bench][week]/area+1e-9)))
			}
		}
	}
	return max(count, 0)
}

// take gives count plants of an outcome their room.
func (b *benches) take(o *outcome, count int) {
	for bench, need := range b.room(o) {
		for week, area := range need {
			b.free[bench][week] -= float64(count) * area
		}
	}
}

// tight returns the bench and week in which an outcome of so many plants is shortest of room,
// and how much.
func (b *benches) tight(o *outcome, count int) (bench, week int, short float64) {
	for at, need := range b.room(o) {
		if at == o.route.groundPlace {
			continue
		}
		for w, area := range need {
			lack := float64(count)*area - b.free[at][w]
			if lack > short+1e-9 || lack > short-1e-9 && lack > 0 && (at < bench || at == bench && w < week) {
				bench, week, short = at, w, lack
			}
		}
	}
	return bench, week, short
}

// portion is so many of a batch raised in one way.
type Portion struct {
	*batch
	*outcome
	Count int
}

// lack is the first thing that kept a batch from being raised as a plan would have it.
type lack struct {
	bench, week int
	short       float64
}

// most ways in which one batch is split.
const mostWays = 3

// place puts a batch on the benches, the best of its outcomes first; what finds no room
// goes straight into the ground. It says what was short, if anything, and how many found
// no way at all.
func (b *benches) place(of *batch, ranked []*outcome) (portions []Portion, short *lack, left int) {
	left = of.want
	for _, o := range ranked {
		if left == 0 {
			break
		}
		if !b.planner.admissible(o) {
			continue
		}
		n := b.most(o, left)
		if n < left && short == nil {
			bench, week, area := b.tight(o, left)
			short = &lack{bench, week, area}
		}
		last := len(portions) == mostWays-1
		if n == 0 || n < left && (last || n < min(left, smallest(of.want))) && !o.route.direct {
			continue
		}
		b.take(o, n)
		portions = append(portions, Portion{of, o, n})
		left -= n
	}
	return portions, short, left
}

// smallest is the least number worth a way of their own: a tray of six, or a quarter of a large batch.
func smallest(want int) int { return max(6, want/4) }
