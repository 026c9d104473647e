package prove

import (
	"fmt"
	"math"
	"slices"

	"eyeup/season"
	"eyeup/solve"
)

// listDays lists the days on which each heater may be switched on and go out, those on which some
// choice begins or ends to want it, and those on which its level may step.
func (f *subproblem) listDays(stepDays []int) {
	for i, b := range f.heaters {
		var begins, ends []int
		for _, group := range f.choices {
			for _, c := range group {
				if used := c.Use[i]; used.From != season.Never {
					begins, ends = append(begins, used.From), append(ends, used.To)
				}
			}
		}
		slices.Sort(begins)
		slices.Sort(ends)
		if len(begins) == 0 {
			begins, ends = []int{season.Never}, []int{0}
		}
		begins, ends = slices.Compact(begins), slices.Compact(ends)
		if last := begins[len(begins)-1]; last < ends[0] { // it may also not be switched on at all
			begins = append(begins, season.Never)
		}
		slices.Reverse(begins)
		f.onDays, f.offDays, f.stepDays = append(f.onDays, begins), append(f.offDays, ends), append(f.stepDays, f.stepDaysOf(b, stepDays))
	}
}

// stepDaysOf are the days on which the level of a heater may step, of those on which any may.
func (f *subproblem) stepDaysOf(b *season.Heater, days []int) []int {
	if b.Lamps || !f.at[b.Place].Steps() {
		return []int{season.Never}
	}
	return days
}

// limits is what all programmes of a season share: what each row holds and what leaning on
// it can be bought for.
type limits struct {
	limit []float64 // m² or hours, by row
	hired float64   // an hour of hired hands; 0 where it has no price and hours do not bind
	hours int       // rows from this one on are hours, those before are m²
	weeks int       // of the season
	spare float64   // what leaving out a plant counts for in money: more than raising it can ever cost
}

func newLimits(m *season.Planner) *limits {
	c := &limits{limit: make([]float64, m.RowCount()), hours: m.HoursRow(0), weeks: m.Weeks}
	for week := range m.Weeks {
		for at, p := range m.Given.Places {
			c.limit[m.BenchRow(at, week)] = m.FreeIn(at, week)
			if p.Lit > 0 {
				c.limit[m.BenchRow(m.Lamps(at), week)] = m.FreeIn(m.Lamps(at), week)
			}
		}
		c.limit[m.HoursRow(week)] = m.Given.HoursPerWeek
	}
	if m.Given.Prices.Hand.Known {
		c.hired = m.Given.Prices.Hand.Amount
	}
	return c
}

// leftOutCost returns what leaving out a plant counts for: more than any way of raising it, so
// that it happens only where there is no way.
func (c *limits) leftOutCost(weight float64) float64 {
	return c.spare + weight*float64(c.weeks)
}

// binds reports whether a row limits anything.
func (c *limits) binds(row int) bool {
	return row < c.hours || c.hired > 0
}

// column says what a column of a programme counts.
type column struct {
	group, choice int // group -1: hired hands; choice -1: left out
}

// programme is a programme with what its columns and rows stand for.
type programme struct {
	solve.Programme
	columns    []column
	rows       []int       // the row that each limit stands for; -1 for the plants of a group and for heaters
	heaterRows []heaterRow // of the last rows
}

// newProgramme puts a field into a programme: the choices that may be made, weeks of flower counted
// at weight, with heat and lamps already settled.
func (b *problem) newProgramme(f *subproblem, may [][]int32, weight, heaterCost float64) *programme {
	m, c, groups := b.planner, b.limits, b.groups
	s := &programme{Programme: solve.Programme{Offset: heaterCost}}
	terms := make([][]solve.Term, m.RowCount())
	for g, all := range f.choices {
		want := float64(groups[g].Want)
		plants := solve.Row{Name: "plants of " + groups[g].Name(), Low: want, High: want}
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
			always = always || o.IsDirect()
			at := add(solve.Column{Name: b.choiceName(groups[g], o), Cost: o.Money + o.BenchHeat + o.StretchCost - weight*o.Gain}, int(i))
			for _, list := range [][]season.Take{o.Takes, o.Hours} {
				for _, t := range list {
					if c.binds(t.Row) {
						terms[t.Row] = append(terms[t.Row], solve.Term{Column: at, Factor: t.Amount})
					}
				}
			}
		}
		if !always {
			add(solve.Column{Name: "left out of " + groups[g].Name(), Cost: c.leftOutCost(weight)}, -1)
		}
		s.Row(plants)
		s.rows = append(s.rows, -1)
	}
	b.addLimits(s, terms)
	return s
}

// addLimits adds the rows that anything leans on, with the hands that they call for.
func (b *problem) addLimits(s *programme, terms [][]solve.Term) {
	c := b.limits
	for row, all := range terms {
		if len(all) == 0 {
			continue
		}
		limit := solve.Row{Name: b.rowName(row), Low: math.Inf(-1), High: c.limit[row], Terms: all}
		if row >= c.hours {
			at := s.Column(solve.Column{Name: "hired: " + limit.Name, Cost: c.hired, High: math.Inf(1)})
			s.columns = append(s.columns, column{-1, -1})
			limit.Terms = append(limit.Terms, solve.Term{Column: at, Factor: -1})
		}
		s.Row(limit)
		s.rows = append(s.rows, row)
	}
}

// rowName names a limit by its place and week.
func (b *problem) rowName(row int) string {
	what := "hours"
	if row < b.planner.HoursRow(0) {
		what = b.planner.BenchName(row / b.planner.Weeks)
	}
	return fmt.Sprintf("%s, week of %v", what, b.planner.Date(b.planner.FirstMonday+7*(row%b.planner.Weeks)))
}

func (b *problem) choiceName(g *season.Group, o *season.Choice) string {
	return fmt.Sprintf("%s, %v, %s", g.Name(), b.planner.Date(o.Start()), o.Route())
}
