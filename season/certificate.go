package season

import (
	"fmt"
	"math"
	"slices"

	"eyeup/solve"
)

// Certificate is all that it takes to add up again, without trust in who found it, that no
// plan is much better: every way a plant can go with what it leans on, the tree of settings,
// and prices that bound each of its leaves. What burning costs at least in a leaf is taken
// from the weather and stands as it is.
type Certificate struct {
	Plan      string             `json:"plan"`
	Currency  string             `json:"currency"`
	WeekWorth float64            `json:"week_worth" jsonschema_description:"what a week of one plant in flower counts for"`
	LeftOut   float64            `json:"left_out" jsonschema_description:"what leaving a plant out counts for"`
	Hired     float64            `json:"hired" jsonschema_description:"an hour of hired hands; 0 where hours do not bind"`
	Hours     int                `json:"hours_from" jsonschema_description:"limits from this number on are hours of one's own; those before are square metres"`
	Limits    []float64          `json:"limits" jsonschema_description:"by number"`
	Groups    []CertifiedGroup   `json:"groups"`
	Levels    []CertifiedLevels  `json:"levels"`
	Prices    []map[int]float64  `json:"prices" jsonschema_description:"what one more of a limit is worth, by its number"`
	Dues      [][]CertifiedDues  `json:"dues" jsonschema_description:"that go with each of prices"`
	Monday    int                `json:"first_monday" jsonschema_description:"the first day of the first week; days of the season's span"`
	Leaves    []CertifiedSetting `json:"leaves"`
	Cost      float64            `json:"cost" jsonschema_description:"of the plan: its money less the worth of its flowers"`
	Bound     float64            `json:"bound" jsonschema_description:"the least of the leaves' bounds"`

	pool []*prices // that stand in Prices
}

// CertifiedGroup is plants that are raised alike.
type CertifiedGroup struct {
	Name   string `json:"name"`
	Plants int    `json:"plants"`
}

// CertifiedLevels is what may be chosen at some levels. Days are days of the season's span.
type CertifiedLevels struct {
	Held   []string            `json:"held" jsonschema_description:"the setting of every place"`
	Lit    [][]int             `json:"lit" jsonschema_description:"by burner: days on which it may be lit, from the latest"`
	Out    [][]int             `json:"out" jsonschema_description:"by burner: days on which it may go out, from the first"`
	Step   [][]int             `json:"step" jsonschema_description:"by burner: days on which its level may step; 2147483647 alone where it does not"`
	Burns  [][][][]float64     `json:"burns" jsonschema_description:"by burner, day of step, day lit and day out: what heat or light costs"`
	Ways   [][]CertifiedChoice `json:"ways" jsonschema_description:"by group"`
	fields *field
}

// CertifiedChoice is one way for a plant of a group.
type CertifiedChoice struct {
	Start  int             `json:"start"`
	Route  string          `json:"route"`
	Direct bool            `json:"direct,omitempty" jsonschema_description:"straight into the ground, so that a plant need never be left out"`
	Money  float64         `json:"money"`
	Gain   float64         `json:"gain"`
	Takes  map[int]float64 `json:"takes" jsonschema_description:"of each limit, by its number"`
	Wanted [][2]int        `json:"wanted" jsonschema_description:"by burner: from this day to the day before that one; from is 2147483647 where it is not wanted"`
	Steps  *CertifiedSteps `json:"steps,omitempty" jsonschema_description:"of a level that it takes; left out where any will do"`
}

// CertifiedSteps are the days on which a burner's level may step for a way to be as it is, by
// their place in the list of days.
type CertifiedSteps struct {
	Burner int `json:"burner"`
	First  int `json:"first"`
	Last   int `json:"last"`
}

// CertifiedSetting is a leaf: burners lit on one of a run of days, out on one of another and
// their level stepped on one of a third, all by their place in the list of days.
type CertifiedSetting struct {
	Levels int      `json:"levels" jsonschema_description:"which of levels"`
	Lit    [][2]int `json:"lit" jsonschema_description:"by burner: first and last"`
	Out    [][2]int `json:"out" jsonschema_description:"by burner: first and last"`
	Step   [][2]int `json:"step" jsonschema_description:"by burner: first and last"`
	Swept  []int    `json:"swept,omitempty" jsonschema_description:"the burners of houses of which all days are gone through"`
	Prices int      `json:"prices" jsonschema_description:"which of prices"`
	Bound  float64  `json:"bound" jsonschema_description:"no plan in it costs less, by these prices"`
	Search *float64 `json:"search,omitempty" jsonschema_description:"the bound that a search in whole plants found, where it did; not added up here"`
}

// Certificate returns what proves a plan, by its name. It fails for plans that are not proved.
func (r *Result) Certificate(plan string) (*Certificate, error) {
	one, err := r.proofNamed(plan)
	if err != nil {
		return nil, err
	}
	return r.prover.certify(plan, one)
}

// Programme returns a plan's programme at its own settings, by the plan's name. Its least
// cost is that of the best plan there.
func (r *Result) Programme(plan string) (*solve.Programme, error) {
	one, err := r.proofNamed(plan)
	if err != nil {
		return nil, err
	}
	p := r.prover
	p.weight = one.weight
	n := p.only(one.best)()[0]
	s := p.state(p.counting, p.groups, n.f, n.may, p.weight, n.burning)
	p.meetSteps(s, n) // its own plan does
	return &s.Programme, nil
}

