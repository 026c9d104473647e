package season

import "slices"

// split is where a way at one level goes over into the same way at another.
type split struct {
	before, after *route
	day           int
}

// joined is an option by a way with the split in it.
func (s *split) joined(o option) *option {
	way := *o.route
	way.first, way.on = splice(s.before.first, s.after.first, s.day), splice(s.before.on, s.after.on, s.day)
	o.route = &way
	return &o
}

// usedBy returns the days in any year on which an assignment uses a place.
func (m *Planner) UsedBy(place int, a Assignment) Days {
	used := Days{Never, 0}
	for _, p := range a.Portions {
		for _, f := range p.fates() {
			used = used.with(p.option, p.batch.life, f, place, int(m.Given.Span.Days()))
		}
	}
	return used
}

// with widens a run of days by those on which a plant of fate f stands in a place.
func (u Days) with(o option, l *life, f fate, place, end int) Days {
	if o.route.direct {
		return u
	}
	out := min(f.out, f.died, end)
	if o.route.stays {
		out = min(out, f.flower+l.cutFor)
	}
	for _, stay := range []struct{ at, from, to int }{
		{o.route.firstPlace, o.start, min(f.handOn, out)}, {o.route.onPlace, f.handOn, min(f.framed, out)}, {o.route.framePlace, f.framed, out}, {o.route.around, o.start, min(f.handOn, out)},
	} {
		if stay.at == place && stay.from < stay.to {
			u = Days{min(u.From, stay.from), max(u.To, stay.to)}
		}
	}
	return u
}

// heatOf returns the heat of a climate while it is in use, in the middle of the years.
func (m *Planner) heatOf(c *climate, used Days) float64 {
	return m.heatBetween(c, c, used.From, used)
}

// heatBetween returns the heat, while in use, of one climate up to a day and of another from
// then on, in the middle of the years.
func (m *Planner) heatBetween(before, after *climate, day int, used Days) float64 {
	years := make([]float64, len(before.years))
	for i := range before.years {
		from, to := max(used.From-Warming, 0), min(used.To, len(before.years[i].given))
		change := min(max(day, from), to)
		years[i] = sum(before.years[i].given[from:change]) + sum(after.years[i].given[change:to])
	}
	slices.Sort(years)
	return years[(len(years)-1)/2]
}
