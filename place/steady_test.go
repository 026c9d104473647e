package place

import (
	"math"
	"slices"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
	"eyeup/weather"
)

func steadily(c float64) (t [12]quantity.Temperature) {
	for i := range t {
		t[i] = quantity.Celsius(c)
	}
	return t
}

func TestCellar(t *testing.T) {
	k := Steady{Temperature: steadily(5.5)}.Run(plainWeather(400, -3, 200), fortyFour, Off())
	for i := range k.Air {
		if k.Air[i] != 5.5 || math.Abs(k.Root[i]-5.5) > 1e-9 {
			t.Fatalf("hour %d: air %g, roots %g", i, k.Air[i], k.Root[i])
		}
	}
	if k.Light[0] != 0 || k.DayLength[0] != 0 || k.Sum(k.AskedKWh, k.Span) != 0 {
		t.Errorf("a dark cellar has light %g, day %g h, heat %g", k.Light[0], k.DayLength[0], k.AskedKWh[0])
	}
}

// The months are met in their middle, and nowhere is there a leap.
func TestMonthsAreJoined(t *testing.T) {
	p := Steady{Temperature: steadily(4), Humidity: [12]quantity.Share{0.5, 0.7}}
	p.Temperature[1] = quantity.Celsius(6)
	day := func(m time.Month, d int) civil.Date { return civil.MustOn(2027, m, d) }
	near(t, "mid-January", p.at(day(1, 15)).Celsius(), 4, 1e-12)
	near(t, "mid-February", p.at(day(2, 15)).Celsius(), 6, 1e-12)
	near(t, "between", p.at(day(1, 31)).Celsius(), 4+2*16.0/31, 1e-12)
	near(t, "early in January", p.at(day(1, 1)).Celsius(), 4, 1e-12)
	near(t, "late in December", Steady{Temperature: [12]quantity.Temperature{quantity.Celsius(31)}}.at(day(12, 31)).Celsius(), 16, 1e-12)
	for d := day(1, 1); d.Before(day(12, 31)); d = d.AddDays(1) {
		if leap := p.at(d.AddDays(1)).Sub(p.at(d)); math.Abs(float64(leap)) > 0.08 {
			t.Errorf("%v: a leap of %g K", d, leap)
		}
	}
}

// A room of 20 °C that costs 50 W/K asks for 50·(20−5)·24 h = 18 kWh a day at 5 °C.
func TestRoomThatCostsHeat(t *testing.T) {
	p := Steady{Temperature: steadily(20), HeatPerKelvin: 50, Daylight: 0.1}
	k := p.Run(plainWeather(3, 5, 300), fortyFour, Off())
	near(t, "asked", k.AskedKWh[1], 18, 1e-9)
	near(t, "given", k.GivenKWh[1], 18, 1e-9)
	// Eight hours of 300 W/m² are 8.64 MJ/m²; 2.018 mol in each (Faust & Logan 2018).
	near(t, "light", k.Light[1], 0.1*8.64*2.018, 1e-3)

	k = p.Run(plainWeather(3, 25, 0), fortyFour, Off())
	near(t, "asked when it is warmer outside", k.AskedKWh[1], 0, 0)

	p.Temperature = steadily(12)
	k = p.Run(plainWeather(3, 5, 0), fortyFour, Steadily(quantity.Celsius(18)))
	near(t, "held at a level", k.Air[30], 18, 0)
	near(t, "asked for it", k.AskedKWh[1], 50*13*24/1000.0, 1e-9)
}

// 200 µmol/m²/s for 16 h are 11.52 mol/m², 100 for 14 h 5.04, 250 for 18 h 16.2: the flux
// times its seconds.
func TestLamps(t *testing.T) {
	for _, c := range []struct{ flux, hours, want float64 }{{200, 16, 11.52}, {100, 14, 5.04}, {250, 18, 16.2}} {
		l := &Lamps{Area: 1, Light: quantity.PhotonFlux(c.flux), Hours: c.hours, Power: 100}
		near(t, "light in mol/m²", l.daily(), c.want, 1e-12)
		var sum float64
		for _, w := range l.byHour() {
			sum += w
		}
		near(t, "energy by hours and by day", sum/1000, l.kilowattHours(), 1e-12)
	}
	l := &Lamps{Area: 1, Light: 150, Hours: 14, Power: 180}
	k := Steady{Temperature: steadily(20), Lamps: l}.Run(plainWeather(2, 0, 0), fortyFour, Off())
	near(t, "day length", k.DayLength[0], 14, 0)
	near(t, "electricity", k.LampKWh[0], 2.52, 1e-12)
	near(t, "sun and lamps together", l.dayLength(15.2), 15.2, 0)
	for _, bad := range []Lamps{{1, 100, 25, 1}, {0, 100, 4, 1}, {1, -1, 4, 1}, {1, 100, math.NaN(), 1}, {1, 1, 1, -1}} {
		if bad.Check() == nil {
			t.Errorf("%+v passed", bad)
		}
	}
}

