package patch

import (
	"fmt"
	"math"

	"eyeup/solve"
)

// programme is a brief as an integer programme.
type programme struct {
	solve.Programme
	s        *sums
	place    []int // the column of each variety's places
	quarters [][4]int
	beyond   []int // -1 if it may not have more than its wish
	short    []int // -1 if any number can be raised
	planted  []int // -1 if any number is worth planting
	outside  [][2]int
	total    []int // by mix
}

// Programme returns the integer programme for the least cost, for other solvers and for
// checks. It fails for a brief that makes no sense.
func (b *Brief) Programme() (*solve.Programme, error) {
	if err := b.Check(); err != nil {
		return nil, err
	}
	return &newSums(b).programme().Programme, nil
}

// programme builds the integer programme. Each variety's places are the quarters of its wish
// that it gets and the places beyond. A missing quarter costs more than the one before it, so
// the quarters fill in order without further constraints.
func (s *sums) programme() *programme {
	p := &programme{s: s}
	room := solve.Row{Name: "room", Low: math.Inf(-1), High: s.b.room()}
	plants := solve.Row{Name: "plants", Low: math.Inf(-1), High: math.Inf(1)}
	if s.b.Places > 0 {
		plants.High = float64(s.b.Places)
	}
	for i := range s.b.Varieties {
		p.variety(i)
		room.Terms = append(room.Terms, solve.Term{Column: p.place[i], Factor: s.b.Varieties[i].area()})
		plants.Terms = append(plants.Terms, solve.Term{Column: p.place[i], Factor: 1})
	}
	if s.b.Room > 0 {
		p.Row(room)
	}
	if s.b.Places > 0 {
		p.Row(plants)
	}
	for m := range s.of {
		p.mix(m)
	}
	for g := range s.groups {
		p.group(g)
	}
	return p
}

// variety adds one variety: its places, their cost, its least and its stock.
func (p *programme) variety(i int) {
	v := &p.s.b.Varieties[i]
	least := 0
	if p.s.firm[i] {
		least = p.s.least[i]
	}
	x := p.Column(solve.Column{Name: "places " + v.Name, Low: float64(least), High: float64(v.most()), Whole: true})
	made := []solve.Term{{Column: x, Factor: -1}}
	var parts [4]int
	for q, counts := range quarters {
		n, cost := float64(quarter(v.Plant, q)), counts*v.Wish.counts()
		p.Offset += n * cost
		parts[q] = p.Column(solve.Column{Name: fmt.Sprintf("quarter %d %s", q, v.Name), Cost: -cost, High: n})
		made = append(made, solve.Term{Column: parts[q], Factor: 1})
	}
	beyond := -1
	if more := v.most() - v.Plant; more > 0 {
		beyond = p.Column(solve.Column{Name: "beyond " + v.Name, Cost: -beyondCounts, High: float64(more)})
		made = append(made, solve.Term{Column: beyond, Factor: 1})
	}
	p.place, p.quarters, p.beyond = append(p.place, x), append(p.quarters, parts), append(p.beyond, beyond)
	p.Row(solve.Row{Name: "made of " + v.Name, Terms: made})
	p.hand(i, x)
	p.atLeast(i, x)
}

// hand adds the plants that must be acquired.
func (p *programme) hand(i, x int) {
	v, short := &p.s.b.Varieties[i], -1
	if sure, known := v.sure(); known && v.most()+v.Reserve > sure {
		short = p.Column(solve.Column{Name: "short " + v.Name, Cost: shortCounts, High: float64(v.most() + v.Reserve)})
		terms := []solve.Term{{Column: x, Factor: 1}, {Column: short, Factor: -1}}
		p.Row(solve.Row{Name: "in hand " + v.Name, Low: math.Inf(-1), High: float64(sure - v.Reserve), Terms: terms})
	}
	p.short = append(p.short, short)
}

