package season

import (
	"fmt"
	"math"
	"slices"

	"eyeup/solve"
)

// windows lists the days on which each burner may be lit and go out, those on which some
// choice begins or ends to want it, and those on which its level may step.
func (f *field) windows(turns []int) {
	for i, b := range f.burners {
		var begins, ends []int
		for _, group := range f.choices {
			for _, c := range group {
				if used := c.use[i]; used.from != never {
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
		if last := begins[len(begins)-1]; last < ends[0] { // it may also not be lit at all
			begins = append(begins, never)
		}
		slices.Reverse(begins)
		f.begins, f.ends, f.turns = append(f.begins, begins), append(f.ends, ends), append(f.turns, f.turnsOf(b, turns))
	}
}

// turnsOf are the days on which the level of a burner may step, of those on which any may.
func (f *field) turnsOf(b *burner, days []int) []int {
	if b.lamps || !f.at[b.at].steps() {
		return []int{never}
	}
	return days
}

// counting is what all programmes of a season share: what each row holds and what leaning on
// it can be bought for.
type counting struct {
	limit []float64 // m² or hours, by row
	hired float64   // an hour of hired hands; 0 where it has no price and hours do not bind
	spare float64   // what leaving out a plant counts for in money: more than raising it can ever cost
}

func (m *maker) counting() *counting {
	c := &counting{limit: make([]float64, m.rowCount())}
	for week := range m.weeks {
		for at, p := range m.Places {
			c.limit[m.programmeRow(at, week)] = max(0, m.roomOf(at)-m.grown(at, week))
			if p.Lit > 0 {
				c.limit[m.programmeRow(m.lamps(at), week)] = max(0, m.roomOf(m.lamps(at))-m.grown(m.lamps(at), week))
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
	group, choice int // group -1: hired hands; choice -1: left out
}

// stated is a programme with what its columns and rows stand for.
type stated struct {
	solve.Programme
	columns []column
	rows    []int // the row that each limit stands for; -1 for the plants of a group and for dues
	dues    []due // of the last rows
}

// state puts a field into a programme: the choices that may be made, weeks of flower counted
// at weight, with heat and lamps already settled.
func (m *maker) state(c *counting, groups []*group, f *field, may [][]int32, weight, burning float64) *stated {
	s := &stated{Programme: solve.Programme{Offset: burning}}
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
		for _, i := range may[g] {
			o := all[i]
			always = always || o.route.direct
			at := add(solve.Column{Name: m.choiceName(groups[g], o), Cost: o.money + o.warm + o.worse - weight*o.gain}, int(i))
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

// limits adds the rows that anything leans on, with the hands that they call for.
func (m *maker) limits(c *counting, s *stated, terms [][]solve.Term) {
	for row, all := range terms {
		if len(all) == 0 {
			continue
		}
		limit := solve.Row{Name: m.rowName(row), Low: math.Inf(-1), High: c.limit[row], Terms: all}
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
