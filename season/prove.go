package season

import (
	"context"
	"fmt"
	"math"

	"eyeup/solve"
)

// Relax answers a programme with whole numbers not asked for, and tells the prices of its
// limits.
type Relax func(ctx context.Context, p *solve.Programme) (solve.Relaxation, error)

// Progress is how far the proof of a season has come.
type Progress struct {
	Plan   string  // what is being proved
	Solves int     // programmes solved so far
	Cost   float64 // of the best plan so far, weeks of flower counted; +Inf before the first
	Bound  float64 // no plan costs less
	Money  float64 // that the best plan so far costs
	Weeks  float64 // of flower that it gains a plant
}

// String says it in the grower's words.
func (p Progress) String() string {
	if apart := p.Cost - p.Bound; !math.IsInf(apart, 0) && !math.IsNaN(apart) {
		return fmt.Sprintf("%d seasons worked out, none can be more than %.2f better than the best", p.Solves, math.Max(0, apart))
	}
	return fmt.Sprintf("%d seasons worked out", p.Solves)
}

// Share is how near a plan and its bound must be, as a share of its money and the worth of
// its flowers together, to count as proved.
const Share = 0.004

// How many programmes are solved for one plan before it is left as it is, with a full solver
// and by plain arithmetic, how many branches or rounds are looked into for one setting, and
// how often the settings are split.
const (
	mostSplits                      = 4000
	mostSolves, mostPlainSolves     = 120, 16
	mostBranches, mostPlainBranches = 2000, 1
)

// prover looks for the best plan at one weight of a week of flower after another.
type prover struct {
	*maker
	*counting
	ctx    context.Context
	groups []*group
	fields []*field
	pool   []*prices
	serve  []int // of the pool, those that serve at this weight
	say    func(Progress)

	weight float64 // money for a week of one plant in flower
	best   *found  // at that weight
	leaves []*node // of the last tree
	made   int     // nodes, for their order
	told   Progress
	begun  int // solves when the last search began
}

// found is a plan with what it comes to, in the figures of the programmes.
type found struct {
	at       levels
	counts   [][]int   // by group and choice of its field; nil for a plan made otherwise
	field    *field    // nil for a plan made otherwise
	made     []portion // of a plan made otherwise
	used     []span    // by burner of its levels
	left     int       // plants left out
	plants   int
	gain     float64 // weeks of flower, all plants together
	heat     float64
	pots     float64
	worse    float64 // what stretched days take off the worth of plants
	light    float64
	hands    float64
	ofLimits []float64 // what it takes of every limit
}

// money is what a plan costs.
func (f *found) money() float64 { return f.heat + f.pots + f.light + f.hands }

// costOf is the money of a plan, and what stretched days take off, less the worth of its flowers.
func (p *prover) costOf(f *found) float64 {
	return f.money() + f.worse - p.weight*f.gain + float64(f.left)*p.leaving(p.maker, p.weight)
}

// scale is what a gap is a share of.
func (p *prover) scale(f *found) float64 { return f.money() + p.weight*math.Max(0, f.gain) }

func (p *prover) isNear(bound float64) bool { return p.isWithin(bound, Share) }

// isWithin reports whether the best plan is as near to a bound as a share of its scale.
func (p *prover) isWithin(bound, share float64) bool {
	return p.best != nil && p.costOf(p.best)-bound <= share*p.scale(p.best)
}

// isSpent reports whether it has solved as often as it may.
func (p *prover) isSpent() bool {
	if p.Relax == nil {
		return p.told.Solves-p.begun >= mostPlainSolves
	}
	return p.told.Solves-p.begun >= mostSolves
}

func (p *prover) tell() {
	if p.say != nil {
		p.told.Cost = math.Inf(1)
		if p.best != nil {
			p.told.Cost, p.told.Money = p.costOf(p.best), p.best.money()
			p.told.Weeks = p.best.gain / float64(max(p.best.plants+p.best.left, 1))
		}
		p.say(p.told)
	}
}

// newProver readies a proof. Fields are added when they are asked for.
func (m *maker) newProver(ctx context.Context, say func(Progress)) *prover {
	p := &prover{maker: m, counting: m.counting(), ctx: ctx, groups: m.groups(), say: say}
	for week := range m.weeks {
		p.spare += p.hired * p.limit[m.hoursRow(week)]
	}
	p.pool = []*prices{p.pricesOf(make([]float64, m.rowCount()))}
	return p
}

