package reckon

import (
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/testkit"
	"eyeup/odds"
	"eyeup/place"
	"eyeup/quantity"
)

func degrees(c float64) *quantity.Temperature {
	t := quantity.Celsius(c)
	return &t
}

// twoWeeks are the first days of February.
func twoWeeks(level float64) HeatQuestion {
	return HeatQuestion{
		Place: "glass", Levels: []*quantity.Temperature{degrees(level)},
		From: civil.MonthDay{Month: time.February, Day: 1}, To: civil.MonthDay{Month: time.February, Day: 14},
	}
}

// The hours in the CSV file add up to the heat in the answer. The cost is the heat given times its price.
func TestHoursAddUpToHeat(t *testing.T) {
	g := coldGarden()
	g.Season.PlantYear = 2027
	g.Prices.Electricity = quantity.PriceOf(0.30, "USD", quantity.KilowattHour)
	q := twoWeeks(10)
	a, err := Heat(g, q)
	if err != nil {
		t.Fatal(err)
	}
	var file strings.Builder
	if err := HeatByHour(g, q, &file); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(file.String())).ReadAll()
	if err != nil || len(rows) != 1+3*14*24 {
		t.Fatalf("%d rows (%v)", len(rows), err)
	}
	sums := map[string][2]float64{}
	for _, row := range rows[1:] {
		asked, _ := strconv.ParseFloat(row[7], 64)
		given, _ := strconv.ParseFloat(row[8], 64)
		sums[row[0]] = [2]float64{sums[row[0]][0] + asked/1000, sums[row[0]][1] + given/1000}
	}
	var asked, given []float64
	for _, year := range sums {
		asked, given = append(asked, year[0]), append(given, year[1])
	}
	for what, pair := range map[string][2]odds.Amount{
		"asked": {a.Asked, odds.AmountOf(asked)}, "given": {a.Given, odds.AmountOf(given)},
	} {
		if math.Abs(pair[0].Middle-pair[1].Middle) > 0.3 || math.Abs(pair[0].High-pair[1].High) > 0.3 {
			t.Errorf("%s: %v by the answer, %v by its hours", what, pair[0], pair[1])
		}
	}
	if math.Abs(a.Cost.Middle-0.30*a.Given.Middle) > 0.05 || a.Currency != g.Currency {
		t.Errorf("%.2f %s for %.1f kWh at 0.30", a.Cost.Middle, a.Currency, a.Given.Middle)
	}
	if a.Given.High >= a.Asked.High || a.Short.High == 0 {
		t.Errorf("2 kW sufficed at -10 °C: %+v", a.HeatLevel)
	}
	last := a.Holds[len(a.Holds)-1]
	if len(a.Holds) != 3 || last.Holds != 10 || last.EveryYear <= 2000 || last.EveryYear < last.NineInTen {
		t.Errorf("heaters that hold: %+v", a.Holds)
	}
	if d := a.Nights[0].Date; d.Year() != 2002 || d.Month() != time.February {
		t.Errorf("the coldest night is %v; the coldest weather is that of 2002", d)
	}
}

// By hand: a loss of L over days whose outside swings about a mean well below the level
// asks for L·(level − mean)·24 h a day, since it is never warmer outside.
func TestHeatByHand(t *testing.T) {
	g := coldGarden()
	g.Season.PlantYear = 2027
	a, err := Heat(g, twoWeeks(18))
	if err != nil {
		t.Fatal(err)
	}
	r, err := newHeating(g, twoWeeks(18))
	if err != nil {
		t.Fatal(err)
	}
	mean, _ := r.outside(a.Span)
	want := a.Loss * (18 - mean.Celsius()) * 24 * 14 / 1000
	if math.Abs(a.ByHand-want) > 0.02*want {
		t.Errorf("%.0f kWh by hand, want %.0f", a.ByHand, want)
	}
	// A published greenhouse simulation came 9 % below the degree-day figure (ASAE, abstract);
	// here the sun of clear winter days is counted as well.
	if a.Asked.Middle > a.ByHand || a.Asked.Middle < 0.5*a.ByHand {
		t.Errorf("%.0f kWh asked, %.0f by hand", a.Asked.Middle, a.ByHand)
	}
}

func TestSeveralLevels(t *testing.T) {
	g := coldGarden()
	g.Season.PlantYear = 2027
	q := twoWeeks(4)
	q.Levels = append(q.Levels, degrees(10), nil)
	a, err := Heat(g, q)
	if err != nil {
		t.Fatal(err)
	}
	testkit.Holds(t, "reckon heat", a)
	if len(a.Levels) != 3 || a.Levels[0].Asked != a.Asked || !(a.Levels[1].Asked.Middle > a.Asked.Middle) || a.Levels[2].Asked.High != 0 {
		t.Errorf("%+v", a.Levels)
	}
	if !math.IsNaN(a.Cost.Middle) || !strings.Contains(a.CostReason, "price of electricity") {
		t.Errorf("cost %v: %q", a.Cost, a.CostReason)
	}
}

// A room of 20 °C at 50 W/K asks for 50·(20 − outside) in every hour.
func TestHeatOfARoom(t *testing.T) {
	g := coldGarden()
	g.Season.PlantYear = 2027
	g.Places = append(g.Places, exchange.Place{Name: "room", Sort: exchange.Room, Model: place.Steady{Temperature: twelve(20), HeatPerKelvin: 50}})
	q := twoWeeks(20)
	q.Place = "room"
	a, err := Heat(g, q)
	if err != nil {
		t.Fatal(err)
	}
	r, err := newHeating(g, q)
	if err != nil {
		t.Fatal(err)
	}
	mean, _ := r.outside(a.Span)
	var sum float64
	for i := range r.hours {
		_, given, _ := r.heatOfHours(r.hours[i], place.Off())
		from := 24 * int(a.Span.From.Sub(g.Span.From))
		for _, w := range given[from : from+24*14] {
			sum += w / 1000
		}
	}
	want := 50 * (20 - mean.Celsius()) * 24 * 14 / 1000
	if math.Abs(sum/3-want) > 0.01*want || math.Abs(a.Loss-50) > 1e-9 {
		t.Errorf("%.1f kWh in a mean year, want %.1f", sum/3, want)
	}
}

// Soil that never gets warm enough has no date; the answer says in how many years.
func TestSoilThatStaysCold(t *testing.T) {
	g := coldGarden()
	g.Season.PlantYear = 2027
	a, err := Soil(g, SoilQuestion{Reach: quantity.Celsius(15.6)})
	if err != nil {
		t.Fatal(err)
	}
	testkit.Holds(t, "reckon soil", a)
	if !a.Date.Middle.IsZero() || a.Never != 3 || a.Reason == "" || a.Place != "patch" {
		t.Errorf("%+v", a)
	}
	a, err = Soil(g, SoilQuestion{Reach: quantity.Celsius(-5)})
	if err != nil {
		t.Fatal(err)
	}
	if want := civil.MustOn(2027, time.January, 1); a.Date.Early != want || a.Date.Late != want {
		t.Errorf("soil that is always warm enough is so from %v, want %v", a.Date, want)
	}
}
