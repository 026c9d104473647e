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

func exampleBrief(t testing.TB) season.Brief {
	t.Helper()
	g, err := desk.OpenGarden(example(t), "example")
	if err != nil {
		t.Fatal(err)
	}
	return g.Brief(autumn)
}

func inventedBrief(t testing.TB) season.Brief {
	t.Helper()
	g, err := desk.OpenDemo(autumn)
	if err != nil {
		t.Fatal(err)
	}
	return g.Brief(autumn)
}

// planOf returns the plan of a name.
func planOf(t testing.TB, b season.Brief, name string) *season.Plan {
	t.Helper()
	r, err := season.Make(b)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range r.Plans {
		if p.Name == name {
			return p
		}
	}
	t.Fatalf("there is no plan %q", name)
	return nil
}

// holds replays every plan of a brief.
func holds(t *testing.T, b season.Brief) {
	t.Helper()
	r, err := season.Make(b)
	if err != nil {
		t.Fatal(err)
	}
	all := newCourses(&b)
	for _, p := range r.Plans {
		for _, d := range all.replay(p).Differences {
			t.Errorf("%s: %v", p.Name, d)
		}
	}
}

func TestPlansOfTheExampleHold(t *testing.T) { holds(t, exampleBrief(t)) }

func TestPlansOfTheInventedGardenHold(t *testing.T) { holds(t, inventedBrief(t)) }
