package desk

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/plans"
	"eyeup/internal/testkit"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/stock"
)

// march is a day on which half of a lot has been started.
var march = civil.MustOn(2027, 3, 22)

// halfStarted is the invented garden in March: 10 of a lot of 14 clumps are wanted, and so many
// were started in pots a week ago.
func halfStarted(t *testing.T, started int) (*garden.Garden, stock.Lot) {
	t.Helper()
	d, lot := followed(t, "none")
	write(t, d, "2027-01-21", "described", fmt.Sprintf(`{"what":"variety","name":%q,"body":{"kind":"dahlia","plant":8,"reserve":2}}`, lot.Name()))
	if n := 14 - lot.Count(); n > 0 {
		write(t, d, "2027-01-21", "taken in", fmt.Sprintf(`{"variety":%q,"kind":"dahlia","form":"clump","count":%d,"place":"cellar"}`, lot.Name(), n))
	}
	if started > 0 {
		write(t, d, "2027-03-15", "started", fmt.Sprintf(`{"lot":%q,"count":%d,"to":{"place":"warm room","form":"pot"}}`, lot.Code, started))
	}
	g, _, err := OpenBookGarden(d.book)
	if err != nil {
		t.Fatal(err)
	}
	g.Members = g.Members[:3]
	return g, lot
}

// startedOf is how many of a variety a plan still starts.
func startedOf(p *season.Plan, variety string) int {
	n := 0
	for _, b := range p.Batches {
		if b.Variety == variety {
			n += b.Count
		}
	}
	return n
}

// TestWhatGrowsIsNotStartedAgain works the season of March out: every plan starts what is still to
// be started, gives the pots their room on the bench till they go out, asks to plant them out, and
// holds when it is replayed.
func TestWhatGrowsIsNotStartedAgain(t *testing.T) {
	none, lot := halfStarted(t, 0)
	before, err := plans.Season(none, nil, march, plans.Unproved)
	if err != nil {
		t.Fatal(err)
	}
	g, lot2 := halfStarted(t, 4)
	if lot2.Name() != lot.Name() {
		t.Fatalf("%s and %s", lot.Name(), lot2.Name())
	}
	a, err := plans.Season(g, nil, march, plans.Unproved)
	if err != nil {
		t.Fatal(err)
	}
	if len(a.Growing) != 1 || a.Growing[0].Count != 4 || a.Growing[0].Code != string(lot2.Code) || a.Growing[0].Place != "warm room" {
		t.Fatalf("there grow %+v", a.Growing)
	}
	for i, p := range a.Plans {
		if was, is := startedOf(before.Plans[i], lot.Name()), startedOf(p, lot.Name()); was != 10 || is != 6 {
			t.Errorf("%s: of 10 wanted it starts %d, once 4 grow %d", p.Name, was, is)
		}
		for _, w := range placeOf(p, "warm room").Weeks {
			inside := !w.Week.Before(march.Monday()) && w.Week.Before(p.PlantOutFrom)
			if inside && w.UsedM2 < 4*0.05 {
				t.Errorf("%s: in the week of %v %v m² are taken", p.Name, w.Week, w.UsedM2)
			}
		}
		jobs := 0
		for _, j := range a.JobsOf(p.Name) {
			if j.What == "plant out" {
				jobs += j.Count
			}
		}
		for _, b := range p.Batches {
			if len(b.Stays) > 1 && !b.Dates.PlantOut.Middle.IsZero() {
				jobs -= b.Count
			}
		}
		if jobs != 4 {
			t.Errorf("%s: %d that grow are to be planted out", p.Name, jobs)
		}
	}
	if slices.ContainsFunc(a.NotCovered, func(n season.NotCovered) bool { return n.Variety == lot.Name() }) {
		t.Errorf("not covered: %v", a.NotCovered)
	}
	testkit.Holds(t, "season", a)
	testkit.Replayed(t, g.Brief(march), a.Plans)
	var told bytes.Buffer
	a.Print(&told, quantity.US)
	if words := strings.Join(strings.Fields(told.String()), " "); !strings.Contains(words, "Growing already: 4 pots of dahlia in warm room. They count towards what is wanted.") {
		t.Error(words)
	}
}

func placeOf(p *season.Plan, name string) season.PlacePlan {
	return p.Places[slices.IndexFunc(p.Places, func(one season.PlacePlan) bool { return one.Place == name })]
}

// TestAllThatIsWantedGrows starts all of a lot that is wanted: the rest of it waits, and why is said.
func TestAllThatIsWantedGrows(t *testing.T) {
	g, lot := halfStarted(t, 4)
	for i := range g.Stock {
		if h := &g.Stock[i]; h.Variety.Name == lot.Name() && h.Plant > 0 {
			h.Plant, h.Reserve = 3, 1
		}
	}
	a, err := plans.Season(g, nil, march, plans.Unproved)
	if err != nil {
		t.Fatal(err)
	}
	if n := startedOf(a.Plans[0], lot.Name()); n != 0 {
		t.Errorf("%d more are started", n)
	}
	if !slices.ContainsFunc(a.NotCovered, func(n season.NotCovered) bool {
		return n.Variety == lot.Name() && n.Why == "as many as are wanted grow already; it stays where it is"
	}) {
		t.Errorf("not covered: %v", a.NotCovered)
	}
}

// TestRoundsOnPaperAreThoseOfThePage lists this week's jobs on paper: the rounds that are due by the
// last one gone are on it, and pots that stand in no described place want none.
func TestRoundsOnPaperAreThoseOfThePage(t *testing.T) {
	today := civil.MustOn(2027, 1, 12)
	d, err := DemoDesk(today, today.UTC)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = d.Close() })
	var due []string
	for _, r := range d.RoundsDue(today) {
		if r.Due {
			due = append(due, r.Place)
		}
	}
	if fmt.Sprint(due) != "[cellar]" {
		t.Fatalf("rounds are due in %q", due)
	}
	list, err := d.Listing(PaperQuestion{Name: "week"}, today)
	if err != nil {
		t.Fatal(err)
	}
	var rounds []string
	for _, g := range list.Groups {
		for _, row := range g.Rows {
			if text := strings.Join(row, " "); strings.Contains(text, "go through the crates") {
				rounds = append(rounds, text)
			}
		}
	}
	if len(rounds) != 1 || !strings.Contains(rounds[0], "cellar") || !strings.Contains(rounds[0], "it was last gone through on 13 Dec") {
		t.Errorf("on paper: %q", rounds)
	}
}
