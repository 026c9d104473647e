package plans

import (
	"bytes"
	"errors"
	"io/fs"
	"math"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"
	"unicode/utf8"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/opendata"
	"eyeup/internal/report"
	"eyeup/internal/testkit"
	"eyeup/quantity"
	"eyeup/season"
)

// autumn is the day on which the seasons of the tests are worked out.
var autumn = civil.MustOn(2026, time.November, 16)

func exampleGarden(t testing.TB) *garden.Garden {
	t.Helper()
	g, err := garden.Open(opendata.Example(t), "example")
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func seasonOf(t testing.TB, g *garden.Garden) *SeasonAnswer {
	t.Helper()
	a, err := Season(g, nil, autumn)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// worked is the season of the example garden, worked out once for all tests that only look.
var worked struct {
	once   sync.Once
	garden *garden.Garden
	season *SeasonAnswer
}

func exampleSeason(t testing.TB) (*garden.Garden, *SeasonAnswer) {
	t.Helper()
	worked.once.Do(func() {
		worked.garden = exampleGarden(t)
		worked.season = seasonOf(t, worked.garden)
	})
	return worked.garden, worked.season
}

func TestSeasonFollowsItsSchema(t *testing.T) {
	_, a := exampleSeason(t)
	testkit.Holds(t, "season", a)
}

// TestSeasonRepeats works out the same season twice: same brief, same bytes.
func TestSeasonRepeats(t *testing.T) {
	var first, second bytes.Buffer
	for _, w := range []*bytes.Buffer{&first, &second} {
		a := seasonOf(t, exampleGarden(t))
		if err := report.WriteJSON(w, a); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) {
		t.Error("the same garden gave two different seasons")
	}
}

// TestSeasonIgnoresTheOrderOfRows shuffles the stock: the plans are the same.
func TestSeasonIgnoresTheOrderOfRows(t *testing.T) {
	_, a := exampleSeason(t)
	g := exampleGarden(t)
	slices.Reverse(g.Stock)
	b := seasonOf(t, g)
	for i := range a.Plans {
		if a.Plans[i].Cost.Total != b.Plans[i].Cost.Total || a.Plans[i].GainWeeks != b.Plans[i].GainWeeks {
			t.Errorf("%s: %v and %v", a.Plans[i].Name, a.Plans[i].Cost, b.Plans[i].Cost)
		}
	}
}

// TestTotalsAddUp adds every total again from its parts.
func TestTotalsAddUp(t *testing.T) {
	g, a := exampleSeason(t)
	near := func(name string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-6 {
			t.Errorf("%s: %v, but its parts add to %v", name, got, want)
		}
	}
	for _, p := range a.Plans {
		c := p.Cost
		near(p.Name+" total", c.Total, c.Heat+c.Light+c.Mix+c.Work)
		mix, hours := 0.0, 0.0
		for _, n := range p.ToGet {
			mix += n.Cost
		}
		near(p.Name+" mix", c.Mix, mix)
		for _, w := range p.Work {
			hours += w.Hours
		}
		near(p.Name+" hours", c.WorkHours, hours)
		for _, b := range p.Batches {
			started := 0
			for _, s := range b.Starts {
				started += s.Count
			}
			if started != b.Count {
				t.Errorf("%s %s: %d started of %d", p.Name, b.ID, started, b.Count)
			}
		}
		conserved(t, g, p)
		for _, pl := range p.Places {
			for _, w := range pl.Weeks {
				if w.Week.Weekday() != time.Monday {
					t.Errorf("%s: the week %v does not begin on a Monday", pl.Place, w.Week)
				}
				if pl.Sort != "ground" && w.RoomM2 > 0 && w.UsedM2 > w.RoomM2+0.005 {
					t.Errorf("%s %s: %v m² used of %v in %v", p.Name, pl.Place, w.UsedM2, w.RoomM2, w.Week)
				}
			}
		}
	}
}

// conserved reports a lot of which more is used than stands in store, or that is neither
// raised in the number wanted nor told short.
func conserved(t *testing.T, g *garden.Garden, p *season.Plan) {
	t.Helper()
	for _, h := range g.Stock {
		if slices.ContainsFunc(p.NotCovered, func(n season.NotCovered) bool { return n.Variety == h.Variety.Name }) {
			continue
		}
		used, raised, short := 0, 0, 0.0
		cut := map[string]bool{}
		for _, b := range p.Batches {
			if b.Code != h.Code {
				continue
			}
			raised += b.Count
			switch root := strings.Split(b.ID, "/")[0]; {
			case b.How == "whole":
				used += b.Count
			case b.How == "divided" && !cut[root]:
				used, cut[root] = used+b.Parents, true
			}
		}
		for _, s := range p.Shortfalls {
			if s.Variety == h.Variety.Name {
				short += s.Short
			}
		}
		if h.Form != "seed" && used > h.Count {
			t.Errorf("%s %s: %d clumps used of %d", p.Name, h.Variety.Name, used, h.Count)
		}
		if float64(raised)+short < float64(h.Plant+h.Reserve) {
			t.Errorf("%s %s: %d raised and %g told short of %d wanted", p.Name, h.Variety.Name, raised, short, h.Plant+h.Reserve)
		}
	}
}

// TestUsualPlanIsUsual holds the usual plan to common practice: dahlias are started four
// to six weeks before the average last frost, and none flowers before it is planted out.
func TestUsualPlanIsUsual(t *testing.T) {
	_, a := exampleSeason(t)
	last := a.Frost.Spring.Middle.In(2027)
	for _, b := range a.Plans[1].Batches {
		if b.Dates.FirstFlower.Early.Before(b.Dates.PlantOut.Middle) {
			t.Errorf("%s flowers on %v, before it is planted out on %v", b.Variety, b.Dates.FirstFlower.Early, b.Dates.PlantOut.Middle)
		}
		if b.Kind != "dahlia" {
			continue
		}
		before := float64(last.Sub(b.Dates.Start)) / 7
		if before < 3.5 || before > 6.5 { // a start is a Monday
			t.Errorf("%s starts %.1f weeks before the average last frost, not 4 to 6", b.Variety, before)
		}
	}
}

// TestPlansAreInOrder holds the three plans to what their names say: earlier costs more
// heat and gains more.
func TestPlansAreInOrder(t *testing.T) {
	_, a := exampleSeason(t)
	none, usual, early := a.Plans[0], a.Plans[1], a.Plans[2]
	if none.Cost.Heat != 0 {
		t.Errorf("the plan without added heat pays %v for heat", none.Cost.Heat)
	}
	if !(none.GainWeeks.Middle < usual.GainWeeks.Middle && usual.GainWeeks.Middle < early.GainWeeks.Middle) {
		t.Errorf("weeks gained are not in order: %v %v %v", none.GainWeeks, usual.GainWeeks, early.GainWeeks)
	}
	if early.GainWeeks.High > 9 {
		t.Errorf("%v weeks gained is more than a grower believes", early.GainWeeks)
	}
}

// TestReportIsOnePage holds the report to 80 columns and a page, with what to do this
// week first.
func TestReportIsOnePage(t *testing.T) {
	_, example := exampleSeason(t)
	g, err := garden.OpenDemo(autumn)
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range []*SeasonAnswer{example, seasonOf(t, g)} {
		var report bytes.Buffer
		a.Print(&report, quantity.US)
		lines := strings.Split(strings.TrimRight(report.String(), "\n"), "\n")
		if !strings.HasPrefix(lines[0], "This week") {
			t.Errorf("%s: the first line is %q", a.Garden, lines[0])
		}
		if len(lines) > 66 {
			t.Errorf("%s: %d lines are more than a page of 66", a.Garden, len(lines))
		}
		for _, l := range lines {
			if n := utf8.RuneCountInString(l); n > 80 {
				t.Errorf("%s: %d columns: %s", a.Garden, n, l)
			}
		}
	}
}

// TestNothingIsDropped gives a kind without figures: it is named with its count.
func TestNothingIsDropped(t *testing.T) {
	folder := opendata.Example(t).(fstest.MapFS)
	stock := string(folder["stock.csv"].Data) + "A2345,Odd One,fuchsia,clump,3,cellar,5,bare,,,,3,0,\n"
	folder["stock.csv"] = &fstest.MapFile{Data: []byte(strings.Replace(stock, "A2345", "", 1))}
	g, err := garden.Open(folder, "example")
	if err != nil {
		t.Fatal(err)
	}
	a := seasonOf(t, g)
	if !slices.ContainsFunc(a.NotCovered, func(n season.NotCovered) bool { return n.Variety == "Odd One" && n.Count == 3 && n.Why != "" }) {
		t.Errorf("three fuchsias were dropped: %v", a.NotCovered)
	}
}

func TestSeasonThatIsOver(t *testing.T) {
	if _, err := Season(exampleGarden(t), nil, civil.MustOn(2028, time.March, 1)); err == nil || !strings.Contains(err.Error(), "plant_year") {
		t.Errorf("a season that is over gave %v", err)
	}
	if _, err := garden.Open(fstest.MapFS{}, "nowhere"); err == nil || errors.Is(err, fs.ErrPermission) {
		t.Errorf("an empty folder gave %v", err)
	}
}

// A loss of half a day is no week, and has no sign.
func TestWeeksHaveNoMinusNought(t *testing.T) {
	for x, want := range map[float64]string{-0.04: "0.0", 0: "0.0", -0.06: "-0.1", 2.25: "2.3", math.NaN(): "-"} {
		if got := Weeks(x); got != want {
			t.Errorf("%g weeks are told as %s, want %s", x, got, want)
		}
	}
}
