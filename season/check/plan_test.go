package check

import (
	"io/fs"
	"os"
	"testing"
	"testing/fstest"
	"time"

	"eyeup/civil"
	"eyeup/internal/desk"
	"eyeup/internal/shared"
	"eyeup/season"
)

// autumn is the day on which the plans of the tests are made.
var autumn = civil.MustOn(2026, time.November, 16)

// example is the example garden with the record of Waterville, Maine.
func example(t testing.TB) fs.FS {
	t.Helper()
	folder := fstest.MapFS{}
	for name, path := range map[string]string{
		"garden.toml": "../example/garden.toml", "stock.csv": "../example/stock.csv",
		"weather.csv": "daily/USC00179151_waterville-me_and_niles-mi.csv",
	} {
		data, err := os.ReadFile(shared.Path(t, path))
		if err != nil {
			t.Fatal(err)
		}
		folder[name] = &fstest.MapFile{Data: data}
	}
	return folder
}

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
	g, err := desk.OpenGarden(example(t), "example")
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
	g, err := desk.OpenDemo(autumn)
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
