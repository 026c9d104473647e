package season

import (
	"fmt"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/place"
)

// When a plant goes out. Nothing leafy goes out before the Monday that the odds of frost allow
// (fixFrostDate, outOf), nor before the soil was warm enough over the past seven days (move). No
// kind's warm nights are asked for in the open yet: a pepper goes out by frost date and soil, as a
// dahlia does. Nights count under cover only (see routes.go).

// fixFrostDate fixes the first Monday on which leafy plants go out from the record's odds
// of a later freeze, where it is not decided.
func (m *Planner) fixFrostDate() error {
	safe, known := m.Given.Freezes.SafeFrom(m.Asked.FrostRisk)
	if !known {
		return fmt.Errorf("the record can't say when odds of a freeze fall to %.3g %%: it has too few springs; give more years, or accept a larger risk", m.Asked.FrostRisk.Percent())
	}
	m.OutFrom = m.newYear // where so many springs have no freeze at all
	if !safe.IsZero() {
		m.OutFrom = m.monday(m.springDay(safe))
	}
	if !m.Asked.OutFrom.IsZero() {
		m.OutFrom = m.day(m.Asked.OutFrom)
	}
	if last := m.Given.Freezes.Spring().Middle; !last.IsZero() {
		m.wait = float64(m.OutFrom-m.springDay(last)) / 7
	}
	return nil
}

// outOf returns the Monday before which a leafy plant of a life is not planted out: the
// frost date, but for hardy kinds the first week after which, in all but the accepted
// share of years, no cold comes that would kill them.
func (m *Planner) outOf(l *life) int {
	if l.kill > hardy {
		return m.OutFrom
	}
	return min(m.OutFrom, m.monday(m.safeFrom(m.climate(m.placeOf(Ground), place.Off()), l.kill)))
}

// lastBelow returns the last day up to split on which low is at or below a limit, 0 for none.
func lastBelow(low []float64, split int, limit float64) int {
	for day := min(split, len(low)-1); day > 0; day-- {
		if low[day] <= limit {
			return day
		}
	}
	return 0
}

// springDay returns the day of the span on which m falls in the spring of planting out; in
// places where it freezes until midsummer that may be some weeks later.
func (m *Planner) springDay(day civil.MonthDay) int {
	split := midsummer(m.Given.Span, m.Given.Site)
	date := day.In(split.Year())
	if date.After(split.AddDays(4 * civil.Week)) {
		date = day.In(split.Year() - 1)
	}
	return m.day(date)
}

// safeFrom returns the day after which, before midsummer, a place falls no more to a limit
// in all but the accepted share of years.
func (m *Planner) safeFrom(c *climate, limit float64) int {
	last := make([]int, len(c.years))
	for i, y := range c.years {
		last[i] = lastBelow(y.low, m.summer, limit)
	}
	return m.risked(last) + 1
}

// move applies the rules of handing on and planting out, which see only the past. What stays
// under cover asks nothing of the ground.
func (w walker) move(day int, f *fate, ground *yearDays) {
	if !w.isMonday(day) {
		return
	}
	if w.route.direct {
		if f.out == Never && day >= w.outFrom && ground.root[day] >= w.soilDormant {
			f.out = day
		}
		return
	}
	if f.up >= day {
		return
	}
	if f.handOn == Never && day >= w.route.onFrom(w.life) {
		f.handOn = day
	}
	if w.route.stays {
		return
	}
	fit := f.ready != Never && day-f.ready > w.harden
	if w.route.framePlace >= 0 {
		w.frames(day, f)
		fit = f.framed != Never && day-f.framed >= w.harden
	}
	if f.out == Never && fit && day >= w.outFrom && ground.root[day] >= w.soilLeafy {
		f.out, f.handOn = day, min(f.handOn, day)
		return
	}
	w.pots(day, f)
}

// soilAllows returns the warmth of soil from which dormant stock or seed may go in: the
// low end of what is advised, since the best that a grower can do without starting early
// is what starting early is held against.
func soilAllows(k *culture.Kind) float64 {
	if f, known := k.Figure("plant.soil_dormant"); known {
		return f.Low
	}
	return celsiusOr(k.Soil.Leafy, culture.Usual("plant.soil_leafy"))
}

// hardy is the cold that a hardy kind stands, °C: well below the frost that the trade
// plants tender stock by.
var hardy = culture.Usual("cold.hardy")
