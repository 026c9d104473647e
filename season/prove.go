package season

import (
	"context"
	"fmt"
	"math"
	"sync"
	"sync/atomic"

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
const TargetGap = 0.004

// How many programmes are solved for one plan before it is left as it is, with a full solver
// and by plain arithmetic, how many branches or rounds are looked into for one setting, and
// how often the settings are split.
const (
	mostBranchings                 = 900
	mostSolves, mostPlainSolves    = 120, 16
	mostWholeNodes, mostPlainNodes = 20, 1
)

// prover looks for the best plan at one weight of a week of flower after another.
type prover struct {
	*planner
	*limits
	ctx         context.Context
	groups      []*group
	open        []int       // places with a thermostat
	heaterKeys  []heaterKey // what may burn
	heaterCache []*heater
	ways        *waysCache
	subproblems map[string]*subproblem
	stepDays    []int // on which levels may step
	allSteps    bool  // whether all steps are asked for, and not only those of a plan
	pool        []*duals
	solvedDuals []int          // of the pool, those that were solved for, not blended
	active      []int          // of the pool, those that serve at this weight
	say         func(Progress) // may be called by two at once; nil where nobody listens
	solves      *atomic.Int64  // programmes solved so far, by a mate too
	paired      bool           // whether a mate works beside it now
	lagrangian  lagrangian     // the last one

	solved    map[string]bool // settings solved at this weight
	weight    float64         // money for a week of one plant in flower
	incumbent *solution       // at that weight
	leaves    []*node         // of the last tree
	nodes     int             // nodes, for their order
	progress  Progress
	spent     int // programmes solved since the last search began
}

// costOf is the money of a plan, and what stretched days take off, less the worth of its flowers.
func (p *prover) costOf(f *solution) float64 {
	return f.money() + f.stretchCost - p.weight*f.gain + float64(f.left)*p.leftOutCost(p.planner, p.weight)
}

// scale is what a gap is a share of.
func (p *prover) scale(f *solution) float64 { return f.money() + p.weight*math.Max(0, f.gain) }

func (p *prover) isGapClosed(bound float64) bool { return p.isWithin(bound, TargetGap) }

// isWithin reports whether the best plan is as near to a bound as a share of its scale.
func (p *prover) isWithin(bound, share float64) bool {
	return p.incumbent != nil && p.costOf(p.incumbent)-bound <= share*p.scale(p.incumbent)
}

// isSpent reports whether it has solved as often as it may.
func (p *prover) isSpent() bool {
	if p.Relax == nil {
		return p.spent >= mostPlainSolves
	}
	return p.spent >= mostSolves
}

// count counts a programme that was solved.
func (p *prover) count() {
	p.spent++
	p.solves.Add(1)
}

func (p *prover) reportProgress() {
	if p.say != nil {
		p.progress.Solves, p.progress.Cost = int(p.solves.Load()), math.Inf(1)
		if p.incumbent != nil {
			p.progress.Cost, p.progress.Money = p.costOf(p.incumbent), p.incumbent.money()
			p.progress.Weeks = p.incumbent.gain / float64(max(p.incumbent.plants+p.incumbent.left, 1))
		}
		p.say(p.progress)
	}
}

// newProver readies a proof. Fields are added when they are asked for.
func (m *planner) newProver(ctx context.Context, say func(Progress)) *prover {
	p := &prover{
		planner: m, limits: m.limits(), ctx: ctx, groups: m.groups(), say: inTurn(say), heaterKeys: m.heaterKeys(), stepDays: m.stepMondays(),
		ways: &waysCache{ways: map[waysKey]*placeWays{}}, subproblems: map[string]*subproblem{}, solves: &atomic.Int64{},
	}
	for i := range m.Places {
		if m.isOpen(i) {
			p.open = append(p.open, i)
		}
	}
	p.spare = p.dearestPlant()
	p.solvedDuals = []int{0}
	p.pool = []*duals{p.newDuals(make([]float64, m.rowCount()))}
	return p
}

// inTurn lets one speak after the other.
func inTurn(say func(Progress)) func(Progress) {
	if say == nil {
		return nil
	}
	var door sync.Mutex
	return func(now Progress) {
		door.Lock()
		defer door.Unlock()
		say(now)
	}
}

// dearestPlant is more than raising a plant can ever cost: all that burns for the whole span at
// the highest levels, all hours hired, and twice the pots.
func (p *prover) dearestPlant() float64 {
	dear := 1.0
	for week := range p.weeks {
		dear += p.hired * p.limit[p.hoursRow(week)]
	}
	for _, of := range p.heaterKeys {
		dear += 2 * p.heater(of, steadyAt(max(0, len(p.Places[of.place].Levels)-1))).cost(span{0, int(p.Span.Days())}, never)
	}
	pots := 0.0
	for _, g := range p.groups {
		for _, o := range p.options(g.batches[0], p.benchesOn(make(levels, len(p.Places)))) {
			pots = math.Max(pots, p.moneyFor(g.batches[0], o)+p.benchMoney(o)+p.Prices.Stretched.Times(float64(p.Span.Days())))
		}
	}
	return dear + 2*pots
}

// subproblem returns the field of some ways to hold the places, gathering it when first asked for.
func (p *prover) subproblem(at holds) *subproblem {
	key := at.key()
	if p.subproblems[key] == nil {
		p.subproblems[key] = p.newSubproblem(at, float64(p.Fits))
	}
	return p.subproblems[key]
}

// setWeight sets the weight and forgets what was best at another.
func (p *prover) setWeight(weight float64, name string) {
	p.weight, p.incumbent, p.leaves, p.spent = weight, nil, nil, 0
	p.solved = map[string]bool{}
	p.progress.Plan, p.progress.Bound = name, math.Inf(-1)
}

// consider keeps a plan that is better than the best so far.
func (p *prover) consider(f *solution) {
	if f != nil && (p.incumbent == nil || p.costOf(f) < p.costOf(p.incumbent)) {
		p.incumbent = f
	}
}
