package place

import (
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/opendata"
	"eyeup/quantity"
	"eyeup/sun"
	"eyeup/weather"
	"eyeup/weather/ghcn"
	"eyeup/weather/meteireann"
)

func quantityCelsius(c float64) quantity.Temperature { return quantity.Celsius(c) }

// plainWeather is so many days from 1 January 2027 of one air temperature and one sun.
func plainWeather(days int, air, shine float64) *weather.Hours {
	from := civil.MustOn(2027, time.January, 1)
	h := &weather.Hours{
		Span: civil.Span{From: from, To: from.AddDays(civil.Days(days - 1))},
		Air:  make([]float64, 24*days), DewPoint: make([]float64, 24*days), Sun: make([]float64, 24*days),
		Days: make([]weather.Day, days),
	}
	for i := range h.Air {
		h.Air[i], h.DewPoint[i] = air, air-2
		if i%24 >= 8 && i%24 < 16 {
			h.Sun[i] = shine
		}
	}
	return h
}

// northern is the season that the checks are run over, and the spring they look at.
var (
	northern = civil.Span{From: civil.MustOn(2026, time.September, 1), To: civil.MustOn(2027, time.December, 31)}
	spring   = civil.Span{From: civil.MustOn(2027, time.February, 1), To: civil.MustOn(2027, time.May, 20)}
)

// years are the real years 1981 to 2010 of a station laid on that season.
type years struct {
	site  sun.Site
	hours []*weather.Hours
	year  []int
}

func yearsOf(r *weather.Record, site sun.Site) years {
	y := years{site: site}
	members, _ := weather.Members(r, northern, 1981, 2010)
	sky := weather.FitSky(r, site)
	for _, m := range members {
		y.hours = append(y.hours, m.Hours(site, sky))
		y.year = append(y.year, m.Year)
	}
	return y
}

// waterville is a cooperative station in Maine, inland, with hard winters.
func waterville(t testing.TB) years {
	t.Helper()
	records, err := ghcn.Read(opendata.Open(t, "daily/USC00179151_waterville-me_and_niles-mi.csv"))
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range records {
		if r.Station.ID == "USC00179151" {
			return yearsOf(r, sun.Site{Latitude: 44.55, Longitude: -69.63, Elevation: 27})
		}
	}
	t.Fatal("the file has no USC00179151")
	return years{}
}

// mullingarRecord is a station in the middle of Ireland, mild and cloudy, which measured
// sun from 2008 and soil at ten centimetres throughout.
func mullingarRecord(t testing.TB) (*weather.Record, sun.Site) {
	t.Helper()
	records, err := meteireann.Read(opendata.Open(t, "daily/mullingar_dly875.csv"))
	if err != nil {
		t.Fatal(err)
	}
	return records[0], sun.Site{Latitude: 53.537, Longitude: -7.362, Elevation: 101}
}

// smallHouse is 3.6 by 7.3 m of twin-wall with 6 kW.
func smallHouse() Covered {
	cover, _ := CoverNamed("twin-wall")
	return Covered{
		Length: 7.3, Width: 3.6, Eaves: 1.7, Ridge: 2.6, Cover: cover, AirChanges: 1,
		Heater: &Heater{Power: 6 * quantity.Kilowatt, Fuel: "electricity"},
		Vent:   Vent{Opens: quantity.Celsius(24)},
	}
}
