package week_test

import (
	"math"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/stock"
	"eyeup/week"
)

func on(m time.Month, d int) civil.Date { return civil.MustOn(2027, m, d) }

func around(d civil.Date) civil.When {
	return civil.When{Early: d.AddDays(-4), Middle: d, Late: d.AddDays(5)}
}

// made is a plan of one lot of dahlias, cut in spring, and one sowing of tomatoes.
func made() (season.Brief, *season.Plan) {
	var warm [12]quantity.Temperature
	for i := range warm {
		warm[i] = quantity.Celsius(21)
	}
	b := season.Brief{Given: season.Given{
		Span: civil.Span{From: civil.MustOn(2026, time.September, 1), To: on(time.December, 31)}, Kinds: culture.Lookup,
		Places: []season.Place{
			{Name: "cellar", Sort: season.Store}, {Name: "warm room", Sort: season.Room, Model: place.Steady{Temperature: warm}},
			{Name: "patch", Sort: season.Ground},
		},
		Stock: []stock.Holding{{Variety: stock.Variety{Name: "Pale Heron", Kind: "dahlia"}, Form: stock.Clump, Count: 6, Place: "cellar"}},
	}}
	stays := []season.Stay{
		{Place: "warm room", From: on(time.April, 12), To: on(time.May, 3)}, {Place: "glass", From: on(time.May, 3), To: on(time.May, 24)},
		{Place: "patch", From: on(time.May, 24), To: on(time.October, 1)},
	}
	dates := season.Dates{
		Start: on(time.April, 12), Eyed: around(on(time.April, 21)), Up: around(on(time.April, 29)), HandOn: around(on(time.May, 3)),
		PlantOut: around(on(time.May, 24)), FirstFlower: around(on(time.July, 12)),
	}
	return b, &season.Plan{
		PlantOutFrom: on(time.May, 24),
		Places:       []season.PlacePlan{{Place: "warm room", Sort: "room", Weeks: []season.PlaceWeek{{Week: on(time.April, 12), UsedM2: 1}, {Week: on(time.May, 31), UsedM2: 1}}}},
		Batches: []season.BatchPlan{
			{ID: "a divided", Kind: "dahlia", Variety: "Pale Heron", Count: 20, How: "divided", Parents: 6, Container: "no1", Stays: stays, Dates: dates},
			{ID: "b", Kind: "tomato", Variety: "Red Ladder", Count: 24, How: "whole", Container: "no1", Stays: stays, Dates: dates},
		},
	}
}

func find(jobs []week.Job, what, kind string) []week.Job {
	var all []week.Job
	for _, j := range jobs {
		if j.What == what && j.Kind == kind {
			all = append(all, j)
		}
	}
	return all
}

// TestJobsOfTheYear holds the jobs of a plan to the order in which growers do them (common
// practice): wake, divide when eyes show, look at five weeks, hand on, harden a week before
// planting out, prove names in flower, mark before the frost, lift after it, cure, pack.
func TestJobsOfTheYear(t *testing.T) {
	jobs := week.Of(made())
	last := civil.Date{}
	for _, what := range []string{"wake", "divide", "pot", "hand on", "harden", "plant out", "prove the names", "mark keepers and sick", "lift", "cure and pack"} {
		found := find(jobs, what, "dahlia")
		if len(found) != 1 {
			t.Fatalf("%s: %d jobs", what, len(found))
		}
		j := found[0]
		if j.Week.Before(last) {
			t.Errorf("%s is due on %v, before what comes before it", what, j.Week)
		}
		if j.Week.Weekday() != time.Monday {
			t.Errorf("%s is due in a week that begins on a %v", what, j.Week.Weekday())
		}
		last = j.Week
	}
	if cut := find(jobs, "divide", "dahlia")[0]; cut.Count != 6 || cut.Minutes <= 0 {
		t.Errorf("six clumps are cut, with some work, not %v", cut)
	}
	if look := find(jobs, "look at what is not up", "dahlia"); len(look) != 1 || look[0].Week != on(time.May, 17) {
		t.Errorf("five weeks after 12 April is the week of 17 May, not %v", look)
	}
	if mark := find(jobs, "mark keepers and sick", "dahlia")[0]; !mark.Week.Before(on(time.October, 1)) {
		t.Errorf("keepers are marked on %v, after the frost", mark.Week)
	}
}