// field returns the field of some levels, gathering it when first asked for.
func (p *prover) field(at levels) *field {
	for _, f := range p.fields {
		if fmt.Sprint(f.at) == fmt.Sprint(at) {
			return f
		}
	}
	f := p.fieldOf(p.groups, at, float64(p.Fits))
	p.fields = append(p.fields, f)
	dear := 0.0
	for _, b := range f.burners {
		dear += b.cost(span{0, int(p.Span.Days())})
	}
	for _, all := range f.choices {
		for _, c := range all {
			dear = math.Max(dear, c.money+c.warm+c.worse)
		}
	}
	p.spare = math.Max(p.spare, dear*2+1)
	return f
}

// at sets the weight and forgets what was best at another.
func (p *prover) at(weight float64, name string) {
	p.weight, p.best, p.leaves, p.begun = weight, nil, nil, p.told.Solves
	p.told.Plan, p.told.Bound = name, math.Inf(-1)
}

// consider keeps a plan that is better than the best so far.
func (p *prover) consider(f *found) {
	if f != nil && (p.best == nil || p.costOf(f) < p.costOf(p.best)) {
		p.best = f
	}
}

// close solves one setting in whole plants.
func (p *prover) close(n *node) error {
	s := p.state(p.counting, p.groups, n.f, n.may, p.weight, n.burning)
	limits := solve.Limits{Nodes: mostBranches}
	if p.Relax == nil {
		limits.Nodes = mostPlainBranches
	}
	if p.best != nil {
		limits.Apart = Share / 4 * p.scale(p.best)
	}
	answer, err := p.Solver(p.ctx, &s.Programme, limits, nil)
	if err != nil {
		return err
	}
	p.told.Solves++
	if answer.Bound > n.bound {
		n.bound, n.by = answer.Bound, -1
	}
	if answer.Values != nil {
		p.consider(p.foundIn(n.f, s, answer.Values))
	}
	return nil
}

// foundIn reads a plan out of the values of a programme.
func (p *prover) foundIn(f *field, s *stated, values []float64) *found {
	counts, left := make([][]int, len(f.choices)), 0
	for g, all := range f.choices {
		counts[g] = make([]int, len(all))
	}
	for i, c := range s.columns {
		n := int(math.Round(values[i]))
		switch {
		case c.group >= 0 && c.choice >= 0:
			counts[c.group][c.choice] = n
		case c.group >= 0:
			left += n
		}
	}
	return p.sumUp(f, counts, left)
}

// sumUp reckons what a plan comes to.
func (p *prover) sumUp(f *field, counts [][]int, left int) *found {
	sum := &found{at: f.at, field: f, counts: counts, left: left, ofLimits: make([]float64, p.rowCount())}
	for range f.burners {
		sum.used = append(sum.used, span{never, 0})
	}
	for g, all := range f.choices {
		for i := range all {
			sum.add(&all[i], counts[g][i])
		}
	}
	return p.bill(f, sum)
}

// add counts so many plants of a choice.
func (f *found) add(c *choice, n int) {
	if n == 0 {
		return
	}
	f.plants += n
	f.gain += float64(n) * c.gain
	f.pots += float64(n) * c.money
	f.heat += float64(n) * c.warm
	f.worse += float64(n) * c.worse
	for _, list := range [][]take{c.takes, c.hours} {
		for _, t := range list {
			f.ofLimits[t.row] += float64(n) * t.amount
		}
	}
	for i, used := range c.use {
		if used.from != never {
			f.used[i] = span{min(f.used[i].from, used.from), max(f.used[i].to, used.to)}
		}
	}
}

// bill adds what is paid for all plants together: heat, lamps, hired hands.
func (p *prover) bill(f *field, sum *found) *found {
	for i, used := range sum.used {
		if b := f.burners[i]; b.lamps {
			sum.light += b.cost(used)
		} else {
			sum.heat += b.cost(used)
		}
	}
	for row, used := range sum.ofLimits {
		if row >= p.hoursRow(0) {
			sum.hands += p.hired * math.Max(0, used-p.limit[row])
		}
	}
	return sum
}

// weigh reckons what an assignment made otherwise comes to.
func (p *prover) weigh(at levels, a assignment) *found {
	f := p.field(at)
	sum := &found{at: at, made: a.portions, ofLimits: make([]float64, p.rowCount())}
	for range f.burners {
		sum.used = append(sum.used, span{never, 0})
	}
	for _, of := range a.portions {
		c := p.choiceOf(of.batch, of.outcome, f.burners, float64(p.Fits))
		sum.add(&c, of.count)
	}
	for _, n := range a.left {
		sum.left += n
	}
	return p.bill(f, sum)
}
