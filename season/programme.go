package season

import (
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
	takes []take  // m² by bench and week
	hours []take  // hours of work by week
	use   []span  // by heated place: the days in any year on which it stands there; from is never where it does not
}

// take is so much of what a row limits.
type take struct {
	row    int
	amount float64
}

// field is all that may be chosen while the places are held at certain levels.
type field struct {
	at      levels
	hot     []int      // places heated at these levels
	choices [][]choice // by group
	warmth  []*warmth  // by heated place
	begins  [][]int    // by heated place: the days on which its heating may begin, from the latest to the first
	ends    [][]int    // by heated place: the days on which it may end, from the first to the latest
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
	f := &field{at: at}
	for i := range m.Places {
		if m.isHeated(i, at) {
			f.hot = append(f.hot, i)
			f.warmth = append(f.warmth, m.warmthOf(i, at[i]))
		}
	}
	for _, g := range groups {
		var all []choice
		for _, o := range m.held(g.batches[0], m.options(g.batches[0], at)) {
			if m.admissible(o) {
				all = append(all, m.choiceOf(g, o, f.hot, basis))
			}
		}
		f.choices = append(f.choices, undominatedChoices(all))
	}
	f.windows()
	return f
}

// choiceOf reckons all that counts of an outcome.
func (m *maker) choiceOf(g *group, o *outcome, hot []int, basis float64) choice {
	c := choice{outcome: o, money: m.moneyFor(g.batches[0], o), hours: m.hoursFor(g.batches[0], o)}
	based := outcome{option: o.option, life: o.life, fates: o.fates}
	need := based.room(basis, m.weeks, m)
	for bench := range 2 * len(m.Places) {
		for week, area := range need[bench] {
			if area > 0 && bench != o.route.groundPlace {
				c.takes = append(c.takes, take{m.programmeRow(bench, week), area})
			}
		}
	}
	for _, at := range hot {
		used := span{never, 0}
		for _, f := range o.fates {
			used = used.with(o.option, o.life, f, at, int(m.Span.Days()))
		}
		c.use = append(c.use, used)
	}
	return c
}

// moneyFor returns the mix and the containers that one plant of an outcome takes, as shares
// of full trays.
func (m *maker) moneyFor(b *batch, o *outcome) float64 {
	if !(&part{portion: portion{batch: b, outcome: o}, life: b.life}).isPotted() {
		return 0
	}
	plants := max(b.life.cells, 1)
	if start, err := supply.ContainerNamed(b.life.StartIn); err == nil {
		plants *= max(start.Cells, 1)
	}
	litres := 0.0
	pots := b.life.fill(plants, b.Form, func(n supply.Need, err error) {
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
// hours and the days on which it wants heat. Of two that are the same the first stays.
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
	if c.gain < d.gain || c.money > d.money || !within(c.takes, d.takes) || !within(c.hours, d.hours) {
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
