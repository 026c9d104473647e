package solve

import (
	"context"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"
)

// shelf is a random small programme of the shape that Plain is for: choices that share units
// out among options, benches, and hours that may be hired. All columns but the hired hours
// are whole.
func shelf(r *rand.Rand) *Programme {
	inf := math.Inf(1)
	p := &Programme{}
	benches := make([][]Term, 2)
	var work []Term
	for range 2 {
		units := float64(1 + r.IntN(3))
		var choice []Term
		for range 3 {
			y := p.Column(Column{Cost: float64(r.IntN(41) - 30), High: units, Whole: true})
			choice = append(choice, Term{y, 1})
			work = append(work, Term{y, float64(1 + r.IntN(4))})
			b := r.IntN(2)
			benches[b] = append(benches[b], Term{y, float64(1+r.IntN(9)) / 4})
		}
		p.Row(Row{Low: units, High: units, Terms: choice})
	}
	for _, terms := range benches {
		p.Row(Row{Low: -inf, High: float64(2+r.IntN(14)) / 2, Terms: terms})
	}
	hired := p.Column(Column{Cost: float64(r.IntN(6)), High: inf})
	p.Row(Row{Low: -inf, High: float64(2 + r.IntN(8)), Terms: append(work, Term{hired, -1})})
	return p
}

// byTrial tries every way to fill the whole columns of a shelf, hires what hours it wants,
// and returns the least cost, +Inf if there is none.
func byTrial(p *Programme) float64 {
	values := make([]float64, len(p.Columns))
	last, best := len(values)-1, math.Inf(1)
	var fill func(j int)
	fill = func(j int) {
		if j == last {
			work := p.Rows[len(p.Rows)-1]
			values[last] = -work.High
			for _, t := range work.Terms[:last] {
				values[last] += t.Factor * values[t.Column]
			}
			values[last] = math.Max(0, values[last])
			if v, err := p.Check(values); err == nil && v.Holds(0) {
				best = math.Min(best, p.Cost(values))
			}
			return
		}
		for x := 0.0; x <= p.Columns[j].High; x++ {
			values[j] = x
			fill(j + 1)
		}
	}
	fill(0)
	return best
}

func TestPlainAgainstEveryTrial(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	exact, some, none := 0, 0, 0
	for i := range 60 {
		p := shelf(r)
		want := byTrial(p)
		a, err := Plain(context.Background(), p, Limits{Iterations: 300, Nodes: 1}, nil)
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case math.IsInf(want, 1):
			none++
			if a.Values != nil {
				t.Errorf("shelf %d: values %v where there are none", i, a.Values)
			}
			continue
		case a.State == Infeasible:
			t.Errorf("shelf %d: infeasible, but %v can be had", i, want)
		case !proven(t, p, a):
			t.Errorf("shelf %d: its prices do not give the bound %v", i, a.Bound)
		case a.Bound > want+1e-9:
			t.Errorf("shelf %d: bound %v above the least cost %v", i, a.Bound, want)
		case a.Objective < want-1e-9:
			t.Errorf("shelf %d: cost %v below the least %v", i, a.Objective, want)
		case a.State == Proved && a.Objective > want+1e-9:
			t.Errorf("shelf %d: %v called proved, the least is %v", i, a.Objective, want)
		}
		if some++; a.Objective < want+1e-9 {
			exact++
		}
	}
	if none == 0 || some < 30 || exact < some*9/10 {
		t.Errorf("the best was found for %d of %d, %d have none", exact, some, none)
	}
}

// proven reports whether an answer's bound is what its prices prove.
func proven(t *testing.T, p *Programme, a Answer) bool {
	t.Helper()
	drawn, possible := p.DrawnIn()
	bound, err := drawn.Bound(a.Prices)
	return possible && err == nil && bound >= a.Bound && bound <= a.Bound+Tolerance
}

func TestPlainSameTwice(t *testing.T) {
	p := shelf(rand.New(rand.NewPCG(5, 5)))
	run := func() (a Answer, told []Progress) {
		a, err := Plain(context.Background(), p, Limits{Progress: func(g *Progress) { told = append(told, *g) }}, nil)
		if err != nil {
			t.Fatal(err)
		}
		return a, told
	}
	a, atold := run()
	b, btold := run()
	if !reflect.DeepEqual(a, b) || !reflect.DeepEqual(atold, btold) || len(atold) == 0 {
		t.Errorf("%+v, then %+v; %d, then %d reports", a, b, len(atold), len(btold))
	}
}

func TestPlainStops(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	p := glass(true)
	a, err := Plain(ctx, p, Limits{}, []float64{1, 1})
	if err != nil || a.State != Stopped || a.Objective != -8 || !math.IsInf(a.Gap, 1) {
		t.Errorf("%+v, %v; want the start", a, err)
	}
	if a, err = Plain(ctx, p, Limits{}, []float64{100, 1}); err != nil || a.Values != nil {
		t.Errorf("%+v, %v; want nothing, since the start breaks the programme", a, err)
	}
	if a, err = Plain(context.Background(), p, Limits{}, nil); err != nil || a.Objective != -36 || a.Bound < -36.5 {
		t.Errorf("%+v, %v; want -36", a, err)
	}
	if _, err := Plain(context.Background(), p, Limits{Nodes: -1}, nil); err == nil {
		t.Error("limits below nothing are taken")
	}
}

func TestPlainTellsTheImpossible(t *testing.T) {
	inf := math.Inf(1)
	for _, p := range []*Programme{
		{Columns: []Column{{High: 3}}, Rows: []Row{{Low: 4, High: inf, Terms: []Term{{0, 1}}}}},
		{Columns: []Column{{Low: 0.25, High: 0.75, Whole: true}}},
		{Rows: []Row{{Low: 1, High: 1}}},
	} {
		if a, err := Plain(context.Background(), p, Limits{}, nil); err != nil || a.State != Infeasible {
			t.Errorf("%+v, %v; want infeasible", a, err)
		}
	}
	endless := &Programme{Columns: []Column{{Cost: -1, High: inf}}}
	if a, err := Plain(context.Background(), endless, Limits{}, nil); err != nil || a.State != Stopped || a.Values != nil || !math.IsInf(a.Bound, -1) {
		t.Errorf("%+v, %v; want no bound and no values", a, err)
	}
	if a, err := Plain(context.Background(), &Programme{Offset: 2}, Limits{}, nil); err != nil || a.State != Proved || a.Objective != 2 {
		t.Errorf("%+v, %v; want nothing for 2", a, err)
	}
}
