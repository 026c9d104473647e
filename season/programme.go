package season

import (
	"slices"

	"eyeup/civil"
)

// group is batches that are raised alike and wait in one place: a programme counts their
// plants together, and parts them again afterwards.
type group struct {
	batches []*batch // in the maker's order
	want    int      // plants of all of them
}

// choice is an outcome with all that counts of it when ways are weighed against each other,
// for one plant. Rows are numbered as by programmeRow and hoursRow.
type choice struct {
	*outcome
	gain        float64 // the outcome's, at hand
	money       float64 // mix and containers, units of the currency
	benchHeat   float64 // electricity of the warm bench that it begins on, units of the currency
	stretchCost float64 // what its stretched days take off its worth, units of the currency
	takes       []take  // m² by bench and week
	hours       []take  // hours of work by week
	use         []span  // by burner: the days on which it wants it on; from is never where it does not
	place       int     // whose level steps, on some of the days from and to which it is so; -1: none
	steps       [2]int  // the first and last of those days
}

// take is so much of what a row limits.
type take struct {
	row    int
	amount float64
}

// groups puts like batches together, in the maker's order.
func (m *planner) groups() []*group {
	type key struct {
		life  *life
		store int
		held  civil.Date
	}
	at := map[key]*group{}
	var all []*group
	for _, b := range m.batches {
		k := key{life: b.life, store: b.store}
		if day, is := m.Asked.Held[b.Code]; is {
			k.held = day.Monday()
		}
		if at[k] == nil {
			at[k] = &group{}
			all = append(all, at[k])
		}
		at[k].batches = append(at[k].batches, b)
		at[k].want += b.want
	}
	return all
}

// programmeRow numbers the limit of a bench in a week.
func (m *planner) programmeRow(bench, week int) int { return bench*m.weeks + week }

// hoursRow numbers the limit of one's own hours in a week.
func (m *planner) hoursRow(week int) int { return 2*len(m.Given.Places)*m.weeks + week }

// rowCount is how many rows are numbered.
func (m *planner) rowCount() int { return (2*len(m.Given.Places) + 1) * m.weeks }

// choiceOf reckons all that counts of an outcome of a batch, with places at some levels, but
// for the room that it takes.
func (c *columns) choiceOf(b *batch, o *outcome, at levels, takes []take) choice {
	m := c.planner
	one := choice{outcome: o, gain: o.gain, money: m.moneyFor(b, o), benchHeat: m.benchMoney(o), stretchCost: m.Given.Prices.Stretched.Times(o.drawn), hours: m.hoursFor(b, o), takes: takes, place: -1}
	for _, of := range c.heaterKeys {
		used := span{never, 0}
		if of.lamps || m.isHeated(of.place, at) {
			used = of.wanted(o, int(m.Given.Span.Days()))
		}
		one.use = append(one.use, used)
	}
	return one
}

// weekOn returns the week of a day.
func (m *planner) weekOn(day int) int { return (day - m.firstMonday) / 7 }

// undominated leaves out what another way, of the same or of those known already, beats or
// equals in all: gain, money, room, stretched days, hours, the days on which it wants heat and those of the
// steps that lead to it. Of two that are the same the first stays.
func (c *columns) undominated(all, known []choice) []choice {
	var kept []choice
	for i := range all {
		beats := func(c choice) bool { return c.beats(&all[i]) }
		beaten := slices.ContainsFunc(known, beats) || slices.ContainsFunc(all[:i], beats) ||
			slices.ContainsFunc(all[i+1:], func(c choice) bool { return c.beats(&all[i]) && !all[i].beats(&c) })
		if !beaten {
			kept = append(kept, all[i])
		}
	}
	return kept
}

// beats reports whether c is no worse than d in anything.
func (c *choice) beats(d *choice) bool {
	if c.gain < d.gain || c.money > d.money || c.benchHeat > d.benchHeat || c.stretchCost > d.stretchCost || c.place >= 0 && (c.steps[0] > d.steps[0] || c.steps[1] < d.steps[1]) {
		return false
	}
	for i, used := range c.use {
		if used.from != never && (used.from < d.use[i].from || used.to > d.use[i].to) {
			return false
		}
	}
	return within(c.takes, d.takes) && within(c.hours, d.hours)
}

// within reports whether no row of a asks for more than that of b; both are in the order of
// their rows.
func within(a, b []take) bool {
	for _, t := range a {
		for len(b) > 0 && b[0].row < t.row {
			b = b[1:]
		}
		if len(b) == 0 || b[0].row != t.row || b[0].amount < t.amount {
			return false
		}
	}
	return true
}
