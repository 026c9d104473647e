package picture

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"os"
	"slices"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/season"
)

var update = flag.Bool("update", false, "write the golden drawing anew; look at it before committing")

// small is a plan made up for the drawing: two groups from a warm room to glass to the
// patch, one straight into the ground, and more in the glass than it holds.
func small() Season {
	on := func(m time.Month, d int) civil.Date { return civil.MustOn(2027, m, d) }
	when := func(d civil.Date) civil.When {
		return civil.When{Early: d.AddDays(-7), Middle: d, Late: d.AddDays(9)}
	}
	weeks := func(room float64, used func(civil.Date) float64, cost func(civil.Date) float64) []season.PlaceWeek {
		var all []season.PlaceWeek
		for _, m := range (civil.Span{From: on(time.February, 1), To: on(time.November, 1)}).Mondays() {
			w := season.PlaceWeek{Week: m, RoomM2: room, UsedM2: used(m)}
			if c := cost(m); c > 0 {
				w.Cost = &odds.Amount{Low: c / 2, Middle: c, High: 2 * c}
			}
			all = append(all, w)
		}
		return all
	}
	within := func(area float64, from, to civil.Date) func(civil.Date) float64 {
		return func(d civil.Date) float64 {
			if d.Before(from) || !d.Before(to) {
				return 0
			}
			return area
		}
	}
	nothing := func(civil.Date) float64 { return 0 }
	batch := func(name, colour string, count int, start, hand, out, flower civil.Date, area float64) season.BatchPlan {
		return season.BatchPlan{
			ID: name, Kind: "dahlia", Timing: name, Colour: colour, Count: count,
			Dates: season.Dates{Start: start, PlantOut: when(out), FirstFlower: when(flower)},
			Stays: []season.Stay{
				{Place: "warm room", From: start, To: hand, AreaM2: area},
				{Place: "lean-to", From: hand, To: out, AreaM2: 2.5 * area},
				{Place: "patch", From: out, To: on(time.October, 1), AreaM2: 7 * area},
			},
		}
	}
	direct := season.BatchPlan{
		ID: "mid", Kind: "dahlia", Timing: "mid", Colour: "#b3261e", Count: 40,
		Dates: season.Dates{Start: on(time.May, 17), PlantOut: when(on(time.May, 17)), FirstFlower: when(on(time.August, 9))},
		Stays: []season.Stay{{Place: "patch", From: on(time.May, 17), To: on(time.October, 1), AreaM2: 8}},
	}
	plan := &season.Plan{
		Name: "drawn by hand", FirstFlower: when(on(time.July, 12)), GainWeeks: odds.Exactly(4.2),
		Cost: season.Cost{Currency: "USD", Total: 212},
		Batches: []season.BatchPlan{
			batch("late", "#f4efe4", 30, on(time.March, 29), on(time.April, 19), on(time.May, 24), on(time.July, 20), 1),
			batch("early", "#d9962e", 24, on(time.April, 12), on(time.May, 3), on(time.May, 24), on(time.June, 28), 0.8), direct,
		},
		Places: []season.PlacePlan{
			{Place: "warm room", Sort: "room", Weeks: weeks(3, within(1.8, on(time.March, 29), on(time.May, 3)), nothing)},
			{Place: "lean-to", Sort: "glass", Heat: &season.PlaceHeat{}, Level: quantity.Fahrenheit(50), HeatedFrom: on(time.April, 16), HeatedTo: on(time.May, 24),
				Weeks: weeks(4, within(4.5, on(time.April, 19), on(time.May, 24)), within(14, on(time.April, 12), on(time.May, 24)))},
			{Place: "patch", Sort: "ground", Weeks: weeks(30, within(21, on(time.May, 17), on(time.October, 4)), nothing)},
		},
	}
	s := Season{Garden: "Tamsel Hollow", Plan: plan, Units: quantity.US}
	for i, m := range (civil.Span{From: on(time.February, 1), To: on(time.November, 1)}).Mondays() {
		s.Frost = append(s.Frost, season.FrostWeek{Week: m, Share: max(0, 1-float64(i)/15)})
	}
	return s
}