// A logger's winter serves for the days of the season with the same month and day; a day
// that it missed falls back to the months and is counted.
func TestLoggerSeries(t *testing.T) {
	s := &Series{From: civil.MustOn(2025, time.December, 31), Celsius: make([]float64, 72)}
	for i := range s.Celsius {
		s.Celsius[i] = float64(i) / 10
	}
	p := Steady{Temperature: steadily(8), Logged: s}
	k := p.Run(plainWeather(4, 0, 0), fortyFour, Off())
	near(t, "1 January at noon", k.Air[12], 3.6, 1e-12)
	near(t, "2 January at noon", k.Air[36], 6.0, 1e-12)
	near(t, "3 January, not recorded", k.Air[60], 8, 0)
	if k.Unlogged != 2 {
		t.Errorf("%d days not recorded, want 2", k.Unlogged)
	}
	s.Celsius[30] = math.NaN()
	if k = p.Run(plainWeather(4, 0, 0), fortyFour, Off()); k.Unlogged != 3 || k.Air[12] != 8 {
		t.Errorf("%d days not recorded, want 3", k.Unlogged)
	}
	if _, ok := (&Series{From: s.From}).on(s.From); ok {
		t.Error("an empty series has hours")
	}
}

// A month that a logger covered for twenty days is as it recorded it; the others are as the
// place is said to be. Two series that differ in one hour are told apart.
func TestLoggedMonths(t *testing.T) {
	s := &Series{From: civil.MustOn(2026, time.January, 12)}
	for range 24 * 40 { // 20 days of January, 20 of February
		s.Celsius, s.Humidity = append(s.Celsius, 6), append(s.Humidity, 0.8)
	}
	s.Humidity[0] = math.NaN()
	p := Steady{Temperature: steadily(8), Humidity: [12]quantity.Share{0.5, 0.5, 0.5}, Logged: s}
	temperature, humidity := p.Months()
	near(t, "January", temperature[0].Celsius(), 6, 1e-12)
	near(t, "damp of January, an hour of it not known", float64(humidity[0]), 0.5, 0)
	near(t, "damp of February", float64(humidity[1]), 0.8, 1e-12)
	near(t, "March", temperature[2].Celsius(), 8, 0)
	other := &Series{From: s.From, Celsius: slices.Clone(s.Celsius), Humidity: s.Humidity}
	if other.GoString() != s.GoString() {
		t.Error("the same series has two names")
	}
	if other.Celsius[5] = 7; other.GoString() == s.GoString() {
		t.Error("two series have one name")
	}
}

// South of the equator all is turned by half a year: the house is as lit and as warmed by
// low sun in July as it is in the north in January.
func TestSouthIsTurnedRound(t *testing.T) {
	c := smallHouse()
	near(t, "low sun", c.LowSun(-44.5, civil.MustOn(2027, time.July, 16)), c.LowSun(44.5, civil.MustOn(2027, time.January, 15)), 0.03)
	south := sun.Site{Latitude: -44.5, Longitude: 170}
	m := weather.Member{Span: civil.Span{From: civil.MustOn(2027, time.March, 1), To: civil.MustOn(2028, time.June, 30)}}
	for d := range m.Span.Days() {
		warm := 8 * math.Cos(2*math.Pi*float64(m.Span.From.AddDays(d).YearDay()-15)/365)
		m.Days = append(m.Days, weather.Day{
			Low: quantity.Celsius(4 + warm), High: quantity.Celsius(14 + warm),
			Sun: 0.6 * sun.ClearSky(south, m.Span.From.AddDays(d)), DewPoint: quantity.Celsius(4 + warm),
		})
	}
	k := c.Run(m.Hours(south, weather.Sky{}), south, Steadily(quantity.Celsius(10)))
	month := func(y int, mo time.Month) float64 {
		from := civil.MustOn(y, mo, 1)
		return k.Sum(k.AskedKWh, civil.Span{From: from, To: from.AddDays(27)})
	}
	if july, january := month(2027, time.July), month(2028, time.January); july < 300 || january > july/5 {
		t.Errorf("asked in July %.0f kWh, in January %.0f", july, january)
	}
}

// Φ and φ of the normal law, worked by another program: base 18, mean 10, spread 6, and a
// base at the mean.
func TestMeanShort(t *testing.T) {
	near(t, "level 18", float64(MeanShort(quantity.Celsius(18), quantity.Celsius(10), 6)), 8.25437, 1e-5)
	near(t, "level 10", float64(MeanShort(quantity.Celsius(10), quantity.Celsius(10), 6)), 2.39365, 1e-5)
	near(t, "no spread", float64(MeanShort(quantity.Celsius(10), quantity.Celsius(12), 0)), 0, 0)
}
