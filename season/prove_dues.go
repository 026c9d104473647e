package season

import (
	"fmt"
	"math"

	"eyeup/solve"
)

// dues are what each plant of a group pays for a week in which it wants a burner that is not
// swept: its share of lamps that burn for all. What all plants together could pay is taken off
// what it costs to burn.
type dues struct {
	monday int         // the first day of the first week
	upTo   [][]float64 // by group: of one plant, up to the begin of each week
	room   []float64   // by week: for each m² under lamps
	row    int         // the limit of the room under lamps in the first week
	all    []float64   // of all plants of all groups together, and all the room
}

// due says what a row of a programme calls for: that the plants of a group which want a burner
// in a week are no more than it burns for.
// A group of ofRoom stands for the room: no more is taken than there is while it burns.
type due struct{ burner, group, week int }

const ofRoom = -1

// of is what one plant of a group pays for a run of days, in which it takes so much.
func (d *dues) of(g int, takes []take, days span) float64 {
	first, last := d.week(days.from), d.week(days.to-1)
	pays := d.upTo[g][last+1] - d.upTo[g][first]
	for _, t := range takes {
		if t.row >= d.row+first && t.row <= d.row+last {
			pays += d.room[t.row-d.row] * t.amount
		}
	}
	return pays
}

func (d *dues) week(day int) int { return (day - d.monday) / 7 }

// duesFor is what one plant of a group pays for what burns for a choice.
func (x *prices) duesFor(g int, c *choice) float64 {
	sum := 0.0
	for i, one := range x.dues {
		if one != nil && c.use[i].from != never {
			sum += one.of(g, c.takes, c.use[i])
		}
	}
	return sum
}

// least is how much less than at the shortest a node's burner costs at the best, with dues
// taken in.
func (d *dues) least(n *node, burner int) float64 {
	b, least := n.f.burners[burner], math.Inf(1)
	for _, from := range n.f.begins[burner][n.from[burner][0] : n.from[burner][1]+1] {
		for _, to := range n.f.ends[burner][n.to[burner][0] : n.to[burner][1]+1] {
			cost := b.cost(span{from, to}, never)
			if from < to {
				cost -= d.all[d.week(to-1)+1] - d.all[d.week(from)]
			}
			least = min(least, cost)
		}
	}
	return least - b.cost(n.least[burner], never)
}

// burn adds to a programme what a node leaves open: how long all burns that is not swept.
// Week by week it burns for a share of each group at least as large as wants it.
func (p *prover) burn(s *stated, n *node) {
	for _, i := range n.others {
		if n.least[i] != n.widest[i] {
			p.burnWeeks(s, n, i)
		}
	}
}

func (p *prover) burnWeeks(s *stated, n *node, burner int) {
	rows := map[[2]int][]solve.Term{} // by week and group
	for at, c := range s.columns {
		if c.group < 0 || c.choice < 0 {
			continue
		}
		one := n.f.choices[c.group][c.choice]
		use := one.use[burner]
		if use.from == never {
			continue
		}
		for week := p.weekOn(use.from); week <= p.weekOn(use.to-1); week++ {
			key := [2]int{week, c.group}
			rows[key] = append(rows[key], solve.Term{Column: at, Factor: 1})
		}
		for _, t := range one.takes {
			if week := t.row - p.programmeRow(p.lamps(n.f.burners[burner].at), 0); n.f.burners[burner].lamps && week >= p.weekOn(use.from) && week <= p.weekOn(use.to-1) {
				key := [2]int{week, ofRoom}
				rows[key] = append(rows[key], solve.Term{Column: at, Factor: t.amount})
			}
		}
	}
	for week := range p.weeks {
		at := -1
		for g := ofRoom; g < len(p.groups); g++ {
			terms := rows[[2]int{week, g}]
			if terms == nil || p.burns(n, burner, week) {
				continue
			}
			if at < 0 {
				at = s.Column(solve.Column{Name: fmt.Sprintf("burner %d, week %d", burner, week), Cost: p.weekly(n.f.burners[burner], week), High: 1})
				s.columns = append(s.columns, column{-1, -1})
			}
			terms = append(terms, solve.Term{Column: at, Factor: -p.most(n.f.burners[burner], g)})
			s.Row(solve.Row{Low: math.Inf(-1), Terms: terms})
			s.rows, s.dues = append(s.rows, -1), append(s.dues, due{burner, g, week})
		}
	}
}

// most is how much of a due there can be: the plants of a group, or the room under lamps.
func (p *prover) most(b *burner, group int) float64 {
	if group == ofRoom {
		return float64(p.Places[b.at].Lit)
	}
	return float64(p.groups[group].want)
}

// burns reports whether a burner burns for all of a week at the shortest.
func (p *prover) burns(n *node, burner, week int) bool {
	day := p.firstMonday + 7*week
	return n.least[burner].from <= day && n.least[burner].to >= day+7
}

// weekly is what a burner costs in a week.
func (p *prover) weekly(b *burner, week int) float64 {
	day := max(0, p.firstMonday+7*week)
	return b.cost(span{day + b.ahead, day + 7}, never)
}

// duesOf reads what plants pay out of the prices of a programme's last rows.
func (p *prover) duesOf(n *node, s *stated, found []float64) []*dues {
	if len(s.dues) == 0 {
		return nil
	}
	all := make([]*dues, len(p.slots))
	first := len(s.rows) - len(s.dues)
	for i, one := range s.dues {
		if all[one.burner] == nil {
			all[one.burner] = p.noDues(p.slots[one.burner])
		}
		d, pay := all[one.burner], max(0, -found[first+i])
		if one.group == ofRoom {
			d.room[one.week] += pay
		} else {
			d.upTo[one.group][one.week+1] += pay
		}
		d.all[one.week+1] += pay * p.most(n.f.burners[one.burner], one.group)
	}
	for _, d := range all {
		if d != nil {
			d.add()
		}
	}
	return all
}

func (p *prover) noDues(of slot) *dues {
	d := &dues{monday: p.firstMonday, all: make([]float64, p.weeks+2), room: make([]float64, p.weeks+2), row: p.programmeRow(p.lamps(of.at), 0)}
	for range p.groups {
		d.upTo = append(d.upTo, make([]float64, p.weeks+2))
	}
	return d
}

// add turns what is paid in each week into what is paid up to each.
func (d *dues) add() {
	for _, weeks := range append(d.upTo, d.all) {
		for i := range weeks[1:] {
			weeks[i+1] += weeks[i]
		}
	}
}
