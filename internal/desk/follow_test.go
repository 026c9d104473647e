package desk

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/plans"
	"eyeup/internal/report"
	"eyeup/internal/testkit"
	"eyeup/season"
	"eyeup/stock"
)

// bestOf looks for the best plans of the invented garden in few of its years, for as long as it
// takes to have some. More may be wanted of some varieties, kind/name, than it says.
func bestOf(t *testing.T, more ...string) (*Scratch, *plans.SeasonAnswer) {
	t.Helper()
	d, err := DemoDesk(provedOn, provedOn.UTC)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = d.Close() })
	for _, variety := range more {
		kind, name, _ := strings.Cut(variety, "/")
		write(t, d, provedOn.String(), "described", fmt.Sprintf(`{"what":"variety","name":%q,"body":{"kind":%q,"plant":24,"reserve":2}}`, name, kind))
	}
	d.Site().Members = d.Site().Members[:4]
	if err := d.LookForBest(provedOn, Change{}); err != nil {
		t.Fatal(err)
	}
	d.StopLooking()
	return d, found(t, d.Desk, Change{}).Answer
}

// hold writes down that a best plan is followed.
func hold(t *testing.T, d *Scratch, plan string) *plans.SeasonAnswer {
	t.Helper()
	body, err := d.HoldBest(provedOn, plan)
	if err != nil {
		t.Fatal(err)
	}
	write(t, d, provedOn.String(), "decided", string(body))
	return seasonNow(t, d, provedOn)
}

// seasonNow waits for the season as the book has it.
func seasonNow(t *testing.T, d *Scratch, today civil.Date) *plans.SeasonAnswer {
	t.Helper()
	for {
		w, err := d.Season(today)
		if err != nil {
			t.Fatal(err)
		}
		if w.Behind == 0 {
			return w.SeasonAnswer
		}
		time.Sleep(time.Millisecond)
	}
}

// TestBestPlansAreFollowed follows every best plan in turn, those on the price of early too: the
// season of the book has it with the same dates, counts and costs, and all goes by it.
func TestBestPlansAreFollowed(t *testing.T) {
	d, best := bestOf(t)
	names := best.PlanNames()
	if len(names) < 4 {
		t.Fatalf("there are only %q", names)
	}
	for _, name := range names {
		opened, err := d.OpenedBest(provedOn, Change{}, name)
		if err != nil {
			t.Fatal(err)
		}
		want, _ := opened.PlanNamed(name)
		a := hold(t, d, name)
		plan, said := a.PlanFollowed()
		if !said || !plan.Held || plan.Name != "held: "+name || a.Followed != plan.Name || a.NotFollowed != "" {
			t.Fatalf("%s: followed is %q: %s", name, plan.Name, a.NotFollowed)
		}
		if got, want := testkit.AllOf(t, *plan), testkit.AllOf(t, *want); got != want {
			t.Errorf("%s: followed\n%s\nnot\n%s", name, got, want)
		}
	}
	a := seasonNow(t, d, provedOn)
	plan, _ := a.PlanFollowed()
	w, err := d.Week(provedOn)
	if err != nil || w.Plan != plan.Name || !w.Followed {
		t.Errorf("this week goes by %+v, %v", w, err)
	}
	if list, err := d.PlantingList(provedOn); err != nil || list.Plan != plan.Name {
		t.Errorf("the patch goes by %+v, %v", list, err)
	}
	against := d.Against(provedOn)
	if against == nil || against.Plan != plan.Name || len(against.Lots) == 0 || against.Promised.Cost != *report.Rounded(plan.Cost.Total, 2) {
		t.Errorf("held against is %+v", against)
	}
	var byName, byPlan bytes.Buffer
	if err := d.Calendar(provedOn, provedOn.UTC(), &byPlan); err != nil {
		t.Fatal(err)
	}
	garden, decided := d.following()
	if _, err := plans.CalendarOf(garden, decided, plan.Name, provedOn, provedOn.UTC(), &byName); err != nil || byName.String() != byPlan.String() {
		t.Errorf("the calendar does not go by it: %v", err)
	}
	if fmt.Sprint(a.Jobs) != fmt.Sprint(a.JobsOf(plan.Name)) || len(a.Jobs) == 0 {
		t.Error("the jobs do not go by it")
	}
	if _, err := a.Decide(plan.Name); err == nil {
		t.Error("what is followed can be followed by its name")
	}
	g, follows, err := OpenBookGarden(d.book)
	if err != nil {
		t.Fatal(err)
	}
	again, err := plans.Season(g, follows, provedOn, plans.Unproved)
	if err != nil || again.Followed != plan.Name {
		t.Errorf("of the book by itself is followed %q, %v", again.Followed, err)
	}
	testkit.Holds(t, "season", again)
	write(t, d, "2027-01-21", "decided", `{"plan":"no added heat"}`)
	if a := seasonNow(t, d, provedOn); a.Followed != season.NoHeat || len(a.Plans) != 3 {
		t.Errorf("by its name is followed %q, of %d plans", a.Followed, len(a.Plans))
	}
}

