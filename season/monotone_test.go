package season

import (
	"math"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/frost"
	"eyeup/internal/opendata"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/stock"
	"eyeup/sun"
	"eyeup/weather"
	"eyeup/weather/meteireann"
)

// mullingar is the brief of waterville with the record of Mullingar, Ireland.
func mullingar(t testing.TB) Brief {
	t.Helper()
	records, err := meteireann.Read(opendata.Open(t, "daily/mullingar_dly875.csv"))
	if err != nil {
		t.Fatal(err)
	}
	b := waterville(t)
	b.Given.Site = sun.Site{Latitude: 53.54, Longitude: -7.36, Elevation: 101}
	b.weatherOf(records[0], 1981, 2010)
	return b
}

// weatherOf puts another record into a brief.
func (b *Brief) weatherOf(r *weather.Record, from, to int) {
	b.Given.Span = Span(2027, b.Given.Site)
	b.Given.Freezes = frost.Dates(r, b.Given.Site, quantity.Celsius(0), from, to)
	b.Given.Years, b.Given.Weather = nil, nil
	sky := weather.FitSky(r, b.Given.Site)
	members, _ := weather.Members(r, b.Given.Span, from, to)
	for _, m := range members {
		b.Given.Years = append(b.Given.Years, m.Year)
		b.Given.Weather = append(b.Given.Weather, m.Hours(b.Given.Site, sky))
	}
}