// TestSeedIsNotLifted asks of a tomato what is its own: it is sown and pricked out, never
// divided, lifted or packed.
func TestSeedIsNotLifted(t *testing.T) {
	jobs := week.Of(made())
	if len(find(jobs, "sow", "tomato")) != 1 || len(find(jobs, "prick out", "tomato")) != 1 {
		t.Errorf("tomatoes are not sown and pricked out: %v", jobs)
	}
	for _, what := range []string{"divide", "lift", "cure and pack", "prove the names"} {
		if len(find(jobs, what, "tomato")) > 0 {
			t.Errorf("tomatoes: %s", what)
		}
	}
}

// TestRoundsAreMonthly asks for a round every four weeks till planting out. Common practice.
func TestRoundsAreMonthly(t *testing.T) {
	rounds := find(week.Of(made()), "go through the crates", "")
	if len(rounds) < 7 {
		t.Fatalf("%d rounds from mid-October to late May", len(rounds))
	}
	for i, r := range rounds[1:] {
		if r.Week.Sub(rounds[i].Week) != 28 {
			t.Errorf("%d days between rounds", r.Week.Sub(rounds[i].Week))
		}
	}
}

// TestMitesAreLookedFor asks to look no less than weekly in a warm room: a generation
// takes 17 days at 21 °C, by the constant of package growth.
func TestMitesAreLookedFor(t *testing.T) {
	looks := find(week.Of(made()), "look for mites", "")
	if len(looks) < 3 {
		t.Errorf("%d looks in seven weeks at 21 °C", len(looks))
	}
}

// TestNeverIsNoJob leaves out what does not come to pass.
func TestNeverIsNoJob(t *testing.T) {
	b, p := made()
	p.Batches[0].Dates.FirstFlower, p.Batches[0].Dates.PlantOut = civil.When{}, civil.When{}
	jobs := week.Of(b, p)
	for _, what := range []string{"plant out", "harden", "prove the names"} {
		if len(find(jobs, what, "dahlia")) > 0 {
			t.Errorf("%s is due, though it never comes", what)
		}
	}
}

// TestFrameAndSmallPotsAreJobs: what hardens in a frame is carried there once, by the minutes
// of carrying, and not out and in; what begins in small pots is potted up where it stands by
// then; and divisions wake in trays before they are potted.
func TestFrameAndSmallPotsAreJobs(t *testing.T) {
	b, p := made()
	batch := &p.Batches[1]
	batch.Kind, batch.Form = "dahlia", "division"
	batch.Dates.PotUp, batch.Dates.Frame = around(on(time.May, 10)), around(on(time.May, 17))
	batch.Stays = []season.Stay{batch.Stays[0], batch.Stays[1], {Place: "frame", From: on(time.May, 17), To: on(time.May, 24)}, batch.Stays[2]}
	dahlia, _ := culture.Lookup("dahlia")
	carry, _ := dahlia.Work("hand_on")
	pots, _ := dahlia.Work("pot_up")
	p.Batches = p.Batches[1:]
	jobs := week.Of(b, p)
	for _, c := range []struct {
		what, where string
		week        civil.Date
		minutes     float64
	}{
		{"wake", "warm room", on(time.April, 12), -1}, {"pot", "warm room", on(time.April, 26), -1}, {"hand on", "glass", on(time.May, 3), 24 * carry},
		{"pot up", "glass", on(time.May, 10), 24 * pots}, {"harden", "frame", on(time.May, 17), 24 * carry},
	} {
		found := find(jobs, c.what, "dahlia")
		if len(found) != 1 || found[0].Where != c.where || found[0].Week != c.week || c.minutes >= 0 && found[0].Minutes != math.Round(c.minutes) {
			t.Errorf("%s: %+v, not in %s in the week of %v", c.what, found, c.where, c.week)
		}
	}
}