// TestDrawing holds the drawing to one that was looked at, at 390 pixels and in grey.
func TestDrawing(t *testing.T) {
	const golden = "testdata/season.svg"
	got := Draw(small())
	if *update {
		if err := os.WriteFile(golden, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("the drawing differs from %s; look at it, then run with -update", golden)
	}
}

// TestDrawingIsXML reads the drawing with another's parser, with names that would break out of it.
func TestDrawingIsXML(t *testing.T) {
	s := small()
	s.Garden = `Rook & Row <"late">`
	s.Plan.Batches[0].Timing = "<script>alert(1)</script>"
	d := xml.NewDecoder(bytes.NewReader(Draw(s)))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		if e, ok := token.(xml.StartElement); ok && e.Name.Local == "script" {
			t.Fatal("a name became an element")
		}
	}
}

// TestRibbonsDoNotOverlap lays ribbons into a band: those there at the same time never
// share room, and what does not fit hangs out rather than hiding.
func TestRibbonsDoNotOverlap(t *testing.T) {
	b := &band{y: 100, tall: 60, room: 4}
	var slots []slot
	for i := range 12 {
		from := float64(20 * (i % 5))
		slots = append(slots, b.take(slot{from: from, to: from + 50, tall: float64(5 + i)}))
	}
	for i, s := range slots {
		for _, u := range slots[:i] {
			together := s.from < u.to && u.from < s.to
			if together && s.y < u.y+u.tall-1e-9 && u.y < s.y+s.tall-1e-9 {
				t.Errorf("%v and %v share room", s, u)
			}
		}
	}
}

// TestATooSmallPatchHoldsItsRibbons draws more into the patch than it has room for: all ribbons
// stand in its band, and leave what is drawn beneath it alone.
func TestATooSmallPatchHoldsItsRibbons(t *testing.T) {
	s := small()
	patch := &s.Plan.Places[len(s.Plan.Places)-1]
	for i := range patch.Weeks {
		patch.Weeks[i].RoomM2 = 5
	}
	c := &course{Season: s}
	c.gather()
	c.span()
	c.drawing = begin(c.layOut(), "", "")
	c.place()
	ground := c.bands[len(c.bands)-1]
	if len(ground.taken) != len(c.ribbons) {
		t.Fatalf("%d of %d ribbons end in the patch", len(ground.taken), len(c.ribbons))
	}
	for _, slot := range ground.taken {
		if foot := slot.y + slot.tall; foot > ground.y+ground.tall+1e-6 {
			t.Errorf("a ribbon hangs %.1f pixels out of the patch", foot-ground.y-ground.tall)
		}
	}
}

// TestABenchThatSufficesHoldsItsRibbons makes every stay thrice as thick, as where plants take most
// at different times: ribbons stand in their bands wherever no week lacks room, share none, and
// hang out where one does.
func TestABenchThatSufficesHoldsItsRibbons(t *testing.T) {
	for _, lacks := range []bool{false, true} {
		s := small()
		room := &s.Plan.Places[slices.IndexFunc(s.Plan.Places, func(p season.PlacePlan) bool { return p.Sort == "glass" })]
		for i := range room.Weeks {
			room.Weeks[i].UsedM2 = min(room.Weeks[i].UsedM2, room.Weeks[i].RoomM2)
		}
		if lacks {
			room.Weeks[20].UsedM2 = room.Weeks[20].RoomM2 + 1
		}
		c := &course{Season: s}
		c.gather()
		for _, r := range c.ribbons {
			for i := range r.stays {
				r.stays[i].AreaM2 *= 3
			}
		}
		c.span()
		c.drawing = begin(c.layOut(), "", "")
		c.place()
		for _, b := range c.bands {
			hangs := b.foot() > b.y+b.tall+1e-3
			if lacks && b.Place == room.Place {
				if !hangs {
					t.Errorf("%s lacks room, and no ribbon hangs out", b.Place)
				}
			} else if hangs {
				t.Errorf("%s suffices, and ribbons hang %.1f pixels out of it", b.Place, b.foot()-b.y-b.tall)
			}
		}
	}
}
