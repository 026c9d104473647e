package page

import (
	"net/url"
	"testing"

	"eyeup/civil"
	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/season"
)

// TestLongPlansAreCutTillAllIsAsked lists the first 50 of 75 batches, and then all, with the
// plan that was asked for kept.
func TestLongPlansAreCutTillAllIsAsked(t *testing.T) {
	plan := &season.Plan{Batches: make([]season.BatchPlan, 75)}
	v := seasonView{Plan: plan, Asks: url.Values{"plan": {"no added heat"}}}
	if n, more := len(v.Batches()), v.More(); n != 50 || more != 25 {
		t.Errorf("%d batches are listed and %d more told of", n, more)
	}
	if to := v.All(); to != "/season?all=yes&plan=no+added+heat#batches" {
		t.Errorf("all are at %s", to)
	}
	v.Asks.Set("all", "yes")
	if n, more := len(v.Batches()), v.More(); n != 75 || more != 0 {
		t.Errorf("of all, %d batches are listed and %d more told of", n, more)
	}
	plan.Batches = plan.Batches[:3]
	if n, more := len(v.Batches()), v.More(); n != 3 || more != 0 {
		t.Errorf("of three, %d are listed and %d more told of", n, more)
	}
}

// TestColdIsSaidInWords tells a heater that never falls short from one that does.
func TestColdIsSaidInWords(t *testing.T) {
	held := &season.PlaceHeat{}
	plan := &season.Plan{Years: 30, Places: []season.PlacePlan{{Place: "glass", Heat: held}, {Place: "patch"}}}
	v := seasonView{display: display{Units: quantity.Metric}}
	if says := v.Cold(plan, "glass"); says != "never" {
		t.Errorf("a heater that holds is said to be too cold: %s", says)
	}
	if says := v.Cold(plan, "patch"); says != "–" {
		t.Errorf("of the patch: %s", says)
	}
	held.HoursShort, held.WorstShortK, held.YearsFreezing = odds.Amount{Middle: 11, High: 40}, 2, 8
	if says := v.Cold(plan, "glass"); says != "11 hours; 2.0 °C below its level at worst; freezes inside in 8 of 30 years" {
		t.Errorf("of a weak heater: %s", says)
	}
}

func TestTemperaturesReach(t *testing.T) {
	us := display{Units: quantity.US}
	if says := us.reach(odds.Amount{Low: -10, Middle: 0, High: 10}); says != "14 to 50\u00a0°F" {
		t.Errorf("from -10 to 10 °C: %q", says)
	}
	if says := us.reach(odds.Exactly(4)); says != "" {
		t.Errorf("of one temperature: %q", says)
	}
}

// TestLackingSaysOfWhat tells bench in the reader's measure, and crates and plants whole.
func TestLackingSaysOfWhat(t *testing.T) {
	v := seasonView{display: display{Units: quantity.US}}
	for want, lacks := range map[string]season.Shortfall{
		"65.7 ft² too little":  {Of: "room", Place: "patch", Wanted: 96.1, There: 90, Short: 6.1},
		"4 too few":            {Of: "crates", Wanted: 63.4, There: 60, Short: 3.4},
		"2.5 hours too little": {Of: "hands", Short: 2.5},
		"7 too few":            {Of: "stock", Variety: "Marl Pit", Short: 7},
	} {
		if says := v.Lacking(lacks); says != want {
			t.Errorf("of %s it says %q, want %q", lacks.Of, says, want)
		}
	}
}

// TestADateWithoutSpreadIsSaidOnce: what comes on one day in every year has no spread to tell.
func TestADateWithoutSpreadIsSaidOnce(t *testing.T) {
	first, last := civil.MustOn(2027, 5, 31), civil.MustOn(2027, 6, 14)
	var plain display
	for _, c := range []struct {
		when civil.When
		want string
	}{
		{civil.When{Early: first, Middle: first, Late: first}, plain.day(first)},
		{civil.When{Early: first, Middle: first, Late: last}, plain.day(first) + " (" + plain.day(first) + " to " + plain.day(last) + ")"},
	} {
		if got := plain.when(c.when); got != c.want {
			t.Errorf("said %q, not %q", got, c.want)
		}
	}
}
