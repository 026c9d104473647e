package plans

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/testkit"
	"eyeup/quantity"
	"eyeup/season"
)

// The numbers of the drawn gardens that are tried each time; EYEUP_DRAWN, such as 100-150,
// tries others. Of these the first are searched for their best plans too.
var drawnTried = []uint64{35, 84, 16, 302, 5, 8, 85, 0, 4, 52, 78, 113}

// TestDrawnGardensHold works out the season of gardens drawn by chance, and replays every
// plan hour by hour.
func TestDrawnGardensHold(t *testing.T) {
	for _, number := range drawnNumbers(len(drawnTried), 5) {
		t.Run(fmt.Sprint(number), func(t *testing.T) {
			g, today := openDrawn(t, number)
			a, err := Season(g, nil, today)
			if err != nil {
				t.Fatal(err)
			}
			testkit.Replayed(t, g.Brief(today), a.Plans)
			followedAgain(t, g.Brief(today), a)
		})
	}
}

// TestBestOfDrawnGardensHold searches drawn gardens for their best plans, stops the search
// after some seasons, and replays what it has come to.
func TestBestOfDrawnGardensHold(t *testing.T) {
	const some = 30
	for _, number := range drawnNumbers(4, 1) {
		t.Run(fmt.Sprint(number), func(t *testing.T) {
			g, today := openDrawn(t, number)
			ctx, stop := context.WithCancel(t.Context())
			defer stop()
			a, err := Prove(ctx, g, nil, today, func(p Progress) {
				if p.Solves >= some {
					stop()
				}
			})
			if err != nil {
				t.Fatal(err)
			}
			testkit.Replayed(t, g.Brief(today), a.Plans)
			followedAgain(t, g.Brief(today), a)
			dearerIsEarlier(t, a.PriceOfEarly)
		})
	}
}

// dearerIsEarlier holds that along the price of early none costs more and gains less than
// another.
func dearerIsEarlier(t *testing.T, all []season.EarlyPoint) {
	t.Helper()
	for i := 1; i < len(all); i++ {
		if a, b := all[i-1], all[i]; b.TotalCost < a.TotalCost || b.GainWeeks < a.GainWeeks {
			t.Errorf("%q costs %.2f and gains %.2f weeks, %q %.2f and %.2f", a.Plan, a.TotalCost, a.GainWeeks, b.Plan, b.TotalCost, b.GainWeeks)
		}
	}
}

// followedAgain follows every plan, those on the price of early too, which are replayed as well:
// with nothing changed each comes out as it was.
func followedAgain(t *testing.T, brief season.Brief, a *SeasonAnswer) {
	t.Helper()
	for _, name := range a.PlanNames() {
		opened, err := a.Opened(name)
		if err != nil {
			t.Fatal(err)
		}
		p, _ := opened.PlanNamed(name)
		if len(opened.Plans) > len(a.Plans) {
			testkit.Replayed(t, brief, []*season.Plan{p})
		}
		r, err := season.Follow(brief, *p.Decisions)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := testkit.AllOf(t, *r.Plans[0]), testkit.AllOf(t, *p); got != want {
			t.Errorf("%s: followed\n%s\nnot\n%s", name, got, want)
		}
	}
}

// drawnNumbers are so many of the numbers that are tried, fewer in a short run, or those asked for.
func drawnNumbers(most, short int) []uint64 {
	var from, to uint64
	if n, _ := fmt.Sscanf(os.Getenv("EYEUP_DRAWN"), "%d-%d", &from, &to); n == 2 {
		var numbers []uint64
		for ; from < to; from++ {
			numbers = append(numbers, from)
		}
		return numbers
	}
	if testing.Short() {
		most = short
	}
	return drawnTried[:most]
}

// openDrawn opens a drawn garden in its first ten years, at the end of its autumn.
func openDrawn(t *testing.T, number uint64) (*garden.Garden, civil.Date) {
	t.Helper()
	folder := drawnGarden(t, number)
	g, err := garden.Open(folder, "drawn")
	if err != nil {
		t.Fatalf("%v\n%s", err, folder["garden.toml"].Data)
	}
	g.Members = g.Members[:10]
	if g.Site.Latitude < 0 {
		return g, civil.MustOn(2027, time.May, 20)
	}
	return g, civil.MustOn(2026, time.November, 20)
}

// TestEveryHeatedHouseIsTold holds that the report tells of each heated house how its heater
// fares, of a room that costs heat when it does, and where a price is lacking that it is.
func TestEveryHeatedHouseIsTold(t *testing.T) {
	for number, words := range map[uint64][]string{
		0:  {"glass 0, needed", "glass 1, needed"},
		11: {"warm room heated ", "heat needed, given ", "no price, no price"},
	} {
		g, today := openDrawn(t, number)
		if number == 11 {
			g.Prices.Electricity = quantity.Price[quantity.Energy]{}
		}
		a, err := Season(g, nil, today, Unproved)
		if err != nil {
			t.Fatal(err)
		}
		var page bytes.Buffer
		a.Print(&page, quantity.Metric)
		for _, said := range words {
			if !strings.Contains(page.String(), said) {
				t.Errorf("garden %d: nothing is said of %q", number, said)
			}
		}
		if strings.Contains(page.String(), "room held at") {
			t.Errorf("garden %d: a room without a thermostat is held at a level", number)
		}
	}
}

// TestTheBasisOfRoomIsRaised works out drawn gardens whose benches, filled on the basis of the years
// asked for, would suffice in fewer: they are filled again until they suffice in as many.
func TestTheBasisOfRoomIsRaised(t *testing.T) {
	for _, number := range []uint64{38, 42, 68} {
		g, today := openDrawn(t, number)
		a, err := Season(g, nil, today, Unproved)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range a.Plans {
			if p.FitsYears < p.Asked || p.Asked == 0 {
				t.Errorf("%d, %s: benches suffice in %d years, %d are asked for", number, p.Name, p.FitsYears, p.Asked)
			}
			if (p.Worst == nil) != (p.FitsYears == p.Years) || p.Worst != nil && p.Worst.ShortM2 <= 0 {
				t.Errorf("%d, %s: in %d of %d years, the worst %+v", number, p.Name, p.FitsYears, p.Years, p.Worst)
			}
		}
	}
}