func (r *Result) proofNamed(plan string) (*proven, error) {
	one := r.proofs[plan]
	if one == nil || one.best == nil {
		return nil, fmt.Errorf("there is no proof of a plan %q; have the season proved, and name one of its plans", plan)
	}
	return one, nil
}

// certify writes down a proof.
func (p *prover) certify(plan string, one *proven) (*Certificate, error) {
	p.weight = one.weight
	c := &Certificate{
		Plan: plan, Currency: p.Prices.Currency, WeekWorth: one.weight, LeftOut: p.leaving(p.maker, one.weight), Hired: p.hired,
		Monday: p.firstMonday, Hours: p.hoursRow(0), Limits: p.limit, Cost: p.costOf(one.best), Bound: math.Inf(1),
	}
	for _, g := range p.groups {
		c.Groups = append(c.Groups, CertifiedGroup{g.name(), g.want})
	}
	for _, n := range one.leaves {
		leaf := CertifiedSetting{Levels: c.levelsOf(p, n.f), Lit: n.from, Out: n.to, Step: n.turn, Swept: n.houses, Prices: c.pricesOf(p, p.bestOf(n, one.pool))}
		if n.by < 0 {
			found := n.bound
			leaf.Search = &found
		}
		var err error
		if leaf.Bound, err = c.add(leaf); err != nil {
			return nil, err
		}
		c.Bound = math.Min(c.Bound, leaf.Bound)
		c.Leaves = append(c.Leaves, leaf)
	}
	return c, nil
}

// bestOf returns the prices that bound a node best.
func (p *prover) bestOf(n *node, pool []*prices) *prices {
	if n.by >= 0 {
		return pool[n.by]
	}
	best, bound := pool[0], math.Inf(-1)
	for _, x := range pool {
		if b := p.boundOf(n, x); b > bound {
			best, bound = x, b
		}
	}
	return best
}

// levelsOf returns the place of a field's levels in the certificate, adding them when first met.
func (c *Certificate) levelsOf(p *prover, f *field) int {
	for i, l := range c.Levels {
		if l.fields == f {
			return i
		}
	}
	l := CertifiedLevels{Lit: f.begins, Out: f.ends, Step: f.turns, Burns: f.burns(), fields: f}
	for i := range p.Places {
		l.Held = append(l.Held, p.words(i, f.at[i]))
	}
	for g, may := range p.whole(f).ready().may {
		var ways []CertifiedChoice
		for _, i := range may {
			ways = append(ways, p.certified(f.choices[g][i], c.Hours))
		}
		l.Ways = append(l.Ways, ways)
	}
	c.Levels = append(c.Levels, l)
	return len(c.Levels) - 1
}

func (p *prover) certified(o *choice, hours int) CertifiedChoice {
	w := CertifiedChoice{Start: o.start, Route: o.route.name, Direct: o.route.direct, Money: o.money + o.warm + o.worse, Gain: o.gain, Takes: map[int]float64{}}
	for _, list := range [][]take{o.takes, o.hours} {
		for _, t := range list {
			if t.row < hours || p.hired > 0 {
				w.Takes[t.row] = t.amount
			}
		}
	}
	for _, used := range o.use {
		w.Wanted = append(w.Wanted, [2]int{used.from, used.to})
	}
	if o.place >= 0 {
		w.Steps = &CertifiedSteps{slices.Index(p.slots, slot{at: o.place}), o.steps[0], o.steps[1]}
	}
	return w
}

// burns tells what every burner of a field costs.
func (f *field) burns() [][][][]float64 {
	var all [][][][]float64
	for i, b := range f.burners {
		var of [][][]float64
		for _, turn := range f.turns[i] {
			var costs [][]float64
			for _, from := range f.begins[i] {
				var row []float64
				for _, to := range f.ends[i] {
					row = append(row, b.cost(span{from, to}, turn))
				}
				costs = append(costs, row)
			}
			of = append(of, costs)
		}
		all = append(all, of)
	}
	return all
}

// pricesOf returns the place of prices in the certificate, adding them when first met.
func (c *Certificate) pricesOf(p *prover, x *prices) int {
	if at := slices.Index(c.pool, x); at >= 0 {
		return at
	}
	by, due := map[int]float64{}, []CertifiedDues{}
	for row, price := range x.by {
		if price > 0 {
			by[row] = price
		}
	}
	for i, d := range x.dues {
		if d != nil {
			due = append(due, d.certified(i))
		}
	}
	c.pool, c.Prices, c.Dues = append(c.pool, x), append(c.Prices, by), append(c.Dues, due)
	return len(c.Prices) - 1
}

// certified tells dues week by week.
func (d *dues) certified(burner int) CertifiedDues {
	one := CertifiedDues{Burner: burner, Room: d.room, Limit: d.row}
	for _, upTo := range d.upTo {
		weeks := make([]float64, len(upTo)-1)
		for i := range weeks {
			weeks[i] = max(0, upTo[i+1]-upTo[i])
		}
		one.Plants = append(one.Plants, weeks)
	}
	return one
}
