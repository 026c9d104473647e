package exchange

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"eyeup/civil"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/stock"
	"eyeup/sun"
	"eyeup/weather"
)

// desktop is a folder in memory that can be written.
type desktop struct{ files fstest.MapFS }

type page struct {
	bytes.Buffer
	name string
	on   *desktop
}

func (p *page) Close() error {
	p.on.files[p.name] = &fstest.MapFile{Data: p.Bytes()}
	return nil
}

func (d *desktop) create(name string) (io.WriteCloser, error) { return &page{name: name, on: d}, nil }

func writtenFolder(t rapid.TB, g *Garden) fs.FS {
	t.Helper()
	d := &desktop{fstest.MapFS{}}
	if err := WriteGarden(g, d.create); err != nil {
		t.Fatal(err)
	}
	return d.files
}

// same compares gardens by all they hold but the lines they were read from.
var same = cmp.Options{
	cmpopts.EquateComparable(civil.Date{}, quantity.Temperature{}, quantity.Price[quantity.Energy]{}, quantity.Price[quantity.Volume]{}),
	cmp.Comparer(func(a, b *time.Location) bool { return a.String() == b.String() }),
	cmp.Comparer(func(a, b quantity.Share) bool { return a == b || a != a && b != b }),
	cmpopts.EquateEmpty(), cmpopts.IgnoreUnexported(Garden{}),
	cmpopts.IgnoreFields(Place{}, "Line"), cmpopts.IgnoreFields(stock.Holding{}, "Line"),
}

func TestWrittenGardenReadsTheSame(t *testing.T) {
	was := mustRead(t, folder(goodGarden, goodStock))
	fsys := writtenFolder(t, was)
	is, err := ReadGarden(fsys, "")
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(was, is, same); diff != "" {
		t.Error(diff)
	}
	text, err := fs.ReadFile(fsys, "garden.toml")
	if err != nil {
		t.Fatal(err)
	}
	for _, typed := range []string{`"400 ft"`, `"42 F"`, `"12.5 h"`, `"0.92 CAD/gal"`, `"11 CAD/ft3"`, `"150 ft2"`, `"18 in"`} {
		if !strings.Contains(string(text), strings.ReplaceAll(typed, `"`, "'")) && !strings.Contains(string(text), typed) {
			t.Errorf("%s is not written as it was typed:\n%s", typed, text)
		}
	}
}

func TestGardenWithoutAZoneIsNotWritten(t *testing.T) {
	d := &desktop{fstest.MapFS{}}
	if err := WriteGarden(&Garden{}, d.create); err == nil || len(d.files) > 0 {
		t.Errorf("it was written: %v", err)
	}
}

// full is a folder that takes no more.
func full(string) (io.WriteCloser, error) { return nil, fs.ErrPermission }

func TestFolderThatTakesNoMore(t *testing.T) {
	if err := WriteGarden(mustRead(t, folder(goodGarden, goodStock)), full); !errors.Is(err, fs.ErrPermission) {
		t.Errorf("got %v", err)
	}
}

func TestAnyGardenReadsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		was := anyGarden(t)
		is, err := ReadGarden(writtenFolder(t, was), "")
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(was, is, same); diff != "" {
			t.Fatal(diff)
		}
	})
}

func between[T ~float64](t *rapid.T, what string, low, high T) T {
	return T(rapid.Float64Range(float64(low), float64(high)).Draw(t, what))
}

