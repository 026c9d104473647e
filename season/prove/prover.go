package prove

import (
	"context"
	"fmt"
	"math"
	"sync"
	"sync/atomic"

	"eyeup/season"
)

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

// problem is what all provers of one season share.
type problem struct {
	ctx     context.Context
	planner *season.Planner
	limits  *limits
	columns *season.Columns
	groups  []*season.Group // with how many plants are wanted of each
	say     func(Progress)  // may be called by two at once; nil where nobody listens
	solves  *atomic.Int64   // programmes solved so far, by all provers
}

// prover looks for the best plan at one weight of a week of flower after another. What is here
// is its own.
type prover struct {
	problem     *problem
	heaterCache []*season.Heater
	subproblems map[string]*subproblem
	pool        []*duals
	solvedDuals []int      // of the pool, those that were solved for, not mixed
	active      []int      // of the pool, those that are tried at this weight
	paired      bool       // whether a second prover works beside it now
	lagrangian  lagrangian // the last one, whose room is used again
	nodes       int        // made so far, for their order

	weight    float64         // money for a week of one plant in flower
	incumbent *solution       // the best plan at that weight
	solved    map[string]bool // settings solved at this weight
	leaves    []*node         // of the last tree
	progress  Progress
	spent     int // programmes solved since the last search began
}

// costOf is the money of a plan, and what stretched days take off, less the worth of its flowers.
func (p *prover) costOf(f *solution) float64 {
	return f.money() + f.stretchCost - p.weight*f.gain + float64(f.left)*p.problem.limits.leftOutCost(p.weight)
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
	if p.problem.planner.Ports.Relax == nil {
		return p.spent >= mostPlainSolves
	}
	return p.spent >= mostSolves
}

// count counts a programme that was solved.
func (p *prover) count() {
	p.spent++
	p.problem.solves.Add(1)
}

func (p *prover) reportProgress() {
	if p.problem.say != nil {
		p.progress.Solves, p.progress.Cost = int(p.problem.solves.Load()), math.Inf(1)
		if p.incumbent != nil {
			p.progress.Cost, p.progress.Money = p.costOf(p.incumbent), p.incumbent.money()
			p.progress.Weeks = p.incumbent.gain / float64(max(p.incumbent.plants+p.incumbent.left, 1))
		}
		p.problem.say(p.progress)
	}
}

// newProblem prepares the proof of a season.
func newProblem(ctx context.Context, m *season.Planner, say func(Progress)) *problem {
	b := &problem{ctx: ctx, planner: m, limits: newLimits(m), groups: m.Groups(), say: inTurn(say), solves: &atomic.Int64{}}
	b.columns = season.NewColumns(m, b.groups)
	b.limits.spare = b.dearestPlant()
	return b
}

// newProver is a prover that knows nothing yet but prices of nothing.
func newProver(b *problem) *prover {
	p := bareProver(b)
	p.solvedDuals = []int{0}
	p.pool = []*duals{p.newDuals(make([]float64, b.planner.RowCount()))}
	return p
}

func bareProver(b *problem) *prover {
	return &prover{problem: b, subproblems: map[string]*subproblem{}}
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

// dearestPlant is more than raising a plant can ever cost: everything heated and lit for the
// whole span at the highest levels, all hours hired, and twice the pots.
func (b *problem) dearestPlant() float64 {
	dear, m := 1.0, b.planner
	for week := range m.Weeks {
		dear += b.limits.hired * b.limits.limit[m.HoursRow(week)]
	}
	for _, of := range b.columns.HeaterKeys {
		dear += 2 * b.columns.Heater(of, season.SteadyAt(max(0, len(m.Given.Places[of.Place].Levels)-1))).Cost(season.Days{From: 0, To: int(m.Given.Span.Days())}, season.Never)
	}
	pots := 0.0
	for _, g := range b.groups {
		pots = math.Max(pots, b.columns.DearestPots(g))
	}
	return dear + 2*pots
}

// heaters lists the heaters while the places are held in some ways. Each is made once.
func (p *prover) heaters(at season.Holds) []*season.Heater {
	var all []*season.Heater
	for _, of := range p.problem.columns.HeaterKeys {
		all = append(all, p.heater(of, at[of.Place]))
	}
	return all
}

func (p *prover) heater(of season.HeaterKey, h season.Hold) *season.Heater {
	for _, known := range p.heaterCache {
		if known.HeaterKey == of && known.Hold == h {
			return known
		}
	}
	p.heaterCache = append(p.heaterCache, p.problem.columns.Heater(of, h))
	return p.heaterCache[len(p.heaterCache)-1]
}

// subproblem returns the field of some ways to hold the places, gathering it when first asked for.
func (p *prover) subproblem(at season.Holds) *subproblem {
	key := at.Key()
	if p.subproblems[key] == nil {
		p.subproblems[key] = p.newSubproblem(at, float64(p.problem.planner.Asked.Fits))
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
