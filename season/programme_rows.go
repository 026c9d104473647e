package season

import (
	"fmt"
	"math"
	"slices"

	"eyeup/solve"
)

// warmth is the heat that a place takes at one level, by day and year, as running sums.
type warmth struct {
	sums  [][]float64 // kWh given up to the begin of a day, by year
	price float64     // of a kWh
	years []float64   // room to sort in
}

func (m *maker) warmthOf(at, level int) *warmth {
	c := m.climate(at, m.setting(at, level))
	w := &warmth{price: m.Places[at].Energy.Times(1), years: make([]float64, len(c.years))}
	for _, y := range c.years {
		sums := make([]float64, len(y.given)+1)
		for d, kWh := range y.given {
			sums[d+1] = sums[d] + kWh
		}
		w.sums = append(w.sums, sums)
	}
	return w
}

// cost returns what the heat costs in the middle of the years while a place is in use. More
// days never cost less.
func (w *warmth) cost(used span) float64 {
	if used.from >= used.to {
		return 0
	}
	for i, sums := range w.sums {
		w.years[i] = sums[min(used.to, len(sums)-1)] - sums[max(used.from-warming, 0)]
	}
	slices.Sort(w.years)
	return w.price * max(0, w.years[(len(w.years)-1)/2])
}

// windows lists the days on which the heating of each place may begin and end: those on
// which some choice begins or ends to stand there.
func (f *field) windows() {
	for hot := range f.hot {
		var begins, ends []int
		for _, group := range f.choices {
			for _, c := range group {
				if used := c.use[hot]; used.from != never {
					begins, ends = append(begins, used.from), append(ends, used.to)
				}
			}
		}
		slices.Sort(begins)
		slices.Sort(ends)
		if len(begins) == 0 {
			begins, ends = []int{never}, []int{0}
		}
		begins, ends = slices.Compact(begins), slices.Compact(ends)
		slices.Reverse(begins)
		f.begins, f.ends = append(f.begins, begins), append(f.ends, ends)
	}
}

// lampWeek returns what the lamps of a place cost in a week in which they burn: the mean over
// the years.
func (m *maker) lampWeek(at, week int) float64 {
	c := m.climate(at, m.setting(at, 0))
	kWh := 0.0
	for _, y := range c.years {
		kWh += sum(m.weekOf(y.lamps, week))
	}
	return m.Prices.Electricity.Times(kWh / float64(len(c.years)))
}

// counting is what all programmes of a season share: what each row holds and what leaning on
// it can be bought for.
type counting struct {
	limit []float64 // m² or hours, by row
	lamp  []float64 // by row of a lit bench: what a week of its lamps costs; 0 for other rows
	hired float64   // an hour of hired hands; 0 where it has no price and hours do not bind
	spare float64   // what leaving out a plant counts for in money: more than raising it can ever cost
}

func (m *maker) counting() *counting {
	c := &counting{limit: make([]float64, m.rowCount()), lamp: make([]float64, m.rowCount())}
	for week := range m.weeks {
		for at, p := range m.Places {
			c.limit[m.programmeRow(at, week)] = float64(p.Room)
			if p.Lit > 0 {
				row := m.programmeRow(m.lamps(at), week)
				c.limit[row], c.lamp[row] = float64(p.Lit), m.lampWeek(at, week)
			}
		}
		c.limit[m.hoursRow(week)] = m.HoursPerWeek
	}
	if m.Prices.Hand.Known {
		c.hired = m.Prices.Hand.Amount
	}
	return c
}

// leaving returns what leaving out a plant counts for: more than any way of raising it, so
// that it happens only where there is no way.
func (c *counting) leaving(m *maker, weight float64) float64 {
	return c.spare + weight*float64(m.weeks)
}

// binds reports whether a row limits anything.
func (c *counting) binds(m *maker, row int) bool {
	return row < m.hoursRow(0) || c.hired > 0
}

// column says what a column of a programme counts.
type column struct {
	group, choice int // group -1: lamps or hands; choice -1: left out
}

// stated is a programme with what its columns and rows stand for.
type stated struct {
	solve.Programme
	columns []column
	rows    []int // the row that each limit stands for; -1 for the plants of a group
}

// state puts a field into a programme: the choices that may be made, weeks of flower counted
// at weight, with heat already settled.
func (m *maker) state(c *counting, groups []*group, f *field, may func(*choice) bool, weight, heat float64) *stated {
	s := &stated{Programme: solve.Programme{Offset: heat}}
	terms := make([][]solve.Term, m.rowCount())
	for g, all := range f.choices {
		want := float64(groups[g].want)
		plants := solve.Row{Name: "plants of " + groups[g].name(), Low: want, High: want}
		add := func(col solve.Column, choice int) int {
			col.High, col.Whole = want, true
			at := s.Column(col)
			s.columns = append(s.columns, column{g, choice})
			plants.Terms = append(plants.Terms, solve.Term{Column: at, Factor: 1})
			return at
		}
		always := false
		for i := range all {
			o := &all[i]
			if !may(o) {
				continue
			}
			always = always || o.route.direct
			at := add(solve.Column{Name: m.choiceName(groups[g], o), Cost: o.money - weight*o.gain}, i)
			for _, list := range [][]take{o.takes, o.hours} {
				for _, t := range list {
					if c.binds(m, t.row) {
						terms[t.row] = append(terms[t.row], solve.Term{Column: at, Factor: t.amount})
					}
				}
			}
		}
		if !always {
			add(solve.Column{Name: "left out of " + groups[g].name(), Cost: c.leaving(m, weight)}, -1)
		}
		s.Row(plants)
		s.rows = append(s.rows, -1)
	}
	m.limits(c, s, terms)
	return s
}

// limits adds the rows that anything leans on, with the lamps and hands that they call for.
func (m *maker) limits(c *counting, s *stated, terms [][]solve.Term) {
	for row, all := range terms {
		if len(all) == 0 {
			continue
		}
		limit := solve.Row{Name: m.rowName(row), Low: math.Inf(-1), High: c.limit[row], Terms: all}
		if c.lamp[row] > 0 {
			at := s.Column(solve.Column{Name: "lamps on: " + limit.Name, Cost: c.lamp[row], High: 1, Whole: true})
			s.columns = append(s.columns, column{-1, -1})
			limit.Terms, limit.High = append(limit.Terms, solve.Term{Column: at, Factor: -c.limit[row]}), 0
		}
		if row >= m.hoursRow(0) {
			at := s.Column(solve.Column{Name: "hired: " + limit.Name, Cost: c.hired, High: math.Inf(1)})
			s.columns = append(s.columns, column{-1, -1})
			limit.Terms = append(limit.Terms, solve.Term{Column: at, Factor: -1})
		}
		s.Row(limit)
		s.rows = append(s.rows, row)
	}
}

// rowName names a limit by its place and week.
func (m *maker) rowName(row int) string {
	what := "hours"
	if row < m.hoursRow(0) {
		what = m.benchName(row / m.weeks)
	}
	return fmt.Sprintf("%s, week of %v", what, m.date(m.firstMonday+7*(row%m.weeks)))
}

func (m *maker) choiceName(g *group, o *choice) string {
	return fmt.Sprintf("%s, %v, %s", g.name(), m.date(o.start), o.route.name)
}

// name names a group by its kind and how its plants come from the stock.
func (g *group) name() string {
	b := g.batches[0]
	return fmt.Sprintf("%s %s %s %s", b.Variety.Kind, b.Variety.Timing, b.Form, b.how)
}
