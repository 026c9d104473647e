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

// briefs are those of the example garden and of the invented one.
func briefs(t testing.TB) map[string]season.Brief {
	t.Helper()
	g, err := desk.OpenGarden(example(t), "example")
	if err != nil {
		t.Fatal(err)
	}
	d, err := desk.OpenDemo(autumn)
	if err != nil {
		t.Fatal(err)
	}
	return map[string]season.Brief{"example": g.Brief(autumn), "invented": d.Brief(autumn)}
}

// TestPlansHold replays the plans of both gardens.
func TestPlansHold(t *testing.T) {
	for name, b := range briefs(t) {
		r, err := season.Make(b)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range r.Plans {
			begun := time.Now()
			for _, d := range Plan(b, p).Differences {
				t.Errorf("%s, %s: %v", name, p.Name, d)
			}
			t.Log(name, p.Name, time.Since(begun))
		}
	}
}