func makerOf(t testing.TB, b Brief) *Planner {
	t.Helper()
	m, err := newPlanner(&b)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// of returns the outcomes of a batch by one route, in the order of their starts.
func of(all []*outcome, route string) []*outcome {
	var some []*outcome
	for _, o := range all {
		if o.route.name == route {
			some = append(some, o)
		}
	}
	return some
}

// TestEarlierNeverFlowersLater starts ever earlier by each route: in no year without a frost
// after planting does the middle plant flower later for it, but for a day of rounding; and
// four weeks more than ten gain less than one, as pot-bound plants grow at 0.15 of their rate.
func TestEarlierNeverFlowersLater(t *testing.T) {
	m := makerOf(t, waterville(t))
	for _, b := range m.batches {
		for _, route := range []string{"room, then glass", "room, under lamps"} {
			some := of(m.options(b, Levels{0, 0, 4, 0}), route)
			for i := 1; i < len(some); i++ {
				for year := range some[i].fates() {
					early, late := some[i-1].fates()[year], some[i].fates()[year]
					ground := some[i].route.ground.years[year].low
					if lastBelow(ground, m.summer, b.life.kill) >= early.out {
						continue // frost sets back what is planted out, and not what still waits
					}
					if early.died == Never && early.flower > late.flower+1 {
						t.Errorf("%s by %s: started %v it flowers on day %d, a week later on day %d", b.id, route, m.Date(some[i-1].start), early.flower, late.flower)
					}
				}
			}
			byWeeks := map[int]float64{}
			for _, o := range some {
				byWeeks[(m.OutFrom-o.start)/7] = o.gain
			}
			if more := byWeeks[14] - byWeeks[10]; more > 1 {
				t.Errorf("%s by %s: from ten to fourteen weeks early still gains %.1f weeks", b.id, route, more)
			}
		}
	}
}

// TestColderGlassGrowsNoFaster compares every level of the glass with the next warmer one,
// from 7 °C up: below, young plants wait longer in the warm room, and grow there.
func TestColderGlassGrowsNoFaster(t *testing.T) {
	m := makerOf(t, waterville(t))
	b := m.batches[0]
	for level := 2; level+1 < 6; level++ {
		cold, warm := of(m.options(b, Levels{0, 0, level, 0}), "room, then glass"), of(m.options(b, Levels{0, 0, level + 1, 0}), "room, then glass")
		for i := range cold {
			if cold[i].gain > warm[i].gain+0.15 {
				t.Errorf("level %d gains %.2f weeks, the warmer one %.2f", level, cold[i].gain, warm[i].gain)
			}
		}
	}
}

// TestHeatOfEarlyStarts holds what heat early starts take at Waterville to a prototype on
// the same record, from the mean of hand-on to planting out: started on 29 March, with
// glass at 4, 10, 13, 16 and 18 °C, 32, 323, 625, 994 and 1257 kWh in the middle year.
func TestHeatOfEarlyStarts(t *testing.T) {
	m := makerOf(t, waterville(t))
	glass := m.placeNamed("glass")
	from, to := m.day(civil.MustOn(2027, time.April, 16)), m.day(civil.MustOn(2027, time.May, 22))
	for level, want := range map[int]float64{1: 32, 3: 323, 4: 625, 5: 994, 6: 1257} {
		c := m.climate(glass, m.setting(glass, level))
		got := m.heatOf(c, Days{from + Warming, to})
		if math.Abs(got-want) > 0.2*want+25 {
			t.Errorf("level %d: %.0f kWh, the prototype had %.0f", level, got, want)
		}
	}
}

// TestDormantDahlias holds dahlias planted dormant on the day when leafy plants go out to
// the prototype: at Waterville mid sorts flower on 12 August (9-16), early ones on
// 3 August, late ones on 25 August; at Mullingar on 2 September, 21 August, 21 September.
// Within a week and a half: there the days of September are short for late sorts, which
// the prototype counted in spring alone.
func TestDormantDahlias(t *testing.T) {
	for _, c := range []struct {
		name  string
		brief func(testing.TB) Brief
		out   civil.Date
		first map[stock.Timing]civil.Date
	}{
		{"Waterville", waterville, civil.MustOn(2027, time.May, 22), map[stock.Timing]civil.Date{
			stock.Early: civil.MustOn(2027, time.August, 3), stock.Mid: civil.MustOn(2027, time.August, 12), stock.Late: civil.MustOn(2027, time.August, 25)}},
		{"Mullingar", mullingar, civil.MustOn(2027, time.May, 12), map[stock.Timing]civil.Date{
			stock.Early: civil.MustOn(2027, time.August, 21), stock.Mid: civil.MustOn(2027, time.September, 2), stock.Late: civil.MustOn(2027, time.September, 21)}},
	} {
		m := makerOf(t, c.brief(t))
		for _, b := range m.batches {
			routes := m.routes(b.store, make(Levels, len(m.Given.Places)))
			o := option{route: routes[len(routes)-1], start: m.monday(m.newYear), outFrom: m.day(c.out), firstMonday: m.day(c.out) % 7}
			l := *b.life
			l.soilDormant = -99 // on the day, whatever the soil
			lived := live(&l, o, make([]float64, len(m.ends)), m.ends)
			days := make([]int, len(lived.fates()))
			for i, f := range lived.fates() {
				days[i] = f.flower
			}
			got, want := m.when(days).Middle, c.first[b.Variety.Timing]
			if off := got.Sub(want); off < -9 || off > 9 {
				t.Errorf("%s, %s: %v, the prototype had %v", c.name, b.Variety.Timing, got, want)
			}
		}
	}
}

// TestSouthernSeason turns the year round: with the record moved by half a year the plans
// south of the equator are those of the north, half a year later.
func TestSouthernSeason(t *testing.T) {
	var low, high [12]quantity.Temperature
	for i, c := range []float64{12, 12, 9, 5, 1, -2, -3, -2, 1, 4, 7, 10} {
		low[i], high[i] = quantity.Celsius(c), quantity.Celsius(c+11)
	}
	b := waterville(t)
	b.Given.Site = sun.Site{Latitude: -43, Longitude: 147, Elevation: 50}
	b.weatherOf(weather.MakeUp(weather.Normals{Low: low, High: high}, b.Given.Site, 12, 7), 0, 0)
	b.Given.Today = b.Given.Span.From
	r, err := Make(b)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range r.Plans {
		if m := p.PlantOutFrom.Month(); m < time.September || m > time.December {
			t.Errorf("%s: planted out from %v", p.Name, p.PlantOutFrom)
		}
		for _, one := range p.Batches {
			if d := one.Dates.FirstFlower.Middle; d.IsZero() || d.Before(civil.MustOn(2027, time.November, 1)) || d.After(civil.MustOn(2028, time.May, 1)) {
				t.Errorf("%s: first flower on %v", p.Name, d)
			}
		}
	}
}

// TestHeldStart keeps to a decided start, in every plan.
func TestHeldStart(t *testing.T) {
	b := waterville(t)
	week := civil.MustOn(2027, time.April, 5)
	b.Asked.Held = map[string]civil.Date{"lot 1": week.AddDays(2)}
	r, err := Make(b)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range r.Plans {
		for _, one := range p.Batches {
			if one.Code == "lot 1" && one.Container != "" && one.Starts[0].Week != week {
				t.Errorf("%s: lot 1 starts on %v, though %v is decided", p.Name, one.Starts[0].Week, week)
			}
		}
	}
}

// TestSpliceIsTheFullRun holds the run of one level put to that of another to the house
// run with the step in its setting: beyond two days after the step they are the same.
func TestSpliceIsTheFullRun(t *testing.T) {
	m := makerOf(t, waterville(t))
	glass := m.placeNamed("glass")
	day := m.monday(m.day(civil.MustOn(2027, time.April, 5)))
	low, high := m.Given.Places[glass].Level[2], m.Given.Places[glass].Level[4]
	setting := m.setting(glass, 2)
	setting.Steps = []place.Step{{Level: low}, {From: m.Date(day), Level: high}}
	whole := m.climate(glass, setting)
	joined := splice(m.climate(glass, m.setting(glass, 2)), m.climate(glass, m.setting(glass, 4)), day)
	for year := range whole.years {
		for d := range whole.years[year].low {
			if d >= day-1 && d <= day+2 {
				continue
			}
			if off := whole.years[year].low[d] - joined.on(year, d).low[d]; math.Abs(off) > 0.25 {
				t.Fatalf("year %d, day %d: %.2f K apart", year, d, off)
			}
		}
	}
}

// TestUnknownKindIsNamed adds a kind of which there are no figures.
func TestUnknownKindIsNamed(t *testing.T) {
	b := waterville(t)
	b.Given.Stock = append(b.Given.Stock, stock.Holding{Code: "x", Variety: stock.Variety{Name: "Odd One", Kind: "no such kind"}, Form: stock.Clump, Count: 3, Plant: 3, Place: "cellar"})
	m := makerOf(t, b)
	if len(m.left) == 0 || m.left[0].Why == "" {
		t.Errorf("a kind without figures is not named: %v", m.left)
	}
}