// typedShare draws a share as it is typed, to a tenth of a per cent.
func typedShare(t *rapid.T, what string, low, high int) quantity.Share {
	s, err := quantity.ParseShare(fmt.Sprintf("%g%%", float64(rapid.IntRange(low, high).Draw(t, what))/10))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func warmth(t *rapid.T, low, high float64) quantity.Temperature {
	return quantity.Celsius(rapid.Float64Range(low, high).Draw(t, "celsius"))
}

// anyText draws a text as people write them, quotes and all.
func anyText(t *rapid.T, what string) string {
	return rapid.StringMatching(`[A-Za-z"'\\,;#=é花]([ A-Za-z0-9"'\\,;#=é花-]{0,12}[A-Za-z0-9"'é花])?`).Draw(t, what)
}

func anyGarden(t *rapid.T) *Garden {
	zone, err := time.LoadLocation(rapid.SampledFrom([]string{"UTC", "Europe/Dublin", "America/New_York", "Pacific/Auckland"}).Draw(t, "zone"))
	if err != nil {
		t.Fatal(err)
	}
	g := &Garden{
		Name: anyText(t, "name"), Zone: zone, Currency: "EUR",
		System: rapid.SampledFrom([]quantity.System{quantity.Metric, quantity.US}).Draw(t, "system"),
		Site: sun.Site{
			Latitude: rapid.Float64Range(-90, 90).Draw(t, "latitude"), Longitude: rapid.Float64Range(-180, 180).Draw(t, "longitude"),
			Elevation: between[quantity.Length](t, "elevation", -430, 9000),
		},
		Offset: Offset{between[quantity.Difference](t, "night", -10, 10), between[quantity.Difference](t, "day", -10, 10)},
		Season: Season{
			PlantYear: rapid.IntRange(1701, 2199).Draw(t, "year"), FrostRisk: typedShare(t, "risk", 1, 999), Fits: typedShare(t, "fits", 1, 1000),
			HoursPerWeek: time.Duration(rapid.IntRange(0, 6000).Draw(t, "minutes")) * time.Minute, StemsSold: typedShare(t, "sold", 0, 1000),
		},
	}
	anyWeather(t, g)
	anyPrices(t, g)
	for _, sort := range rapid.SliceOfNDistinct(rapid.SampledFrom([]Sort{Store, Room, Glass, Frame, Ground}), 1, 5, rapid.ID).Draw(t, "sorts") {
		g.Places = append(g.Places, anyPlace(t, sort))
	}
	anyStock(t, g)
	return g
}

func anyWeather(t *rapid.T, g *Garden) {
	if rapid.Bool().Draw(t, "file") {
		g.Weather = Weather{File: "weather.csv", Station: "USC00179151", FromYear: 1981, ToYear: 2010}
		return
	}
	var n weather.Normals
	for m := range n.Low {
		n.Low[m] = warmth(t, -30, 20)
		n.High[m] = n.Low[m].Add(between[quantity.Difference](t, "range", 4, 15))
	}
	g.Weather.Normals = &n
}

func anyPrices(t *rapid.T, g *Garden) {
	if rapid.Bool().Draw(t, "free of cost") {
		return
	}
	g.Prices = Prices{
		Electricity: quantity.PriceOf(between(t, "electricity", 0, 2.0), g.Currency, quantity.KilowattHour),
		Fuels:       map[string]quantity.Price[quantity.Energy]{"oil": quantity.PriceOf(between(t, "oil", 0.0, 9), g.Currency, quantity.Btu)},
		Mix:         quantity.PriceOf(between(t, "mix", 0.0, 99), g.Currency, quantity.CubicFoot),
		Pots:        map[string]quantity.Money{"no1": {Minor: rapid.Int64Range(0, 10000).Draw(t, "pot"), Currency: g.Currency}},
		Stem:        quantity.Money{Minor: rapid.Int64Range(0, 10000).Draw(t, "stem"), Currency: g.Currency},
		Stretched:   quantity.Money{Minor: rapid.Int64Range(0, 100).Draw(t, "stretched"), Currency: g.Currency},
	}
}

func anyLamps(t *rapid.T) *place.Lamps {
	if rapid.Bool().Draw(t, "dark") {
		return nil
	}
	return &place.Lamps{
		Area: between[quantity.Area](t, "lit", 0.1, 100), Light: between[quantity.PhotonFlux](t, "light", 0, 1000),
		Hours: float64(rapid.IntRange(0, 96).Draw(t, "quarters")) / 4, Power: between[quantity.Power](t, "lamps", 0, 5000),
	}
}

func anyPlace(t *rapid.T, sort Sort) Place {
	p := Place{Name: string(sort) + anyText(t, "place"), Sort: sort}
	bench := between[quantity.Area](t, "bench", 0.1, 50)
	switch sort {
	case Store:
		p.Model, p.Crates = anySteady(t, false), rapid.IntRange(1, 1000).Draw(t, "crates")
	case Room:
		s := anySteady(t, rapid.Bool().Draw(t, "humidity unknown"))
		s.Daylight, s.Lamps, s.HeatPerKelvin = typedShare(t, "daylight", 0, 1000), anyLamps(t), between[quantity.Conductance](t, "heat", 0, 500)
		p.Model, p.Bench = s, bench
	case Glass:
		p.Model, p.Bench = anyGlass(t), bench
		p.Levels = []place.Setting{place.Off(), place.Steadily(warmth(t, -5, 30))}
	case Frame:
		c := place.Frame(bench)
		if rapid.Bool().Draw(t, "own cover") {
			c.Cover = place.Cover{Name: ownCover, U: between[quantity.Transmittance](t, "u", 0.3, 10), Light: typedShare(t, "through", 1, 1000), FrostLift: mostLift}
		}
		p.Model, p.Bench = c, bench
	case Ground:
		p.Model, p.Bench, p.Spacing = place.UsualGround(), bench, between[quantity.Length](t, "spacing", 0.05, 2)
	}
	return p
}

func anySteady(t *rapid.T, unknown bool) place.Steady {
	var s place.Steady
	monthly := rapid.Bool().Draw(t, "monthly")
	for m := range s.Temperature {
		s.Temperature[m], s.Humidity[m] = s.Temperature[0], s.Humidity[0]
		if monthly || m == 0 {
			s.Temperature[m], s.Humidity[m] = warmth(t, -5, 40), typedShare(t, "humidity", 0, 1000)
		}
	}
	for m := range s.Humidity {
		if unknown {
			s.Humidity[m] = quantity.Share(math.NaN())
		}
	}
	return s
}

func anyGlass(t *rapid.T) place.Covered {
	cover, _ := place.CoverNamed(rapid.SampledFrom(place.CoverNames()).Draw(t, "cover"))
	c := place.Covered{
		Length: between[quantity.Length](t, "length", 5, 50), Width: between[quantity.Length](t, "width", 4, 20),
		Eaves: between[quantity.Length](t, "eaves", 0.5, 2), Ridge: between[quantity.Length](t, "ridge", 2, 5),
		Cover: cover, AirChanges: between[quantity.Rate](t, "changes", 0, 5), Lamps: anyLamps(t),
		Heater: &place.Heater{Power: between[quantity.Power](t, "power", 100, 50000), Fuel: rapid.SampledFrom(place.FuelNames()).Draw(t, "fuel"), Efficiency: typedShare(t, "efficiency", 0, 1000)},
	}
	if rapid.Bool().Draw(t, "fitted out") {
		c.Vent = place.Vent{Opens: warmth(t, 5, 40), ByHand: rapid.Bool().Draw(t, "by hand"), Most: between[quantity.Rate](t, "most", 0.5, 100)}
		c.Screen = &place.Screen{Saves: typedShare(t, "saves", 0, 1000)}
		c.WarmBench = &place.WarmBench{Area: between[quantity.Area](t, "warm", 0.1, 10), Root: warmth(t, 5, 30), Power: between[quantity.Power](t, "mats", 1, 3000)}
	}
	return c
}

func anyStock(t *rapid.T, g *Garden) {
	for i := range rapid.IntRange(0, 5).Draw(t, "lots") {
		g.Stock = append(g.Stock, stock.Holding{
			Variety: stock.Variety{
				Name: fmt.Sprintf("%s %d", anyText(t, "variety"), i), Kind: "dahlia",
				Timing: rapid.SampledFrom([]stock.Timing{"", stock.Early, stock.Mid, stock.Late}).Draw(t, "timing"),
				Height: between[quantity.Length](t, "height", 0.01, 3),
			},
			Form:  rapid.SampledFrom([]stock.Form{stock.Clump, stock.Corm, stock.Seed, stock.Plant}).Draw(t, "form"),
			Count: rapid.IntRange(1, 500).Draw(t, "count"), Place: g.Places[0].Name, Pack: "bare",
			Plant: rapid.IntRange(0, 50).Draw(t, "plant"), Reserve: rapid.IntRange(0, 5).Draw(t, "reserve"),
			Note: anyText(t, "note"),
		})
	}
}
