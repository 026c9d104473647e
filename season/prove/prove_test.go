package prove

import (
	"bytes"
	"context"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/highs"
	"eyeup/season"
	"eyeup/solve"
	"eyeup/stock"
)

// engine is the full solver, its compiled code kept between runs of the tests.
var engine = sync.OnceValues(func() (*highs.Engine, error) {
	folder := filepath.Join(os.TempDir(), "eyeup-solver")
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return nil, err
	}
	return highs.Open(context.Background(), folder)
})

// proving gives a brief the full solver.
func proving(t testing.TB, b season.Brief) season.Brief {
	t.Helper()
	e, err := engine()
	if err != nil {
		t.Fatal(err)
	}
	b.Ports.Solver, b.Ports.Relax = e.Solve, e.Relax
	return b
}

func proved(t testing.TB, b season.Brief) *Result {
	t.Helper()
	r, err := Prove(context.Background(), proving(t, b), nil)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

var crowd struct {
	sync.Once
	*Result
}

// provedCrowd is the crowded brief, proved once for all tests.
func provedCrowd(t testing.TB) *Result {
	t.Helper()
	crowd.Do(func() { crowd.Result = proved(t, crowded(t)) })
	if crowd.Result == nil {
		t.Fatal("the crowded brief can't be proved")
	}
	return crowd.Result
}

// TestProofsAreNear holds every plan that was free to be the best to the gap that is aimed
// at, the money to the gap, and no plan on the price of early to be beaten by another.
func TestProofsAreNear(t *testing.T) {
	r := provedCrowd(t)
	for _, p := range r.Season.Plans {
		if p.Proof == nil {
			t.Fatalf("%s has no proof", p.Name)
		}
		if p.Name != season.Usual && p.Proof.Gap > 0.005 {
			t.Errorf("%s: a gap of %.4f", p.Name, p.Proof.Gap)
		}
		if off := p.Proof.Cost - p.Proof.Bound - p.Proof.Money; math.Abs(off) > 0.011 {
			t.Errorf("%s: cost %v less bound %v is not the %v told", p.Name, p.Proof.Cost, p.Proof.Bound, p.Proof.Money)
		}
	}
	if n := len(r.Season.Early); n < 5 || n > mostPoints {
		t.Errorf("%d plans on the price of early, want 5 to %d", n, mostPoints)
	}
	for i, a := range r.Season.Early {
		if a.Proof.Gap > 0.005 {
			t.Errorf("point %d: a gap of %.4f", i, a.Proof.Gap)
		}
		for j, b := range r.Season.Early {
			if i != j && b.TotalCost <= a.TotalCost && b.GainWeeks >= a.GainWeeks {
				t.Errorf("point %d (%.2f, %.2f weeks) is beaten by %d (%.2f, %.2f weeks)", i, a.TotalCost, a.GainWeeks, j, b.TotalCost, b.GainWeeks)
			}
		}
	}
}

// TestMovingABatchNeverBeatsAProof starts any portion of a proved plan in any other week and
// by any other way for which there is room: no better than the proof allows.
func TestMovingABatchNeverBeatsAProof(t *testing.T) {
	r := provedCrowd(t)
	p, moved := r.prover, 0
	for name, one := range r.proofs {
		if name == season.Usual {
			continue
		}
		p.weight = one.weight
		for g, counts := range one.best.counts {
			for i, n := range counts {
				for j := range counts {
					if n == 0 || i == j {
						continue
					}
					changed := slices.Clone(one.best.counts)
					changed[g] = slices.Clone(counts)
					changed[g][i], changed[g][j] = 0, counts[j]+n
					other := p.total(one.best.sub, one.best.stepDay, changed, one.best.left)
					if !p.fits(other) {
						continue
					}
					moved++
					if name == season.NoHeat && other.heat > 0 {
						continue
					}
					if p.costOf(other) < one.bound-1e-6 {
						t.Errorf("%s: group %d moved from %d to %d costs %.2f, below the bound of %.2f", name, g, i, j, p.costOf(other), one.bound)
					}
				}
			}
		}
	}
	if moved < 10 {
		t.Errorf("only %d moves had room", moved)
	}
}

// fits reports whether a plan keeps to the benches.
func (p *prover) fits(f *solution) bool {
	for row, used := range f.taken[:p.problem.planner.HoursRow(0)] {
		if used > p.problem.limits.limit[row]+1e-9 {
			return false
		}
	}
	return true
}

// TestProofAgainstEveryTrial tries every way of raising three plants at every level, and
// holds the proved plans to the cheapest.
func TestProofAgainstEveryTrial(t *testing.T) {
	b := crowded(t)
	b.Given.Today = civil.MustOn(2027, time.March, 22)
	b.Given.Stock = b.Given.Stock[:2]
	b.Given.Stock[0].Count, b.Given.Stock[0].Plant, b.Given.Stock[1].Count, b.Given.Stock[1].Plant = 2, 2, 1, 1
	b.Given.Places[1].Room, b.Given.Places[1].Lit, b.Given.Places[2].Room = 0.03, 0.02, 0.06
	b.Given.HoursPerWeek = 0.02
	r := proved(t, b)
	p := r.prover
	for name, one := range r.proofs {
		if name == season.Usual {
			continue
		}
		p.weight = one.weight
		least := math.Inf(1)
		anyDays := func(*solution) bool { return true }
		for _, root := range p.allRoots() {
			if name == season.NoHeat && slices.Max(root.at.Levels()) > 0 {
				continue
			}
			least = math.Min(least, p.tryAll(root.at, season.Never, anyDays))
		}
		for _, h := range p.problem.planner.AllHolds(2) {
			for _, day := range p.problem.columns.StepDays {
				if h.Steps() && name != season.NoHeat {
					at := season.Steady(make(season.Levels, len(p.problem.planner.Given.Places)))
					at[2] = h
					least = math.Min(least, p.tryAll(at, day, func(f *solution) bool { return p.isNearDays(f, one.steady) }))
				}
			}
		}
		if cost := p.costOf(one.best); cost < least-1e-6 || one.bound > least+1e-6 {
			t.Errorf("%s: a cost of %v and a bound of %v; the best of all trials costs %v", name, cost, one.bound, least)
		}
	}
}

// isNearDays reports whether all that is on in a plan with a step burns on days near those of
// another, and the lamps on the same.
func (p *prover) isNearDays(f, other *solution) bool {
	for i, of := range p.problem.columns.HeaterKeys {
		a, b := f.used[i], other.used[i]
		if of.Lamps && a != b {
			return false
		}
		if !of.Lamps && (a.From == season.Never || max(a.From-b.From, b.From-a.From, a.To-b.To, b.To-a.To) > nearDays) {
			return false
		}
	}
	return true
}

// tryAll tries every way for one group of two plants and one of one, with the step of the
// glass, if it has one, on a day.
func (p *prover) tryAll(at season.Holds, day int, serves func(*solution) bool) float64 {
	every := &subproblem{at: at, heaters: p.heaters(at)}
	step := make([]int, len(p.problem.columns.HeaterKeys))
	for i, of := range p.problem.columns.HeaterKeys {
		if step[i] = season.Never; of.Place == 2 {
			step[i] = day
		}
	}
	for _, all := range p.subproblem(at).choices { // package season holds that what it leaves out is no better
		every.choices = append(every.choices, slices.DeleteFunc(slices.Clone(all), func(c *season.Choice) bool {
			at := slices.Index(p.problem.columns.StepDays, day)
			return c.Place >= 0 && (at < c.Steps[0] || at > c.Steps[1])
		}))
	}
	two, single := 0, 1
	if p.problem.groups[0].Want == 1 {
		two, single = 1, 0
	}
	least := math.Inf(1)
	for i := range every.choices[two] {
		for j := i; j < len(every.choices[two]); j++ {
			for k := range every.choices[single] {
				counts := [][]int{make([]int, len(every.choices[0])), make([]int, len(every.choices[1]))}
				counts[two][i]++
				counts[two][j]++
				counts[single][k]++
				if one := p.total(every, step, counts, 0); p.fits(one) && serves(one) {
					least = math.Min(least, p.costOf(one))
				}
			}
		}
	}
	return least
}

// TestAnyPricesBound holds the bound of random prices below the cost of proved plans.
func TestAnyPricesBound(t *testing.T) {
	r := provedCrowd(t)
	p, chance := r.prover, rand.New(rand.NewPCG(1, 2))
	for range 200 {
		by := make([]float64, p.problem.planner.RowCount())
		for row := range by {
			if chance.IntN(4) == 0 {
				by[row] = chance.ExpFloat64() * 5
			}
		}
		one := r.proofs[season.AsEarly]
		p.weight = one.weight
		if bound := p.boundOf(p.root(one.best.sub), p.newDuals(by)); bound > p.costOf(one.best)+1e-6 {
			t.Fatalf("prices give a bound of %v, above a plan that costs %v", bound, p.costOf(one.best))
		}
	}
}

// TestPlainProofHolds proves without the full solver: a wider gap, and none that is not true.
func TestPlainProofHolds(t *testing.T) {
	b, full := crowded(t), provedCrowd(t)
	b.Ports.Solver = solve.Plain
	plain, err := Prove(context.Background(), b, nil)
	if err != nil {
		t.Fatal(err)
	}
	for name, one := range full.proofs {
		other := plain.proofs[name]
		t.Logf("%s: full %.2f to %.2f, plain %.2f to %.2f", name, one.bound, full.prover.costAt(one), other.bound, plain.prover.costAt(other))
		if other.bound > full.prover.costAt(one)+1e-6 || one.bound > plain.prover.costAt(other)+1e-6 {
			t.Errorf("%s: a bound above a plan that was found", name)
		}
	}
}

// costAt is what a proved plan costs at its own weight.
func (p *prover) costAt(one *provedPlan) float64 {
	p.weight = one.weight
	return p.costOf(one.best)
}

// TestShuffledBriefIsTheSame works out the same brief with its stock in another order.
func TestShuffledBriefIsTheSame(t *testing.T) {
	b := crowded(t)
	told := func(r *Result) []byte {
		out, err := json.Marshal(struct {
			Plans []*season.Plan
			Early []season.EarlyPoint
		}{r.Season.Plans, r.Season.Early})
		if err != nil {
			t.Fatal(err)
		}
		return out
	}
	first := told(provedCrowd(t))
	slices.Reverse(b.Given.Stock)
	if !bytes.Equal(first, told(proved(t, b))) {
		t.Error("the same stock in another order makes other plans")
	}
}

// TestStoppedProofIsHonest stops before anything is solved: there are plans, with wide gaps.
func TestStoppedProofIsHonest(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	r, err := Prove(ctx, proving(t, crowded(t)), nil)
	if err != nil {
		t.Fatal(err)
	}
	full := provedCrowd(t)
	for name, one := range r.proofs {
		if one.bound > full.prover.costAt(full.proofs[name])+1e-6 {
			t.Errorf("%s: stopped with a bound of %v, above a plan that costs %v", name, one.bound, full.prover.costAt(full.proofs[name]))
		}
	}
}

// TestEveryPlantIsAccountedFor adds up the plants of the batches, and keeps to a decided start
// in every proved plan.
func TestEveryPlantIsAccountedFor(t *testing.T) {
	b := crowded(t)
	week := civil.MustOn(2027, time.April, 5)
	b.Asked.Held = map[string]civil.Date{"lot 1": week.AddDays(2)}
	b.Given.Stock = append(b.Given.Stock, stock.Holding{
		Code: "lot 3", Variety: stock.Variety{Name: "Blunt Lantern", Kind: "tomato"}, Form: stock.Seed, Count: 40, Plant: 17,
	})
	for _, p := range proved(t, b).Season.Plans {
		byCode := map[string]int{}
		for _, one := range p.Batches {
			byCode[one.Code] += one.Count
			if one.Code == "lot 1" && one.Container != "" && one.Starts[0].Week != week {
				t.Errorf("%s: lot 1 starts on %v, though %v is decided", p.Name, one.Starts[0].Week, week)
			}
		}
		for _, h := range b.Given.Stock {
			if byCode[h.Code] != h.Plant {
				t.Errorf("%s: %d of %s, not %d", p.Name, byCode[h.Code], h.Code, h.Plant)
			}
		}
	}
}
