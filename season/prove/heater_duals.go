package prove

import (
	"fmt"
	"math"

	"eyeup/season"
	"eyeup/solve"
)

// heaterDuals are what each plant of a group pays for a week in which it wants a heater that is not
// searched day by day: its share of lamps that are on for all. What all plants together could pay is taken off
// what it costs to run.
type heaterDuals struct {
	monday int         // the first day of the first week
	upTo   [][]float64 // by group: of one plant, up to the begin of each week
	room   []float64   // by week: for each m² under lamps
	row    int         // the limit of the room under lamps in the first week
	total  []float64   // of all plants of all groups together, and all the room
}

// heaterRow says what a row of a programme calls for: that the plants of a group which want a heater
// in a week are no more than it is on for.
// A group of ofRoom stands for the room: no more is taken than there is while it is on.
type heaterRow struct{ heater, group, week int }

const ofRoom = -1

// payment is what one plant of a group pays for a run of days, in which it takes so much.
func (d *heaterDuals) payment(g int, takes []season.Take, days season.Days) float64 {
	first, last := d.week(days.From), d.week(days.To-1)
	pays := d.upTo[g][last+1] - d.upTo[g][first]
	for _, t := range takes {
		if t.Row >= d.row+first && t.Row <= d.row+last {
			pays += d.room[t.Row-d.row] * t.Amount
		}
	}
	return pays
}

func (d *heaterDuals) week(day int) int { return (day - d.monday) / 7 }

// heaterShare is what one plant of a group pays for what is on for a choice.
func (x *duals) heaterShare(g int, c *season.Choice) float64 {
	sum := 0.0
	for i, one := range x.heaters {
		if one != nil && c.Use[i].From != season.Never {
			sum += one.payment(g, c.Takes, c.Use[i])
		}
	}
	return sum
}

// leastCost is how much less than at the shortest a node's heater costs at the best, with dual prices of heaters
// taken in.
func (d *heaterDuals) leastCost(n *node, heater int) float64 {
	b, least := n.sub.heaters[heater], math.Inf(1)
	for _, from := range n.sub.onDays[heater][n.on[heater][0] : n.on[heater][1]+1] {
		for _, to := range n.sub.offDays[heater][n.off[heater][0] : n.off[heater][1]+1] {
			cost := b.Cost(season.Days{From: from, To: to}, season.Never)
			if from < to {
				cost -= d.total[d.week(to-1)+1] - d.total[d.week(from)]
			}
			least = min(least, cost)
		}
	}
	return least - b.Cost(n.shortest[heater], season.Never)
}

// addHeaterRows adds to a programme what a node leaves open: how long each heater is on whose days are not searched.
// Week by week it is on for a share of each group at least as large as wants it.
func (p *prover) addHeaterRows(s *programme, n *node) {
	for _, i := range n.others {
		if n.shortest[i] != n.longest[i] {
			p.addRowsOf(s, n, i)
		}
	}
}

func (p *prover) addRowsOf(s *programme, n *node, heater int) {
	rows := map[[2]int][]solve.Term{} // by week and group
	for at, c := range s.columns {
		if c.group < 0 || c.choice < 0 {
			continue
		}
		one := n.sub.choices[c.group][c.choice]
		use := one.Use[heater]
		if use.From == season.Never {
			continue
		}
		for week := p.problem.planner.WeekOn(use.From); week <= p.problem.planner.WeekOn(use.To-1); week++ {
			key := [2]int{week, c.group}
			rows[key] = append(rows[key], solve.Term{Column: at, Factor: 1})
		}
		for _, t := range one.Takes {
			if week := t.Row - p.problem.planner.BenchRow(p.problem.planner.Lamps(n.sub.heaters[heater].Place), 0); n.sub.heaters[heater].Lamps && week >= p.problem.planner.WeekOn(use.From) && week <= p.problem.planner.WeekOn(use.To-1) {
				key := [2]int{week, ofRoom}
				rows[key] = append(rows[key], solve.Term{Column: at, Factor: t.Amount})
			}
		}
	}
	for week := range p.problem.planner.Weeks {
		at := -1
		for g := ofRoom; g < len(p.problem.groups); g++ {
			terms := rows[[2]int{week, g}]
			if terms == nil || p.isOnAllWeek(n, heater, week) {
				continue
			}
			if at < 0 {
				at = s.Column(solve.Column{Name: fmt.Sprintf("heater %d, week %d", heater, week), Cost: p.weeklyCost(n.sub.heaters[heater], week), High: 1})
				s.columns = append(s.columns, column{-1, -1})
			}
			terms = append(terms, solve.Term{Column: at, Factor: -p.mostWanting(n.sub.heaters[heater], g)})
			s.Row(solve.Row{Low: math.Inf(-1), Terms: terms})
			s.rows, s.heaterRows = append(s.rows, -1), append(s.heaterRows, heaterRow{heater, g, week})
		}
	}
}

// mostWanting is how much of a due there can be: the plants of a group, or the room under lamps.
func (p *prover) mostWanting(b *season.Heater, group int) float64 {
	if group == ofRoom {
		return float64(p.problem.planner.Given.Places[b.Place].Lit)
	}
	return float64(p.problem.groups[group].Want)
}

// isOnAllWeek reports whether a heater is on for all of a week at the shortest.
func (p *prover) isOnAllWeek(n *node, heater, week int) bool {
	day := p.problem.planner.FirstMonday + 7*week
	return n.shortest[heater].From <= day && n.shortest[heater].To >= day+7
}

// weeklyCost is what a heater costs in a week.
func (p *prover) weeklyCost(b *season.Heater, week int) float64 {
	day := max(0, p.problem.planner.FirstMonday+7*week)
	return b.Cost(season.Days{From: day + b.Ahead, To: day + 7}, season.Never)
}

// heaterDualsOf reads what plants pay out of the prices of a programme's last rows.
func (p *prover) heaterDualsOf(n *node, s *programme, found []float64) []*heaterDuals {
	if len(s.heaterRows) == 0 {
		return nil
	}
	all := make([]*heaterDuals, len(p.problem.columns.HeaterKeys))
	first := len(s.rows) - len(s.heaterRows)
	for i, one := range s.heaterRows {
		if all[one.heater] == nil {
			all[one.heater] = p.newHeaterDuals(p.problem.columns.HeaterKeys[one.heater])
		}
		d, pay := all[one.heater], max(0, -found[first+i])
		if one.group == ofRoom {
			d.room[one.week] += pay
		} else {
			d.upTo[one.group][one.week+1] += pay
		}
		d.total[one.week+1] += pay * p.mostWanting(n.sub.heaters[one.heater], one.group)
	}
	for _, d := range all {
		if d != nil {
			d.cumulate()
		}
	}
	return all
}

func (p *prover) newHeaterDuals(of season.HeaterKey) *heaterDuals {
	d := &heaterDuals{monday: p.problem.planner.FirstMonday, total: make([]float64, p.problem.planner.Weeks+2), room: make([]float64, p.problem.planner.Weeks+2), row: p.problem.planner.BenchRow(p.problem.planner.Lamps(of.Place), 0)}
	for range p.problem.groups {
		d.upTo = append(d.upTo, make([]float64, p.problem.planner.Weeks+2))
	}
	return d
}

// cumulate turns what is paid in each week into what is paid up to each.
func (d *heaterDuals) cumulate() {
	for _, weeks := range append(d.upTo, d.total) {
		for i := range weeks[1:] {
			weeks[i+1] += weeks[i]
		}
	}
}
