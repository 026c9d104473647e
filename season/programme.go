package season

import (
	"math"
	"slices"

	"eyeup/civil"
	"eyeup/supply"
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
	money float64 // mix and containers, units of the currency
	warm  float64 // electricity of the warm bench that it begins on, units of the currency
	worse float64 // what its stretched days take off its worth, units of the currency
	takes []take  // m² by bench and week
	hours []take  // hours of work by week
	use   []span  // by burner: the days on which it wants it on; from is never where it does not
}

// take is so much of what a row limits.
type take struct {
	row    int
	amount float64
}

// field is all that may be chosen while the places are held at certain levels.
type field struct {
	at      levels
	burners []*burner
	choices [][]choice // by group
	begins  [][]int    // by burner: the days on which it may be lit, from the latest to the first
	ends    [][]int    // by burner: the days on which it may go out, from the first to the latest
}

// groups puts like batches together, in the maker's order.
func (m *maker) groups() []*group {
	type key struct {
		life  *life
		store int
		held  civil.Date
	}
	at := map[key]*group{}
	var all []*group
	for _, b := range m.batches {
		k := key{life: b.life, store: b.store}
		if day, is := m.Held[b.Code]; is {
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
func (m *maker) programmeRow(bench, week int) int { return bench*m.weeks + week }

// hoursRow numbers the limit of one's own hours in a week.
func (m *maker) hoursRow(week int) int { return 2*len(m.Places)*m.weeks + week }

// rowCount is how many rows are numbered.
func (m *maker) rowCount() int { return (2*len(m.Places) + 1) * m.weeks }

// fieldOf gathers what may be chosen at some levels, on a basis of room: the share of years
// in which no plant takes more.
func (m *maker) fieldOf(groups []*group, at levels, basis float64) *field {
	f := &field{at: at, burners: m.burners(at)}
	for _, g := range groups {
		var all []choice
		for _, o := range m.held(g.batches[0], m.options(g.batches[0], at)) {
			if m.admissible(o) {
				all = append(all, m.choiceOf(g.batches[0], o, f.burners, basis))
			}
		}
		f.choices = append(f.choices, undominatedChoices(all))
	}
	f.windows()
	return f
}

// choiceOf reckons all that counts of an outcome of a batch.
func (m *maker) choiceOf(b *batch, o *outcome, burners []*burner, basis float64) choice {
	key := weighed{o, basis}
	c, known := m.choices[key]
	if !known {
		c = choice{outcome: o, money: m.moneyFor(b, o), warm: m.benchMoney(o), worse: m.Prices.Stretched.Times(o.drawn), hours: m.hoursFor(b, o), takes: m.takesOf(o, basis)}
		m.choices[key] = c
	}
	c.use = nil
	for _, one := range burners {
		c.use = append(c.use, one.wanted(o, int(m.Span.Days())))
	}
	return c
}

// weighed tells choices apart that are reckoned once.
type weighed struct {
	*outcome
	basis float64
}

// takesOf returns the room under cover that a plant takes, in the order of the rows: what it
// takes at most in the share of years that is the basis.
func (m *maker) takesOf(o *outcome, basis float64) []take {
	if o.route.direct {
		return nil
	}
	return m.takes.get(weighed{o, basis}, func() []take { return m.takesIn(o, basis) })
}

func (m *maker) takesIn(o *outcome, basis float64) []take {
	years := make([][]float64, m.hoursRow(0)) // by row, one a year
	note := func(bench, week, year int, area float64) {
		row := m.programmeRow(bench, week)
		if years[row] == nil {
			years[row] = make([]float64, len(o.fates))
		}
		years[row][year] = max(years[row][year], area)
	}
	for year, f := range o.fates {
		for day := max(o.start, m.firstMonday); day < int(m.Span.Days()); day++ {
			place, area := o.stands(f, day)
			if place < 0 || place == o.route.groundPlace {
				break
			}
			week := (day - m.firstMonday) / 7
			note(place, week, year, area)
			if m.Places[place].Lit > 0 && f.up != never && day > f.up+o.dark(place) {
				note(m.lamps(place), week, year, area)
			}
		}
	}
	var all []take
	for row, areas := range years {
		if areas == nil {
			continue
		}
		slices.Sort(areas)
		if area := areas[max(0, int(math.Ceil(basis*float64(len(areas))))-1)]; area > 0 {
			all = append(all, take{row, area})
		}
	}
	return all
}

// moneyFor returns the mix and the containers that one plant of an outcome takes, as shares
// of full trays.
func (m *maker) moneyFor(b *batch, o *outcome) float64 {
	if !(&part{portion: portion{batch: b, outcome: o}, life: b.life}).isPotted() {
		return 0
	}
	passed := b.life.containers(o.route, o.route.isPottedUp(o.fates))
	plants := 1
	for _, id := range passed {
		if c, err := supply.ContainerNamed(id); err == nil {
			plants *= max(c.Cells, 1)
		}
	}
	litres := 0.0
	pots := fill(passed, plants, b.body(), func(n supply.Need, err error) {
		if err == nil {
			litres += n.Litres.Middle
		}
	})
	money := m.Prices.MixLitre.Times(litres)
	for _, id := range sortedKeys(pots) {
		money += m.Prices.Pots[id].Times(float64(pots[id]))
	}
	return money / float64(plants)
}

// hoursFor returns the hours of work that one plant of an outcome takes, by week.
func (m *maker) hoursFor(b *batch, o *outcome) []take {
	one := portion{batch: b, outcome: o, count: 1}
	minutes := m.minutesOf(&part{portion: one, life: b.life, fates: o.fates})
	var all []take
	for week, min := range minutes {
		if min > 0 {
			all = append(all, take{m.hoursRow(week), min / 60})
		}
	}
	return all
}

// undominatedChoices leaves out what another way beats or equals in all: gain, money, room,
// stretched days, hours and the days on which it wants heat. Of two that are the same the first stays.
func undominatedChoices(all []choice) []choice {
	var kept []choice
	for i := range all {
		beaten := slices.ContainsFunc(all[:i], func(c choice) bool { return c.beats(&all[i]) }) ||
			slices.ContainsFunc(all[i+1:], func(c choice) bool { return c.beats(&all[i]) && !all[i].beats(&c) })
		if !beaten {
			kept = append(kept, all[i])
		}
	}
	return kept
}

// beats reports whether c is no worse than d in anything.
func (c *choice) beats(d *choice) bool {
	if c.gain < d.gain || c.money > d.money || c.warm > d.warm || c.worse > d.worse || !within(c.takes, d.takes) || !within(c.hours, d.hours) {
		return false
	}
	for i, used := range c.use {
		if used.from != never && (used.from < d.use[i].from || used.to > d.use[i].to) {
			return false
		}
	}
	return true
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
