package desk

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/plans"
	"eyeup/season"
	"eyeup/stock"
)

// TestCratesOfALotAreOneLot spreads lots of the invented garden over several crates, with what
// is wanted told once: its season is the same.
func TestCratesOfALotAreOneLot(t *testing.T) {
	g, err := garden.OpenDemo(provedOn)
	if err != nil {
		t.Fatal(err)
	}
	g.Members = g.Members[:4]
	whole := workedOutOf(t, g)
	var spread int
	for i := len(g.Stock) - 1; i >= 0; i -= 3 {
		if g.Stock[i].Count < 4 || g.Stock[i].Code == "" {
			continue
		}
		other := g.Stock[i]
		other.Crate, other.Plant, other.Reserve = "another", 0, 0
		other.Count /= 2
		g.Stock[i].Count -= other.Count
		g.Stock = slices.Insert(g.Stock, i+1, other)
		spread++
	}
	if spread < 5 {
		t.Fatalf("only %d lots stand in two crates", spread)
	}
	if other := workedOutOf(t, g); !bytes.Equal(whole, other) {
		t.Errorf("with %d lots in two crates each another season comes out", spread)
	}
}

func workedOutOf(t *testing.T, g *garden.Garden) []byte {
	t.Helper()
	a, err := plans.Season(g, nil, provedOn)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(a)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// TestALotInTwoPlacesIsRaisedFromBoth brings some clumps of a lot of the book to another store: the
// season raises both, the jobs and the potting list have all of them, each from its crate, and a
// plan that is followed finds them again, wherever they are brought to.
func TestALotInTwoPlacesIsRaisedFromBoth(t *testing.T) {
	d, lot := followed(t, "none")
	write(t, d, "2027-01-20", "described", `{"what":"place","name":"shed","body":{"sort":"store","temperature":"45F","humidity":"60%","crates":20}}`)
	write(t, d, "2027-01-20", "described", fmt.Sprintf(`{"what":"variety","name":%q,"body":{"kind":"dahlia","plant":%d,"reserve":0}}`, lot.Name(), lot.Count()))
	whole := raisedOf(t, d, lot)
	write(t, d, "2027-01-21", "moved", fmt.Sprintf(`{"lot":%q,"count":3,"to":{"place":"shed","crate":"9"}}`, lot.Code))
	both := raisedOf(t, d, lot)
	if whole["cellar"] != lot.Count() || both["shed"] != 3 || both["cellar"] != lot.Count()-3 {
		t.Fatalf("of %d it raises %v, of two places %v", lot.Count(), whole, both)
	}
	a := fewYearsOf(t, d)
	body, err := a.Hold(season.AsEarly)
	if err != nil {
		t.Fatal(err)
	}
	write(t, d, splitOn.String(), "decided", string(body))
	for _, step := range []string{
		`{"lot":%q,"place":"shed","count":2,"to":{"place":"cellar"}}`, `{"lot":%q,"place":"shed","count":1,"to":{"place":"cellar"}}`,
	} {
		if got := raisedOf(t, d, lot); got["cellar"]+got["shed"] != lot.Count() {
			t.Errorf("the plan that is followed raises %v of %d", got, lot.Count())
		}
		write(t, d, "2027-01-22", "moved", fmt.Sprintf(step, lot.Code))
	}
	a = fewYearsOf(t, d)
	plan, said := a.PlanFollowed()
	if !said || !plan.Held || len(plan.Otherwise) > 0 {
		t.Errorf("%q is followed: %q", plan.Name, plan.Otherwise)
	}
	if got := raisedOf(t, d, lot); got["cellar"] != lot.Count() {
		t.Errorf("all in one place again, the plan that is followed raises %v", got)
	}
	jobs := 0
	for _, j := range a.Jobs {
		if slices.Contains(j.Sorts, lot.Name()) && (j.What == "start" || j.What == "plant") {
			jobs++
		}
	}
	if jobs == 0 {
		t.Errorf("no job starts %s", lot.Name())
	}
}

// splitOn is the day on which a lot stands in two places.
var splitOn = civil.MustOn(2027, time.January, 25)

// fewYearsOf works the season of a book out for few years.
func fewYearsOf(t *testing.T, d *Scratch) *plans.SeasonAnswer {
	t.Helper()
	g, follows, err := OpenBookGarden(d.book)
	if err != nil {
		t.Fatal(err)
	}
	g.Members = g.Members[:3]
	a, err := plans.Season(g, follows, splitOn, plans.Unproved)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// raisedOf is how many of a lot the plan that is followed, or the earliest, raises from each place.
func raisedOf(t *testing.T, d *Scratch, lot stock.Lot) map[string]int {
	t.Helper()
	a := fewYearsOf(t, d)
	plan, said := a.PlanFollowed()
	if !said {
		plan = a.Plans[len(a.Plans)-1]
	}
	all := map[string]int{}
	for _, b := range plan.Batches {
		if b.Code == string(lot.Code) {
			all[b.Place] += b.Count
		}
	}
	return all
}