// TestWhatIsBegunStays starts lots of a plan that is followed, later than decided and of one fewer:
// the plan keeps them, by what the book has, and says so.
func TestWhatIsBegunStays(t *testing.T) {
	d, _ := bestOf(t)
	a := hold(t, d, season.AsEarly)
	plan, _ := a.PlanFollowed()
	at := slices.IndexFunc(plan.Batches, func(b season.BatchPlan) bool {
		alone := 0
		for _, other := range plan.Batches {
			if other.Code == b.Code {
				alone++
			}
		}
		return b.How == "whole" && b.Form == string(stock.Clump) && b.Container != "" && b.Count > 3 && alone == 1
	})
	if at < 0 {
		t.Fatal("no lot is raised whole in pots")
	}
	lot, batches := plan.Batches[at], len(plan.Batches)
	late := lot.Starts[0].Week.AddDays(9)
	write(t, d, late.String(), "started", fmt.Sprintf(`{"lot":%q,"count":%d,"to":{"place":"back room","form":"pot"}}`, lot.Code, lot.Count))
	standing, err := lotNow(d, lot.Code)
	if err != nil {
		t.Fatal(err)
	}
	write(t, d, late.AddDays(1).String(), "destroyed", fmt.Sprintf(`{"lot":%q,"form":"pot","count":%d,"why":"rot"}`, lot.Code, standing-lot.Count+1))
	now := late.AddDays(2)
	a = seasonNow(t, d, now)
	plan, said := a.PlanFollowed()
	if !said || !plan.Held {
		t.Fatalf("followed is %q: %s", plan.Name, a.NotFollowed)
	}
	at = slices.IndexFunc(plan.Batches, func(b season.BatchPlan) bool { return b.Code == lot.Code })
	if at < 0 || plan.Batches[at].Count != lot.Count-1 || plan.Batches[at].Starts[0].Week != late.Monday() {
		t.Errorf("of %d started on %v the plan keeps %+v", lot.Count, late, plan.Batches[max(at, 0)].Starts)
	}
	for _, words := range []string{"started in the week of", fmt.Sprintf("%d are there of the %d decided", lot.Count-1, lot.Count)} {
		if !strings.Contains(strings.Join(plan.Otherwise, "\n"), words) {
			t.Errorf("nothing of %q in %q", words, plan.Otherwise)
		}
	}
	if len(plan.Otherwise) != 2 || len(plan.Batches) != batches {
		t.Errorf("of %d batches %d are left: %q", batches, len(plan.Batches), plan.Otherwise)
	}
	if slices.ContainsFunc(plan.NotCovered, func(n season.NotCovered) bool { return n.Variety == lot.Variety }) {
		t.Errorf("what was started is left alone: %v", plan.NotCovered)
	}
	replayedFollowed(t, d, now, plan)
}

func lotNow(d *Scratch, code string) (n int, err error) {
	d.Read(func(b *stock.Book) {
		var l stock.Lot
		l, err = b.Find(code)
		n = l.Count()
	})
	return n, err
}

// TestWhatIsDividedStays wakes and cuts clumps of a plan that is followed, late and with one piece
// fewer than decided: the plan keeps them as the book has them, the clumps that are raised whole
// too, and what comes of it holds when it is replayed.
func TestWhatIsDividedStays(t *testing.T) {
	d, _ := bestOf(t, "dahlia/Marl Pit")
	plan, _ := hold(t, d, season.AsEarly).PlanFollowed()
	at := slices.IndexFunc(plan.Batches, func(b season.BatchPlan) bool {
		return b.How == "divided" && b.Count > 2 && b.Container != "" && !strings.Contains(b.ID, "/")
	})
	if at < 0 {
		t.Fatal("nothing is divided")
	}
	cut, whole := plan.Batches[at], 0
	for _, b := range plan.Batches {
		if b.Code == cut.Code && b.How == "whole" {
			whole += b.Count
		}
	}
	pieces := 0
	for _, b := range plan.Batches {
		if b.Code == cut.Code && b.How == "divided" {
			pieces += b.Count
		}
	}
	woken := cut.Starts[0].Week.AddDays(8)
	write(t, d, woken.String(), "woken", fmt.Sprintf(`{"lot":%q,"count":%d,"to":{"place":"warm room"}}`, cut.Code, cut.Parents))
	write(t, d, woken.AddDays(12).String(), "divided", fmt.Sprintf(`{"from":%q,"place":"warm room","clumps":%d,"good":%d,"to":{"place":"warm room"}}`, cut.Code, cut.Parents, pieces-1))
	now := woken.AddDays(14)
	plan, _ = seasonNow(t, d, now).PlanFollowed()
	kept := map[string]int{}
	for _, b := range plan.Batches {
		if b.Code == cut.Code {
			kept[b.How] += b.Count
			if b.How == "divided" && b.Starts[0].Week != woken.Monday() {
				t.Errorf("woken on %v, it starts in the week of %v", woken, b.Starts[0].Week)
			}
		}
	}
	if !plan.Held || kept["divided"] != pieces-1 || kept["whole"] != whole {
		t.Errorf("of %d pieces and %d clumps it keeps %v: %q", pieces, whole, kept, plan.Otherwise)
	}
	replayedFollowed(t, d, now, plan)
}

// replayedFollowed replays the plan that is followed, with the stock of before anything was started.
func replayedFollowed(t *testing.T, d *Scratch, now civil.Date, plan *season.Plan) {
	t.Helper()
	g, follows := d.following()
	brief := g.Brief(now)
	brief.Asked.OutFrom = follows.Decisions.OutFrom
	brief.Given.Stock, brief.Given.Growing = g.StockOf(follows.Stock)
	testkit.Replayed(t, brief, []*season.Plan{plan})
}
