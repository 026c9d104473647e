package highs

import (
	"context"
	"math"
	"math/rand/v2"
	"reflect"
	"runtime"
	"testing"
	"time"

	"eyeup/solve"
)

// hard is a season that takes far longer to prove than any test.
func hard() *solve.Programme { return garden(1, 40, 23) }

func TestCancelledReturnsTheBestSoFar(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	began := time.Time{}
	limits := solve.Limits{Progress: func(g *solve.Progress) {
		if solve.GapOf(g.Objective, g.Bound) < 0.1 && began.IsZero() {
			began = time.Now()
			cancel()
		}
	}}
	p := hard()
	a := solved(t, ctx, p, limits, nil)
	if a.State != solve.Stopped || a.Values == nil || !(a.Bound <= a.Objective) || !(a.Gap > 0 && a.Gap < 0.1) {
		t.Errorf("%v, cost %v, bound %v, gap %v", a.State, a.Objective, a.Bound, a.Gap)
	}
	holds(t, 0, p, a)
	if took := time.Since(began); took > time.Minute {
		t.Errorf("stopping took %v", took) // a step of the solver; never more than seconds
	}
}

func TestCancelledBeforehandReturnsTheStart(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	a := solved(t, ctx, workshop(), solve.Limits{}, []float64{1, 2})
	if a.State != solve.Stopped || a.Objective != -130 || !reflect.DeepEqual(a.Values, []float64{1, 2}) {
		t.Errorf("%+v, want the start", a)
	}
	if a := solved(t, ctx, workshop(), solve.Limits{}, []float64{100, 2}); a.Values != nil || !math.IsInf(a.Objective, 1) {
		t.Errorf("%+v, want nothing, since the start breaks the programme", a)
	}
}

func TestHeldIsSolvedAgainAfterStopping(t *testing.T) {
	p := garden(3, 30, 18)
	h := held(t, p)
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	stop := solve.Limits{Progress: func(g *solve.Progress) {
		cancel()
		for !h.g.hurried.Load() { // until the guest's clock has jumped
			runtime.Gosched()
		}
	}}
	if a, err := h.Solve(ctx, stop, nil); err != nil || a.State != solve.Stopped {
		t.Fatalf("stopped: %v, %v", a.State, err)
	}
	limits := solve.Limits{Share: 0.03}
	a, err := h.Solve(context.Background(), limits, nil)
	want := solved(t, context.Background(), p, limits, nil)
	if err != nil || a.State != solve.Proved || a.Objective < want.Bound || want.Objective < a.Bound {
		t.Errorf("held %v %v, afresh %v, %v", a.State, a.Objective, want.Objective, err)
	}
	r, err := h.Relax(context.Background(), solve.Limits{})
	if err != nil || r.State != solve.Proved || r.Objective > a.Objective {
		t.Errorf("relaxed %v %v, %v", r.State, r.Objective, err)
	}
}

func TestStopsByCount(t *testing.T) {
	p := garden(2, 6, 8)
	a := solved(t, context.Background(), p, solve.Limits{Nodes: 1}, nil)
	if a.State != solve.Stopped || a.Nodes > 2 || a.Values == nil {
		t.Errorf("one branch: %v after %d", a.State, a.Nodes)
	}
	b := solved(t, context.Background(), p, solve.Limits{Iterations: 30}, nil)
	if b.State != solve.Stopped || b.Iterations < 30 || b.Iterations > 1000 {
		t.Errorf("30 steps: %v after %d", b.State, b.Iterations)
	}
}

func TestStartIsUsed(t *testing.T) {
	p := hard()
	first, err := solve.Plain(context.Background(), p, solve.Limits{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	met := math.Inf(1)
	limits := solve.Limits{Share: 0.01, Progress: func(g *solve.Progress) { met = math.Min(met, g.Objective) }}
	a := solved(t, context.Background(), p, limits, first.Values)
	if a.Objective > first.Objective || met > first.Objective+1e-6 {
		t.Errorf("cost %v, at first %v, by a start of %v", a.Objective, met, first.Objective)
	}
	if a.State != solve.Proved || a.Gap > 0.01 {
		t.Errorf("%v with a gap of %v", a.State, a.Gap)
	}
}

// TestSameTwice holds that two runs give the same answer by the same way, to the last bit.
func TestSameTwice(t *testing.T) {
	run := func() (a solve.Answer, told []solve.Progress) {
		limits := solve.Limits{Share: 0.02, Progress: func(g *solve.Progress) { told = append(told, *g) }}
		return solved(t, context.Background(), garden(3, 30, 18), limits, nil), told
	}
	a, atold := run()
	b, btold := run()
	if !reflect.DeepEqual(a, b) || !reflect.DeepEqual(atold, btold) {
		t.Errorf("%v then %v; %d then %d reports", a.Objective, b.Objective, len(atold), len(btold))
	}
	for i := 1; i < len(atold); i++ {
		if atold[i].Objective > atold[i-1].Objective || atold[i].Bound < atold[i-1].Bound {
			t.Errorf("report %d is worse than the one before: %v, %v", i, atold[i-1], atold[i])
		}
	}
	if len(atold) == 0 {
		t.Error("no progress is told")
	}
}

// TestTwoAtOnce holds that solves side by side do not disturb one another.
func TestTwoAtOnce(t *testing.T) {
	e, p := engine(t), garden(3, 30, 18)
	limits := solve.Limits{Share: 0.03}
	want := solved(t, context.Background(), p, limits, nil)
	answers := make(chan solve.Answer, 2)
	for range cap(answers) {
		go func() {
			a, err := e.Solve(context.Background(), p, limits, nil)
			if err != nil {
				t.Error(err)
			}
			answers <- a
		}()
	}
	for range cap(answers) {
		if a := <-answers; !reflect.DeepEqual(a, want) {
			t.Errorf("side by side %v, alone %v", a.Objective, want.Objective)
		}
	}
}

// TestPricesProve holds that the prices of the relaxation give its cost as a bound, reckoned
// by Bound alone, for random programmes and after changes to what is held.
func TestPricesProve(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 2))
	for i := range 4 {
		p := garden(uint64(i), 8, 12)
		h := held(t, p)
		proves(t, i, h)
		costs := make([]float64, len(p.Columns))
		for j, c := range p.Columns {
			costs[j] = c.Cost * (0.8 + 0.4*r.Float64())
		}
		if err := h.Costs(costs, 5); err != nil {
			t.Fatal(err)
		}
		proves(t, i, h)
		if err := h.Column(3, 1, 2); err != nil {
			t.Fatal(err)
		}
		if err := h.Row(len(p.Rows)-1, math.Inf(-1), 4); err != nil {
			t.Fatal(err)
		}
		proves(t, i, h)
		if i < 1 {
			agrees(t, i, h)
		}
	}
}

