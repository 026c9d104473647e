package season

import (
	"slices"

	"eyeup/civil"
)

// group is batches that are raised alike and wait in one place: a programme counts their
// plants together, and parts them again afterwards.
type Group struct {
	batches []*batch // in the maker's order
	Want    int      // plants of all of them
}

// choice is an outcome with all that counts of it when ways are weighed against each other,
// for one plant. Rows are numbered as by programmeRow and hoursRow.
type Choice struct {
	*outcome
	Gain        float64 // the outcome's, at hand
	Money       float64 // mix and containers, units of the currency
	BenchHeat   float64 // electricity of the warm bench that it begins on, units of the currency
	StretchCost float64 // what its stretched days take off its worth, units of the currency
	Takes       []Take  // m² by bench and week
	Hours       []Take  // hours of work by week
	Use         []Days  // by burner: the days on which it wants it on; from is never where it does not
	Place       int     // whose level steps, on some of the days from and to which it is so; -1: none
	Steps       [2]int  // the first and last of those days
}

// take is so much of what a row limits.
type Take struct {
	Row    int
	Amount float64
}

// groups puts like batches together, in the maker's order.
func (m *Planner) Groups() []*Group {
	type key struct {
		life  *life
		store int
		held  civil.Date
	}
	at := map[key]*Group{}
	var all []*Group
	for _, b := range m.batches {
		k := key{life: b.life, store: b.store}
		if day, is := m.Asked.Held[b.Code]; is {
			k.held = day.Monday()
		}
		if at[k] == nil {
			at[k] = &Group{}
			all = append(all, at[k])
		}
		at[k].batches = append(at[k].batches, b)
		at[k].Want += b.want
	}
	return all
}

// programmeRow numbers the limit of a bench in a week.
func (m *Planner) BenchRow(bench, week int) int { return bench*m.Weeks + week }

// hoursRow numbers the limit of one's own hours in a week.
func (m *Planner) HoursRow(week int) int { return 2*len(m.Given.Places)*m.Weeks + week }

// rowCount is how many rows are numbered.
func (m *Planner) RowCount() int { return (2*len(m.Given.Places) + 1) * m.Weeks }

// ChoiceOf reckons all that counts of how a portion of an assignment is raised, with places at
// some levels.
func (c *Columns) ChoiceOf(p Portion, at Levels) Choice {
	return c.choiceOf(p.batch, p.outcome, at, c.planner.takesOf(p.outcome, float64(c.planner.Asked.Fits)))
}

// choiceOf reckons all that counts of an outcome of a batch, with places at some levels and so
// much room taken.
func (c *Columns) choiceOf(b *batch, o *outcome, at Levels, takes []Take) Choice {
	m := c.planner
	one := Choice{outcome: o, Gain: o.gain, Money: m.moneyFor(b, o), BenchHeat: m.benchMoney(o), StretchCost: m.Given.Prices.Stretched.Times(o.drawn), Hours: m.hoursFor(b, o), Takes: takes, Place: -1}
	for _, of := range c.HeaterKeys {
		used := Days{Never, 0}
		if of.Lamps || m.isHeated(of.Place, at) {
			used = of.wanted(o, int(m.Given.Span.Days()))
		}
		one.Use = append(one.Use, used)
	}
	return one
}

// weekOn returns the week of a day.
func (m *Planner) WeekOn(day int) int { return (day - m.FirstMonday) / 7 }

// undominated leaves out what another way, of the same or of those known already, beats or
// equals in all: gain, money, room, stretched days, hours, the days on which it wants heat and those of the
// steps that lead to it. Of two that are the same the first stays.
func (c *Columns) undominated(all, known []Choice) []Choice {
	var kept []Choice
	for i := range all {
		beats := func(c Choice) bool { return c.beats(&all[i]) }
		beaten := slices.ContainsFunc(known, beats) || slices.ContainsFunc(all[:i], beats) ||
			slices.ContainsFunc(all[i+1:], func(c Choice) bool { return c.beats(&all[i]) && !all[i].beats(&c) })
		if !beaten {
			kept = append(kept, all[i])
		}
	}
	return kept
}

// Start is the day on which the way begins.
func (c *Choice) Start() int { return c.start }

// Route names the way through the places.
func (c *Choice) Route() string { return c.route.name }

// StretchedDays is how many days, in the mean of the years, the plant stands too warm for its light.
func (c *Choice) StretchedDays() float64 { return c.drawn }

// IsDirect reports whether the way leads straight into the ground. It takes no room under cover,
// so that a plant need never be left out.
func (c *Choice) IsDirect() bool { return c.route.direct }

// beats reports whether c is no worse than d in anything.
func (c *Choice) beats(d *Choice) bool {
	if c.Gain < d.Gain || c.Money > d.Money || c.BenchHeat > d.BenchHeat || c.StretchCost > d.StretchCost || c.Place >= 0 && (c.Steps[0] > d.Steps[0] || c.Steps[1] < d.Steps[1]) {
		return false
	}
	for i, used := range c.Use {
		if used.From != Never && (used.From < d.Use[i].From || used.To > d.Use[i].To) {
			return false
		}
	}
	return within(c.Takes, d.Takes) && within(c.Hours, d.Hours)
}

// within reports whether no row of a asks for more than that of b; both are in the order of
// their rows.
func within(a, b []Take) bool {
	for _, t := range a {
		for len(b) > 0 && b[0].Row < t.Row {
			b = b[1:]
		}
		if len(b) == 0 || b[0].Row != t.Row || b[0].Amount < t.Amount {
			return false
		}
	}
	return true
}
