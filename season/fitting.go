package season

import "math"

// fitting describes a plan. Where its benches suffice in fewer years than was asked for, they are
// filled again on a wider basis of room, a few times at most, as for a proved plan.
func (m *Planner) fitting(one *Made) *Plan {
	plan := m.Realize(one.Name, one.says, one.Levels, one.Assignment)
	for _, fits := range m.WiderBases() {
		if plan.FitsYears >= m.AskedYears() {
			break
		}
		a := one.fill(fits)
		if other := m.Realize(one.Name, one.says, one.Levels, a); other.FitsYears > plan.FitsYears {
			plan, one.Assignment = other, a
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
func (m *Planner) WiderBases() []float64 {
	var all []float64
	years := float64(len(m.Given.Weather))
	for basis, last := float64(m.Asked.Fits), m.AskedYears(); len(all) < widerMost && basis < 1; {
		basis = min(1, basis+widerBy)
		if in := int(math.Ceil(basis*years - 1e-9)); in > last {
			all, last = append(all, basis), in
		}
	}
	return all
}

// askedYears is in how many years the benches are to suffice.
func (m *Planner) AskedYears() int {
	return int(math.Ceil(float64(m.Asked.Fits)*float64(len(m.Given.Weather)) - 1e-9))
}