// agrees holds the whole-number answer of what is held to that of the same programme afresh:
// neither costs less than the other's bound.
func agrees(t *testing.T, i int, h *Held) {
	t.Helper()
	limits := solve.Limits{Share: 0.03, Nodes: 20}
	afresh := solved(t, context.Background(), h.Programme(), limits, nil)
	a, err := h.Solve(context.Background(), limits, nil)
	if err != nil || a.Values == nil || afresh.Values == nil || a.Objective < afresh.Bound-1e-6 || afresh.Objective < a.Bound-1e-6 {
		t.Errorf("season %d: held %v %v, afresh %v %v, %v", i, a.State, a.Objective, afresh.State, afresh.Objective, err)
	}
}

func proves(t *testing.T, i int, h *Held) {
	t.Helper()
	r, err := h.Relax(context.Background(), solve.Limits{})
	if err != nil || r.State != solve.Proved {
		t.Fatalf("season %d: %v, %v", i, r.State, err)
	}
	if r.Bound > r.Objective+1e-6 || r.Bound < r.Objective-1e-6*math.Abs(r.Objective) {
		t.Errorf("season %d: bound %v by the prices of %v", i, r.Bound, r.Objective)
	}
}

// TestTooLittleMemory holds that a programme too large for the memory is told as such, or
// stopped with an answer that holds, and that nothing panics.
func TestTooLittleMemory(t *testing.T) {
	program, err := unpack(packed)
	if err != nil {
		t.Fatal(err)
	}
	told, cut := 0, 0
	for _, mebibytes := range []uint32{21, 22, 30} {
		e, err := open(context.Background(), cacheFolder(), program, mebibytes<<4)
		if err != nil {
			t.Fatal(err)
		}
		p := garden(1, map[bool]int{true: 400, false: 60}[mebibytes == 21], 23)
		a, err := e.Solve(context.Background(), p, solve.Limits{Share: 0.02, Nodes: 1}, nil)
		switch {
		case err != nil:
			told++
		case a.State == solve.Stopped:
			cut++
		}
		if a.Values != nil {
			holds(t, int(mebibytes), p, a)
		}
		if err := e.Close(); err != nil {
			t.Error(err)
		}
	}
	if told == 0 || cut == 0 {
		t.Errorf("%d told, %d stopped with an answer: try other sizes", told, cut)
	}
}

// TestSolvesAgainBesideWholes holds that what need not be whole is found anew when the whole
// columns are fixed, and that the programme is as before afterwards.
func TestSolvesAgainBesideWholes(t *testing.T) {
	p := workshop()
	idle := p.Column(solve.Column{Name: "idle carpentry", Cost: 1, High: math.Inf(1)})
	p.Rows[0].Low = 40
	p.Rows[0].Terms = append(p.Rows[0].Terms, solve.Term{Column: idle, Factor: 1})
	h := held(t, p)
	got, err := h.beside(context.Background(), []float64{10, 5, 1})
	if err != nil || len(got) != 3 || got[0] != 10 || got[1] != 5 || math.Abs(got[2]-20) > 1e-9 {
		t.Errorf("%v, %v; want 20 hours idle beside 10 chairs and 5 tables", got, err)
	}
	if got, err := h.beside(context.Background(), []float64{100, 5, 1}); err != nil || got != nil {
		t.Errorf("%v, %v; want nothing beside 100 chairs", got, err)
	}
	a, err := h.Solve(context.Background(), solve.Limits{}, nil)
	if err != nil || a.State != solve.Proved || math.Abs(a.Objective+1100) > 1e-9 {
		t.Errorf("afterwards %+v, %v", a, err)
	}
}
