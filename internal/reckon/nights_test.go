package reckon

import (
	"math"
	"strings"
	"testing"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/testkit"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/stock"
	"eyeup/sun"
	"eyeup/weather"
)

// coldGarden has three years of weather: nights of -2, -6 and -10 °C.
func coldGarden() *garden.Garden {
	span := civil.Span{From: civil.MustOn(2026, 9, 1), To: civil.MustOn(2027, 12, 31)}
	g := &garden.Garden{Record: &weather.Record{}, Span: span, Sky: weather.Sky{Coefficient: 0.16}}
	for i, low := range []float64{-2, -6, -10} {
		m := weather.Member{Year: 2000 + i, Span: span}
		for range span.Days() {
			d := weather.Unmeasured()
			d.Low, d.High = quantity.Celsius(low), quantity.Celsius(low+8)
			m.Days = append(m.Days, d)
		}
		g.Members = append(g.Members, m)
	}
	house := place.Covered{
		Length: 7, Width: 3.6, Eaves: 1.8, Ridge: 2.6, Cover: place.Cover{Name: "film", U: 7, Light: 0.8}, AirChanges: 1,
		Heater: &place.Heater{Power: 2 * quantity.Kilowatt, Fuel: "electricity", Efficiency: 1}, Vent: place.Vent{Opens: quantity.Celsius(24)},
	}
	levels := []place.Setting{place.Off(), place.Steadily(quantity.Celsius(10)), place.Steadily(quantity.Celsius(5))}
	dahlia := stock.Variety{Name: "Pale Heron", Kind: "dahlia"}
	g.Garden = &exchange.Garden{
		Name: "Fern Bank", Site: sun.Site{Latitude: 44},
		Places: []exchange.Place{
			{Name: "cellar", Sort: exchange.Store, Model: place.Steady{Temperature: twelve(6)}},
			{Name: "glass", Sort: exchange.Glass, Model: house, Levels: levels},
			{Name: "patch", Sort: exchange.Ground, Model: place.UsualGround()},
		},
		Stock: []stock.Holding{
			{Code: "A", Variety: dahlia, Form: stock.Clump, Count: 9, Place: "cellar"},
			{Code: "B", Variety: dahlia, Form: stock.Pot, Count: 4, Place: "glass"},
			{Code: "C", Variety: dahlia, Form: stock.Pot, Count: 3, Place: "patch"},
			{Code: "D", Variety: dahlia, Form: stock.Clump, Count: 2, Place: "patch"},
			{Code: "E", Variety: stock.Variety{Name: "Nobody", Kind: "unheard of"}, Form: stock.Pot, Count: 2, Place: "patch"},
		},
	}
	return g
}

func twelve(celsius float64) (t [12]quantity.Temperature) {
	for m := range t {
		t[m] = quantity.Celsius(celsius)
	}
	return t
}