// atLeast adds that fewer than the least are not planted at all.
func (p *programme) atLeast(i, x int) {
	v, z := &p.s.b.Varieties[i], -1
	if least := p.s.least[i]; !p.s.firm[i] && least > 1 {
		z = p.Column(solve.Column{Name: "planted " + v.Name, High: 1, Whole: true})
		p.Row(solve.Row{Name: "least of " + v.Name, High: math.Inf(1), Terms: []solve.Term{{Column: x, Factor: 1}, {Column: z, Factor: -float64(least)}}})
		p.Row(solve.Row{Name: "most of " + v.Name, Low: math.Inf(-1), Terms: []solve.Term{{Column: x, Factor: 1}, {Column: z, Factor: -float64(v.most())}}})
	}
	p.planted = append(p.planted, z)
}

// mix adds the number of places of a mix.
func (p *programme) mix(m int) {
	most := 0
	terms := []solve.Term{}
	for i, is := range p.s.of[m] {
		if is {
			terms = append(terms, solve.Term{Column: p.place[i], Factor: 1})
			most += p.s.b.Varieties[i].most()
		}
	}
	total := p.Column(solve.Column{Name: fmt.Sprintf("places of mix %d", m), High: float64(most)})
	p.total = append(p.total, total)
	p.Row(solve.Row{Name: fmt.Sprintf("mix %d", m), Terms: append(terms, solve.Term{Column: total, Factor: -1})})
}

// group adds by how much a group is above or below its share.
func (p *programme) group(g int) {
	group, total := &p.s.groups[g], p.total[p.s.groups[g].mix]
	var terms []solve.Term
	most := 0
	for i, is := range group.in {
		if is {
			terms = append(terms, solve.Term{Column: p.place[i], Factor: 1})
			most += p.s.b.Varieties[i].most()
		}
	}
	bounded := func(share float64, t solve.Term) []solve.Term {
		all := append(append([]solve.Term{}, terms...), t)
		if share > 0 {
			all = append(all, solve.Term{Column: total, Factor: -share})
		}
		return all
	}
	over := p.Column(solve.Column{Name: "over " + group.name, Cost: overCounts, High: float64(most)})
	under := p.Column(solve.Column{Name: "under " + group.name, Cost: underCounts, High: p.Columns[total].High})
	p.Row(solve.Row{Name: "most " + group.name, Low: math.Inf(-1), Terms: bounded(group.high, solve.Term{Column: over, Factor: -1})})
	p.Row(solve.Row{Name: "least " + group.name, High: math.Inf(1), Terms: bounded(group.low, solve.Term{Column: under, Factor: 1})})
	p.outside = append(p.outside, [2]int{over, under})
}

// values returns a list as values of the programme's columns.
func (p *programme) values(s *sums) []float64 {
	values := make([]float64, len(p.Columns))
	for i, x := range p.place {
		v, n := &s.b.Varieties[i], s.places[i]
		values[x] = float64(n)
		kept := min(n, v.Plant)
		for q := 3; q >= 0; q-- { // quarters fill from the last
			part := min(kept, quarter(v.Plant, q))
			values[p.quarters[i][q]] = float64(part)
			kept -= part
		}
		if p.beyond[i] >= 0 {
			values[p.beyond[i]] = float64(max(0, n-v.Plant))
		}
		if p.short[i] >= 0 {
			values[p.short[i]] = float64(v.short(n))
		}
		if p.planted[i] >= 0 && n > 0 {
			values[p.planted[i]] = 1
		}
	}
	for m, total := range p.total {
		values[total] = float64(s.inMix[m])
	}
	for g, columns := range p.outside {
		outside := s.outside(g)
		values[columns[0]], values[columns[1]] = max(0, outside), max(0, -outside)
	}
	return values
}

// read returns the list given by values.
func (p *programme) read(values []float64) []int {
	places := make([]int, len(p.place))
	for i, x := range p.place {
		places[i] = int(math.Round(values[x]))
	}
	return places
}
