package prove

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/season"
)

// twoHouses is the crowded brief with a second heated house, half as long, after the first.
func twoHouses(t testing.TB) season.Brief {
	b := crowded(t)
	second := b.Given.Places[2]
	second.Name, second.Room = "small glass", 4
	b.Given.Places = slices.Insert(slices.Clone(b.Given.Places), 3, second)
	return b
}

// TestTwoHousesAreNear holds every proof of a garden with two heated houses to one in fifty
// of what a plan costs and gains, and adds it up again.
func TestTwoHousesAreNear(t *testing.T) {
	if testing.Short() {
		t.Skip("left out: takes some seconds")
	}
	r := proved(t, twoHouses(t))
	for _, p := range r.Season.Early {
		if p.Proof.Gap > 0.02 {
			t.Errorf("%.2f weeks for %.2f: a gap of %.4f", p.GainWeeks, p.TotalCost, p.Proof.Gap)
		}
	}
	c, err := r.Certificate(season.AsEarly)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d leaves", len(c.Leaves))
	if err := c.Check(); err != nil {
		t.Error(err)
	}
	one := r.proofs[season.AsEarly]
	if cost := r.prover.costAt(one); c.Bound > cost || one.bound-c.Bound > 1e-6*math.Abs(one.bound) {
		t.Errorf("it adds up to a bound of %v, where the proof has %v and the plan costs %v", c.Bound, one.bound, cost)
	}
}

// TestTwoHousesAgainstEveryTrial tries all ways of two plants by all levels of two small houses
// that each hold one, and holds the proved plan to the cheapest.
func TestTwoHousesAgainstEveryTrial(t *testing.T) {
	b := twoHouses(t)
	b.Given.Today = civil.MustOn(2027, time.March, 22)
	b.Given.Stock = b.Given.Stock[:2]
	for i := range b.Given.Stock {
		b.Given.Stock[i].Count, b.Given.Stock[i].Plant = 1, 1
	}
	b.Given.Places[1].Room, b.Given.Places[1].Lit, b.Given.Places[2].Room, b.Given.Places[3].Room = 0.03, 0, 0.06, 0.06
	r := proved(t, b)
	p, one := r.prover, r.proofs[season.AsEarly]
	p.weight = one.weight
	least := math.Inf(1)
	for _, root := range p.allRoots() {
		least = math.Min(least, p.tryPairs(root.sub))
	}
	if one.bound > least+1e-6 || p.costOf(one.best) < one.bound-1e-6 || p.costOf(one.steady) > least+TargetGap*p.scale(one.best) {
		t.Errorf("a cost of %v (%v at one level) and a bound of %v; the best of all trials costs %v", p.costOf(one.best), p.costOf(one.steady), one.bound, least)
	}
}

// tryPairs tries every way of two plants, one of each of two groups.
func (p *prover) tryPairs(f *subproblem) float64 {
	least, step := math.Inf(1), slices.Repeat([]int{season.Never}, len(p.problem.columns.HeaterKeys))
	for i := range f.choices[0] {
		for j := range f.choices[1] {
			counts := [][]int{make([]int, len(f.choices[0])), make([]int, len(f.choices[1]))}
			counts[0][i], counts[1][j] = 1, 1
			if one := p.total(f, step, counts, 0); p.fits(one) {
				least = math.Min(least, p.costOf(one))
			}
		}
	}
	return least
}

// TestSweepIsTheLeastOfAllDays holds a sweep over two houses to the least of the bounds of every
// single setting of theirs, by random prices and dual prices of heaters.
func TestSweepIsTheLeastOfAllDays(t *testing.T) {
	b := twoHouses(t)
	b.Given.Today = civil.MustOn(2027, time.March, 29)
	b.Given.Stock = b.Given.Stock[:2]
	m, err := season.NewPlanner(&b)
	if err != nil {
		t.Fatal(err)
	}
	p, chance := newProver(newProblem(t.Context(), m, nil)), rand.New(rand.NewPCG(3, 4))
	n := p.root(p.subproblem(season.Holds{season.SteadyAt(0), season.SteadyAt(0), season.SteadyAt(1), season.SteadyAt(2), season.SteadyAt(0)}))
	for i := range 12 {
		p.setWeight(float64(1+i), "")
		x := p.chanced(chance)
		swept := p.boundOf(n, x)
		for range 400 {
			if one := p.singleBound(p.single(n, chance), x); swept > one+1e-9 {
				t.Fatalf("a sweep finds %v, where a setting has %v", swept, one)
			}
		}
		_, one, _, _ := p.minimiserBy(n, x)
		if found := p.singleBound(one, x); math.Abs(found-swept) > 1e-9*math.Max(1, math.Abs(swept)) {
			t.Errorf("a sweep finds %v, where the setting it names has %v", swept, found)
		}
	}
}

// singleBound adds up the bound of one setting of the houses, group by group.
func (p *prover) singleBound(n *node, x *duals) float64 {
	total := x.constant
	for i, b := range n.sub.heaters {
		if total += b.Cost(n.shortest[i], season.Never); x.heaterDuals(i) != nil {
			total += x.heaters[i].leastCost(n, i)
		}
	}
	for g, all := range n.sub.choices {
		least := p.problem.limits.leftOutCost(p.weight)
		for _, c := range all {
			if n.allows(c) {
				least = math.Min(least, x.reducedCost(g, c, p.weight))
			}
		}
		total += float64(p.problem.groups[g].Want) * least
	}
	return total
}

// chanced are prices and dual prices of heaters at random.
func (p *prover) chanced(chance *rand.Rand) *duals {
	by := make([]float64, p.problem.planner.RowCount())
	for row := range by {
		if chance.IntN(4) == 0 {
			by[row] = chance.ExpFloat64() * 3
		}
	}
	x := p.newDuals(by)
	x.heaters = make([]*heaterDuals, len(p.problem.columns.HeaterKeys))
	for i, of := range p.problem.columns.HeaterKeys {
		if !of.Lamps {
			continue
		}
		d := p.newHeaterDuals(of)
		for week := range p.problem.planner.Weeks {
			d.room[week] = chance.ExpFloat64()
			d.total[week+1] += d.room[week] * float64(p.problem.planner.Given.Places[of.Place].Lit)
		}
		for g, group := range p.problem.groups {
			for week := range p.problem.planner.Weeks {
				pay := chance.ExpFloat64() / 50
				d.upTo[g][week+1] += pay
				d.total[week+1] += pay * float64(group.Want)
			}
		}
		d.cumulate()
		x.heaters[i] = d
	}
	return x
}

// single is a setting of a node at random.
func (p *prover) single(n *node, chance *rand.Rand) *node {
	r := dayRanges{slices.Clone(n.on), slices.Clone(n.off), slices.Clone(n.step)}
	for _, days := range r {
		for i, of := range days {
			at := of[0] + chance.IntN(of[1]-of[0]+1)
			days[i] = [2]int{at, at}
		}
	}
	return p.newNode(n.sub, r)
}
