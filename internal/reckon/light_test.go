package reckon

import (
	"math"
	"testing"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/testkit"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/sun"
	"eyeup/weather"
)

// brightGarden has one year of weather with the same sun every day, 10 MJ/m², and a room
// that half of the light reaches, with lamps of 100 µmol/m²/s for 14 h.
func brightGarden() *garden.Garden {
	span := civil.Span{From: civil.MustOn(2027, 1, 1), To: civil.MustOn(2027, 3, 31)}
	m := weather.Member{Year: 2000, Span: span}
	for range span.Days() {
		d := weather.Unmeasured()
		d.Low, d.High, d.Sun = quantity.Celsius(0), quantity.Celsius(10), 10*quantity.MegajoulePerSquareMetre
		m.Days = append(m.Days, d)
	}
	lamps := &place.Lamps{Area: 1, Light: 100, Hours: 14}
	return &garden.Garden{
		Garden: &exchange.Garden{
			Name: "Fern Bank", Site: sun.Site{Latitude: 44},
			Places: []exchange.Place{
				{Name: "sill", Model: place.Steady{Daylight: 0.5}},
				{Name: "shelf", Model: place.Steady{Daylight: 0.5, Lamps: lamps}},
			},
		},
		Record: &weather.Record{}, Members: []weather.Member{m}, Span: span,
	}
}

// TestLightAddsUp: 10 MJ/m² are 20.2 mol at 7.265 mol to the kilowatt-hour (Faust & Logan
// 2018); lamps of 100 µmol/m²/s for 14 h give 5.04 mol. Daylight at 44 N: FAO 56's day 15
// of January has 9.1 h (equation 34 by hand), and the lamps make it 14.
func TestLightAddsUp(t *testing.T) {
	g := brightGarden()
	sill, err := Light(g, "sill")
	if err != nil {
		t.Fatal(err)
	}
	shelf, err := Light(g, "shelf")
	if err != nil {
		t.Fatal(err)
	}
	if len(sill.Months) != 3 || sill.Months[0].Month != "2027-01" {
		t.Fatalf("months %+v", sill.Months)
	}
	january, lit := sill.Months[0], shelf.Months[0]
	for what, row := range map[string][2]float64{
		"outside":           {january.OutsideMol, 20.18},
		"half of it inside": {january.InsideMol, 10.09},
		"with lamps":        {lit.InsideMol, 15.13},
		"daylight":          {january.DayLength, 9.1},
		"lamps wanting":     {january.LampHours, 4.9},
		"lit hours":         {lit.LitHours, 14},
		"lamps in excess":   {lit.LampHours, 0},
	} {
		tolerance := 0.006
		if what == "daylight" || what == "lamps wanting" {
			tolerance = 0.1 // the month's mean against its middle
		}
		if math.Abs(row[0]-row[1]) > tolerance {
			t.Errorf("%s: %g, want %g", what, row[0], row[1])
		}
	}
	if !january.IsShort || lit.IsShort || sill.Note == "" || shelf.Note != "" {
		t.Errorf("short days: sill %v %q, shelf %v %q", january.IsShort, sill.Note, lit.IsShort, shelf.Note)
	}
	testkit.Holds(t, "reckon light", sill)
}