func TestNights(t *testing.T) {
	g := coldGarden()
	a, err := Nights(g, NightsQuestion{From: civil.MustOn(2027, 2, 10), Nights: 7})
	if err != nil {
		t.Fatal(err)
	}
	testkit.Holds(t, "reckon nights", a)
	if a.Outside.Low != -10 || a.Outside.Middle != -6 || a.Outside.High != -2 || a.Freezes != 1 || a.Years != 3 {
		t.Errorf("outside %+v", a)
	}
	cellar, glass, patch := a.Places[0], a.Places[1], a.Places[2]
	if cellar.Level != nil || cellar.Inside.Low != 6 || len(cellar.AtRisk) != 0 || cellar.Short.High != 0 {
		t.Errorf("cellar %+v", cellar)
	}
	if glass.Level == nil || *glass.Level != 5 {
		t.Fatalf("glass is held at the lowest of its levels: %+v", glass)
	}
	// 2 kW against some 500 W/K hold about 4 K: short in every year, and colder
	// than the 10 °C level would leave it by nothing, since the heater gives all it has.
	if glass.Fails != 1 || glass.Short.High < 5 || math.Abs(glass.Inside.Low+glass.Short.High-5) > 0.02 {
		t.Errorf("glass %+v", glass)
	}
	if len(glass.AtRisk) != 1 || glass.AtRisk[0].Code != "B" || glass.AtRisk[0].Harmed != 1 || glass.AtRisk[0].Effect != "set back" {
		t.Errorf("at risk under glass: %+v", glass.AtRisk)
	}
	// Clumps in the ground are sheltered, and what has no figures is not judged.
	if len(patch.AtRisk) != 1 || patch.AtRisk[0].Code != "C" || patch.AtRisk[0].Frozen != 1 {
		t.Errorf("at risk in the patch: %+v", patch.AtRisk)
	}
	out := testkit.Narrow(t, a)
	for _, want := range []string{"glass drops below 5 °C: always", "carry in or cover: 3 Pale Heron in the patch"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
}

// A given low replaces tonight's low in every year.
func TestNightsWithTypedLow(t *testing.T) {
	g := coldGarden()
	mild, frozen := quantity.Celsius(8), quantity.Celsius(-20)
	level := quantity.Celsius(10)
	a, err := Nights(g, NightsQuestion{From: civil.MustOn(2027, 2, 10), Nights: 1, Low: &mild, Level: &level})
	if err != nil {
		t.Fatal(err)
	}
	testkit.Holds(t, "reckon nights", a)
	if a.Outside.Low != 8 || a.Outside.High != 8 || a.Freezes != 0 || *a.Typed != 8 || *a.Places[1].Level != 10 {
		t.Errorf("%+v", a)
	}
	colder, err := Nights(g, NightsQuestion{From: civil.MustOn(2027, 2, 10), Nights: 1, Low: &frozen, Level: &level})
	if err != nil {
		t.Fatal(err)
	}
	if !(colder.Places[1].Short.Middle > a.Places[1].Short.Middle) {
		t.Errorf("a colder night leaves the glass short by %g, a mild one by %g", colder.Places[1].Short.Middle, a.Places[1].Short.Middle)
	}
	testkit.Narrow(t, colder)
}

// The nights are found by month and day, whatever the year, also at both ends of the season.
func TestNightsAreFoundInTheSeason(t *testing.T) {
	season := coldGarden().Span
	for _, row := range []struct{ asked, first string }{
		{"2027-02-10", "2027-02-10"}, {"2031-02-10", "2027-02-10"}, {"2027-09-03", "2027-09-03"},
		{"2027-12-30", "2026-12-30"}, {"2028-02-29", "2027-02-28"},
	} {
		asked, _ := civil.Parse(row.asked)
		w := nightsIn(season, asked, 7)
		if got := w.span.From.AddDays(civil.Days(w.tonight)).String(); got != row.first {
			t.Errorf("%s is found on %s, want %s", row.asked, got, row.first)
		}
		if w.to != 24*int(w.span.Days())-12 || w.from < 12 {
			t.Errorf("%s: hours %d to %d of %d days", row.asked, w.from, w.to, w.span.Days())
		}
	}
}

func TestNightsRefuses(t *testing.T) {
	g := coldGarden()
	hot := quantity.Celsius(80)
	for _, q := range []NightsQuestion{{Nights: 0}, {Nights: 31}, {Nights: 1, Low: &hot}} {
		q.From = civil.MustOn(2027, 2, 10)
		if _, err := Nights(g, q); err == nil {
			t.Errorf("%+v was answered", q)
		}
	}
}

// TestNoCoverIsPromisedMoreThanItsLift gives tonight's low and turns the heaters off. No house or frame may
// be warmer than the low by more than the measured lift of its cover, and tender stock in it is named.
func TestNoCoverIsPromisedMoreThanItsLift(t *testing.T) {
	g, err := garden.OpenDemo(civil.MustOn(2027, 4, 20))
	if err != nil {
		t.Fatal(err)
	}
	var covered []string
	for _, p := range g.Places {
		if _, is := p.Model.(place.Covered); is {
			covered = append(covered, p.Name)
			g.Stock = append(g.Stock, stock.Holding{Code: p.Name, Variety: stock.Variety{Name: "Pale Heron", Kind: "dahlia"}, Form: stock.Pot, Count: 5, Place: p.Name})
		}
	}
	if len(covered) < 2 {
		t.Fatalf("the garden has only %v", covered)
	}
	for _, celsius := range []float64{-2, -5, -15} {
		low := quantity.Celsius(celsius)
		a, err := Nights(g, NightsQuestion{From: civil.MustOn(2027, 4, 20), Nights: 1, Low: &low, Off: true})
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range a.Places {
			at, _ := g.Place(p.Name)
			house, is := at.Model.(place.Covered)
			if !is {
				continue
			}
			if lift := p.Inside.High - celsius; lift > float64(house.Cover.FrostLift)+0.01 { // rounded
				t.Errorf("with a low of %g °C %s is promised %.2f K more; its cover lifts %.2f K", celsius, p.Name, lift, float64(house.Cover.FrostLift))
			}
			named := false
			for _, r := range p.AtRisk {
				named = named || r.Code == p.Name
			}
			if p.Level != nil || !named && celsius < -4 {
				t.Errorf("with a low of %g °C in %s, level %v, dahlias in leaf are named: %v", celsius, p.Name, p.Level, named)
			}
		}
	}
}

// TestNoHourIsColderThanTheTypedLow gives tonight's low in a winter that was far colder in some years. The
// open ground is as cold as that low in every year, and no colder.
func TestNoHourIsColderThanTheTypedLow(t *testing.T) {
	g, err := garden.OpenDemo(civil.MustOn(2027, 1, 20))
	if err != nil {
		t.Fatal(err)
	}
	low := quantity.Celsius(-6)
	a, err := Nights(g, NightsQuestion{From: civil.MustOn(2027, 1, 20), Nights: 1, Low: &low})
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range a.Places {
		if at, _ := g.Place(p.Name); at.Sort == exchange.Ground && (p.Inside.Low < -6.01 || p.Inside.High > -4.5) {
			t.Errorf("with a low of -6 °C %s is from %g to %g °C cold", p.Name, p.Inside.Low, p.Inside.High)
		}
	}
}
