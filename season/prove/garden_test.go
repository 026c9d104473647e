package prove

import (
	"fmt"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/frost"
	"eyeup/internal/opendata"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/stock"
	"eyeup/sun"
	"eyeup/weather"
	"eyeup/weather/ghcn"
)

// waterville is a brief at Waterville, Maine, 1981-2010: a warm room with a lit shelf, a
// twin-wall house of 3.6 by 7.3 m with 6 kW, and a patch.
func waterville(t testing.TB) season.Brief {
	t.Helper()
	records, err := ghcn.ReadTable(opendata.Open(t, "daily/USC00179151_waterville-me_and_niles-mi.csv"))
	if err != nil {
		t.Fatal(err)
	}
	var record *weather.Record
	for _, r := range records {
		if r.Station.ID == "USC00179151" {
			record = r
		}
	}
	site := sun.Site{Latitude: 44.55, Longitude: -69.63, Elevation: 27}
	b := season.Brief{
		Given: season.Given{
			Garden: "test", Site: site, Span: season.Span(2027, site), Today: civil.MustOn(2026, time.November, 1),
			Freezes:      frost.Dates(record, site, quantity.Celsius(0), 1981, 2010),
			HoursPerWeek: 12, Kinds: culture.Lookup, Places: places(site),
			Prices: season.Prices{Currency: "USD", Electricity: season.Price{Amount: 0.30, Known: true}, MixLitre: season.Price{Amount: 0.32, Known: true}},
		},
		Asked: season.Asked{FrostRisk: 0.1, Fits: 0.9},
	}
	sky := weather.FitSky(record, site)
	members, _ := weather.Members(record, b.Given.Span, 1981, 2010)
	for _, m := range members {
		b.Given.Years = append(b.Given.Years, m.Year)
		b.Given.Weather = append(b.Given.Weather, m.Hours(site, sky))
	}
	for i, timing := range []stock.Timing{stock.Early, stock.Mid, stock.Late} {
		b.Given.Stock = append(b.Given.Stock, stock.Holding{
			Code: fmt.Sprintf("lot %d", i), Variety: stock.Variety{Name: "Slow Ferry " + string(timing), Kind: "dahlia", Timing: timing},
			Form: stock.Clump, Count: 10, Place: "cellar", Plant: 10,
		})
	}
	return b
}

func steadily(celsius float64) (months [12]quantity.Temperature) {
	for i := range months {
		months[i] = quantity.Celsius(celsius)
	}
	return months
}

func places(site sun.Site) []season.Place {
	twinWall, _ := place.CoverNamed("twin-wall")
	glass := place.Covered{
		Length: 7.3, Width: 3.6, Eaves: 1.7, Ridge: 2.6, Cover: twinWall, AirChanges: 1,
		Heater: &place.Heater{Power: 6 * quantity.Kilowatt, Fuel: "electricity", Efficiency: 1},
		Vent:   place.Vent{Opens: quantity.Celsius(24)},
	}
	house := season.Place{Name: "glass", Sort: season.Glass, Model: glass, Room: 14, Energy: season.Price{Amount: 0.30, Known: true},
		Levels: []place.Setting{place.Off()}, Level: []quantity.Temperature{quantity.Unknown()}}
	for _, c := range []float64{4, 7, 10, 13, 16, 18} {
		house.Levels = append(house.Levels, place.Steadily(quantity.Celsius(c)))
		house.Level = append(house.Level, quantity.Celsius(c))
	}
	lamps := &place.Lamps{Area: 3, Light: 200, Hours: 14, Power: 360}
	return []season.Place{
		{Name: "cellar", Sort: season.Store, Model: place.Steady{Temperature: steadily(5.7)}},
		{Name: "room", Sort: season.Room, Model: place.Steady{Temperature: steadily(21), Lamps: lamps}, Room: 3, Lit: 3},
		house,
		{Name: "patch", Sort: season.Ground, Model: place.UsualGround(), Room: 60},
	}
}

// crowded is the brief of waterville with six years, less room, two levels, more stock, and
// a price for a week of flower and an hour of work.
func crowded(t testing.TB) season.Brief {
	b := waterville(t)
	b.Given.Years, b.Given.Weather = b.Given.Years[:6], b.Given.Weather[:6]
	for i := range b.Given.Stock {
		b.Given.Stock[i].Count, b.Given.Stock[i].Plant = 60, 60
	}
	b.Given.Places[1].Room, b.Given.Places[1].Lit, b.Given.Places[2].Room = 1.2, 1, 8
	level, held := b.Given.Places[2].Level, b.Given.Places[2].Levels
	b.Given.Places[2].Level = []quantity.Temperature{level[0], level[2], level[4]}
	b.Given.Places[2].Levels = []place.Setting{held[0], held[2], held[4]}
	b.Given.Prices.PlantWeek, b.Given.Prices.Hand = season.Price{Amount: 0.5, Known: true}, season.Price{Amount: 18, Known: true}
	b.Given.Prices.Pots = map[string]season.Price{"no1": {Amount: 0.55, Known: true}}
	b.Given.HoursPerWeek = 3
	return b
}

// planned readies a planner for a brief.
func planned(t testing.TB, b season.Brief) *season.Planner {
	t.Helper()
	m, err := season.NewPlanner(&b)
	if err != nil {
		t.Fatal(err)
	}
	return m
}
