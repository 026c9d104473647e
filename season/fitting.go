package season

import "math"

// fitting tells a plan. Where its benches suffice in fewer years than was asked for, they are
// filled again on a wider basis of room, a few times at most, as for a proved plan.
func (m *planner) fitting(one *made) *Plan {
	plan := m.realize(one.name, one.says, one.at, one.assignment)
	for _, fits := range m.widerBases() {
		if plan.FitsYears >= m.askedYears() {
			break
		}
		a := one.fill(fits)
		if other := m.realize(one.name, one.says, one.at, a); other.FitsYears > plan.FitsYears {
			plan, one.assignment = other, a
		}
	}
	return plan
}

// How much wider a basis of room is tried, and how often, where a plan fits in too few years.
const (
	widerBy   = 0.02
	widerMost = 3
)

// widerBases are the bases of room that are tried in turn where the one asked for does not do:
// those that take one more year in.
func (m *planner) widerBases() []float64 {
	var all []float64
	years := float64(len(m.Given.Weather))
	for basis, last := float64(m.Asked.Fits), m.askedYears(); len(all) < widerMost && basis < 1; {
		basis = min(1, basis+widerBy)
		if in := int(math.Ceil(basis*years - 1e-9)); in > last {
			all, last = append(all, basis), in
		}
	}
	return all
}

// askedYears is in how many years the benches are to suffice.
func (m *planner) askedYears() int {
	return int(math.Ceil(float64(m.Asked.Fits)*float64(len(m.Given.Weather)) - 1e-9))
}
