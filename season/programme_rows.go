package season

import (
	"fmt"
	"math"
	"slices"

	"eyeup/solve"
)

// listDays lists the days on which each heater may be lit and go out, those on which some
// choice begins or ends to want it, and those on which its level may step.
func (f *subproblem) listDays(stepDays []int) {
	for i, b := range f.heaters {
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
		f.onDays, f.offDays, f.stepDays = append(f.onDays, begins), append(f.offDays, ends), append(f.stepDays, f.stepDaysOf(b, stepDays))
	}
}

// stepDaysOf are the days on which the level of a heater may step, of those on which any may.
func (f *subproblem) stepDaysOf(b *heater, days []int) []int {
	if b.lamps || !f.at[b.place].steps() {
		return []int{never}
	}
	return days
}

// limits is what all programmes of a season share: what each row holds and what leaning on
// it can be bought for.
type limits struct {
	limit []float64 // m² or hours, by row
	hired float64   // an hour of hired hands; 0 where it has no price and hours do not bind
	spare float64   // what leaving out a plant counts for in money: more than raising it can ever cost
}

func (m *planner) limits() *limits {
	c := &limits{limit: make([]float64, m.rowCount())}
	for week := range m.weeks {
		for at, p := range m.Given.Places {
			c.limit[m.programmeRow(at, week)] = max(0, m.roomOf(at)-m.grown(at, week))
			if p.Lit > 0 {
				c.limit[m.programmeRow(m.lamps(at), week)] = max(0, m.roomOf(m.lamps(at))-m.grown(m.lamps(at), week))
			}
		}
		c.limit[m.hoursRow(week)] = m.Given.HoursPerWeek
	}
	if m.Given.Prices.Hand.Known {
		c.hired = m.Given.Prices.Hand.Amount
	}
	return c
}

// leftOutCost returns what leaving out a plant counts for: more than any way of raising it, so
// that it happens only where there is no way.
func (c *limits) leftOutCost(m *planner, weight float64) float64 {
	return c.spare + weight*float64(m.weeks)
}

// binds reports whether a row limits anything.
func (c *limits) binds(m *planner, row int) bool {
	return row < m.hoursRow(0) || c.hired > 0
}

// column says what a column of a programme counts.
type column struct {
	group, choice int // group -1: hired hands; choice -1: left out
}

// programme is a programme with what its columns and rows stand for.
type programme struct {
	solve.Programme
	columns    []column
	rows       []int       // the row that each limit stands for; -1 for the plants of a group and for dues
	heaterRows []heaterRow // of the last rows
}

// newProgramme puts a field into a programme: the choices that may be made, weeks of flower counted
// at weight, with heat and lamps already settled.
func (m *planner) newProgramme(c *limits, groups []*group, f *subproblem, may [][]int32, weight, burning float64) *programme {
	s := &programme{Programme: solve.Programme{Offset: burning}}
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
			at := add(solve.Column{Name: m.choiceName(groups[g], o), Cost: o.money + o.benchHeat + o.stretchCost - weight*o.gain}, int(i))
			for _, list := range [][]take{o.takes, o.hours} {
				for _, t := range list {
					if c.binds(m, t.row) {
						terms[t.row] = append(terms[t.row], solve.Term{Column: at, Factor: t.amount})
					}
				}
			}
		}
		if !always {
			add(solve.Column{Name: "left out of " + groups[g].name(), Cost: c.leftOutCost(m, weight)}, -1)
		}
		s.Row(plants)
		s.rows = append(s.rows, -1)
	}
	m.addLimits(c, s, terms)
	return s
}

// addLimits adds the rows that anything leans on, with the hands that they call for.
func (m *planner) addLimits(c *limits, s *programme, terms [][]solve.Term) {
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
func (m *planner) rowName(row int) string {
	what := "hours"
	if row < m.hoursRow(0) {
		what = m.benchName(row / m.weeks)
	}
	return fmt.Sprintf("%s, week of %v", what, m.date(m.firstMonday+7*(row%m.weeks)))
}

func (m *planner) choiceName(g *group, o *choice) string {
	return fmt.Sprintf("%s, %v, %s", g.name(), m.date(o.start), o.route.name)
}

// name names a group by its kind and how its plants come from the stock.
func (g *group) name() string {
	b := g.batches[0]
	return fmt.Sprintf("%s %s %s %s", b.Variety.Kind, b.Variety.Timing, b.Form, b.how)
}
