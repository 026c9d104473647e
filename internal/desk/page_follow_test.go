package desk

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/season"
	"eyeup/stock"
)

// bestOf looks for the best plans of the invented garden in few of its years, for as long as it
// takes to have some. More may be wanted of some varieties, kind/name, than it says.
func bestOf(t *testing.T, more ...string) (*Scratch, *SeasonAnswer) {
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
func hold(t *testing.T, d *Scratch, plan string) *SeasonAnswer {
	t.Helper()
	body, err := d.HoldBest(provedOn, plan)
	if err != nil {
		t.Fatal(err)
	}
	write(t, d, provedOn.String(), "decided", string(body))
	return seasonNow(t, d, provedOn)
}

// seasonNow waits for the season as the book has it.
func seasonNow(t *testing.T, d *Scratch, today civil.Date) *SeasonAnswer {
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

// allOf is all that a plan tells, its name and what sets it beside others apart.
func allOf(t *testing.T, p season.Plan) string {
	t.Helper()
	p.Name, p.Held, p.Shared, p.BreakEven, p.Proof, p.DecideBy = "", false, nil, nil, nil, civil.Date{}
	p.Batches = slices.Clone(p.Batches)
	for i := range p.Batches {
		p.Batches[i].NoRoom = nil
	}
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
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
		want, _ := opened.planNamed(name)
		a := hold(t, d, name)
		plan, said := a.followed()
		if !said || !plan.Held || plan.Name != heldPrefix+name || a.Followed != plan.Name || a.NotFollowed != "" {
			t.Fatalf("%s: followed is %q: %s", name, plan.Name, a.NotFollowed)
		}
		if got, want := allOf(t, *plan), allOf(t, *want); got != want {
			t.Errorf("%s: followed\n%s\nnot\n%s", name, got, want)
		}
	}
	a := seasonNow(t, d, provedOn)
	plan, _ := a.followed()
	w, err := d.Week(provedOn)
	if err != nil || w.Plan != plan.Name || !w.Followed {
		t.Errorf("this week goes by %+v, %v", w, err)
	}
	if list, err := d.PlantingList(provedOn); err != nil || list.Plan != plan.Name {
		t.Errorf("the patch goes by %+v, %v", list, err)
	}
	against := d.Against(provedOn)
	if against == nil || against.Plan != plan.Name || len(against.Lots) == 0 || against.Promised.Cost != *rounded(plan.Cost.Total, 2) {
		t.Errorf("held against is %+v", against)
	}
	var byName, byPlan bytes.Buffer
	if err := d.Calendar(provedOn, provedOn.UTC(), &byPlan); err != nil {
		t.Fatal(err)
	}
	if _, err := CalendarOf(d.Garden(), plan.Name, provedOn, provedOn.UTC(), &byName); err != nil || byName.String() != byPlan.String() {
		t.Errorf("the calendar does not go by it: %v", err)
	}
	if fmt.Sprint(a.Jobs) != fmt.Sprint(a.JobsOf(plan.Name)) || len(a.Jobs) == 0 {
		t.Error("the jobs do not go by it")
	}
	if _, err := a.Decide(plan.Name); err == nil {
		t.Error("what is followed can be followed by its name")
	}
	g, err := OpenBookGarden(d.book)
	if err != nil {
		t.Fatal(err)
	}
	again, err := Season(g, provedOn, Unproved)
	if err != nil || again.Followed != plan.Name {
		t.Errorf("of the book by itself is followed %q, %v", again.Followed, err)
	}
	holds(t, "season", again)
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
	plan, _ := a.followed()
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
	plan, said := a.followed()
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

// TestDecisionsAreReadAsWritten reads a decision whose entry holds a plan: what is decided is what
// was, its levels to a thousandth of a degree.
func TestDecisionsAreReadAsWritten(t *testing.T) {
	_, a := exampleSeason(t)
	plan, err := a.planNamed(season.AsEarly)
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
	var said decision
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

// TestWhatIsDividedStays wakes and cuts clumps of a plan that is followed, late and with one piece
// fewer than decided: the plan keeps them as the book has them, the clumps that are raised whole
// too, and what comes of it holds when it is replayed.
func TestWhatIsDividedStays(t *testing.T) {
	d, _ := bestOf(t, "dahlia/Marl Pit")
	plan, _ := hold(t, d, season.AsEarly).followed()
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
	plan, _ = seasonNow(t, d, now).followed()
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
	g := d.Garden()
	brief := g.Brief(now)
	brief.Asked.OutFrom = g.follows.decisions.OutFrom
	brief.Given.Stock, brief.Given.Growing = g.stockOf(g.follows.stock)
	replayed(t, brief, []*season.Plan{plan})
}
