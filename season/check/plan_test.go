package check

import (
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/opendata"
	"eyeup/season"
)

// autumn is the day on which the plans of the tests are made.
var autumn = civil.MustOn(2026, time.November, 16)

// read keeps the brief of the example garden, which takes a second to read, and its plans.
var read struct {
	brief *season.Brief
	plans []*season.Plan
}

func exampleBrief(t testing.TB) season.Brief {
	t.Helper()
	if read.brief != nil {
		return *read.brief
	}
	g, err := garden.Open(opendata.Example(t), "example")
	if err != nil {
		t.Fatal(err)
	}
	b := g.Brief(autumn)
	read.brief = &b
	return b
}

// fewYears returns a brief with no more than twelve years of its weather.
func fewYears(b season.Brief) season.Brief {
	few := min(12, len(b.Given.Weather))
	b.Given.Years, b.Given.Weather = b.Given.Years[:few], b.Given.Weather[:few]
	return b
}

func inventedBrief(t testing.TB) season.Brief {
	t.Helper()
	g, err := garden.OpenDemo(autumn)
	if err != nil {
		t.Fatal(err)
	}
	return g.Brief(autumn)
}

func plansOf(t testing.TB, b season.Brief) []*season.Plan {
	t.Helper()
	r, err := season.Make(b)
	if err != nil {
		t.Fatal(err)
	}
	return r.Plans
}

// earliest returns the example garden's plan that is as early as can be: the one with most
// in it.
func earliest(t testing.TB) *season.Plan {
	t.Helper()
	if read.plans == nil {
		read.plans = plansOf(t, exampleBrief(t))
	}
	for _, p := range read.plans {
		if p.Name == season.AsEarly {
			return p
		}
	}
	t.Fatalf("there is no plan %q", season.AsEarly)
	return nil
}

// hold replays plans of a brief.
func hold(t *testing.T, b season.Brief, plans []*season.Plan) {
	t.Helper()
	all := newCourses(&b)
	for _, p := range plans {
		for _, d := range all.replay(p).Differences {
			t.Errorf("%s: %v", p.Name, d)
		}
	}
}

func TestPlansOfTheExampleHold(t *testing.T) {
	earliest(t)
	hold(t, exampleBrief(t), read.plans)
}

func TestPlansOfTheInventedGardenHold(t *testing.T) {
	b := inventedBrief(t)
	hold(t, b, plansOf(t, b))
}

// BenchmarkPlan replays one plan of the example garden: nine lots, 28 years.
func BenchmarkPlan(b *testing.B) {
	brief, plan := exampleBrief(b), earliest(b)
	for b.Loop() {
		Plan(brief, plan)
	}
}
