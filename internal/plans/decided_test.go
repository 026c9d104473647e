package plans

import (
	"encoding/json"
	"math"
	"reflect"
	"testing"

	"eyeup/season"
	"eyeup/stock"
)

// TestDecisionsAreReadAsWritten reads a decision whose entry holds a plan: what is decided is what
// was, its levels to a thousandth of a degree.
func TestDecisionsAreReadAsWritten(t *testing.T) {
	_, a := exampleSeason(t)
	plan, err := a.PlanNamed(season.AsEarly)
	if err != nil {
		t.Fatal(err)
	}
	body, err := a.Hold(season.AsEarly)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := stock.Canonical(body); err != nil {
		t.Fatal(err)
	}
	var said Said
	if err := json.Unmarshal(body, &said); err != nil {
		t.Fatal(err)
	}
	got, want := said.decisions(), *plan.Decisions
	if len(got.Places) == 0 || len(got.Places) != len(want.Places) {
		t.Fatalf("%d places are held, not %d", len(got.Places), len(want.Places))
	}
	broken := false // a level of no whole degrees
	for i, h := range got.Places {
		if h.Level.IsKnown() != want.Places[i].Level.IsKnown() || math.Abs(h.Level.Celsius()-want.Places[i].Level.Celsius()) > 0.0006 {
			t.Errorf("%s is held at %v, not %v", h.Place, h.Level, want.Places[i].Level)
		}
		broken = broken || h.Level.Celsius() != math.Trunc(h.Level.Celsius())
		got.Places[i].Level = want.Places[i].Level
		if then := want.Places[i].Then; then != nil {
			if h.Then == nil || h.Then.From != then.From || math.Abs(h.Then.Level.Celsius()-then.Level.Celsius()) > 0.0006 {
				t.Errorf("%s steps by %v, not %v", h.Place, h.Then, then)
			}
			got.Places[i].Then = then
		}
	}
	got.Plan = want.Plan
	if !broken {
		t.Error("all levels are of whole degrees, which shows nothing")
	}
	if !reflect.DeepEqual(*got, want) {
		t.Errorf("read is\n%+v\nwritten was\n%+v", *got, want)
	}
}
