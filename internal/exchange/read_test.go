package exchange

import (
	_ "embed"
	"errors"
	"io/fs"
	"math"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"eyeup/culture"
	"eyeup/internal/opendata"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/stock"
)

//go:embed testdata/garden.toml
var goodGarden string

//go:embed testdata/stock.csv
var goodStock string

func folder(garden, list string) fs.FS {
	return fstest.MapFS{"garden.toml": {Data: []byte(garden)}, "stock.csv": {Data: []byte(list)}}
}

func mustRead(t testing.TB, fsys fs.FS) *Garden {
	t.Helper()
	g, err := ReadGarden(fsys, "")
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// like reports whether two figures are the same but for rounding.
func like(a, b float64) bool { return math.Abs(a-b) <= 1e-12*max(math.Abs(a), math.Abs(b)) }

// The measures are those typed in testdata/garden.toml, turned to SI by hand with the
// exact factors of NIST SP 811.
func TestReadGarden(t *testing.T) {
	g := mustRead(t, folder(goodGarden, goodStock))
	if g.Name != "Fallow End" || g.Zone.String() != "America/Toronto" || g.System != quantity.US || g.Currency != "CAD" {
		t.Errorf("got %q, %v, %v, %q", g.Name, g.Zone, g.System, g.Currency)
	}
	if g.Site.Latitude != 45.1 || g.Site.Longitude != -76.5 || !like(float64(g.Site.Elevation), 400*0.3048) {
		t.Errorf("got %+v", g.Site)
	}
	if !g.Weather.IsMadeUp() || g.Weather.Normals == nil || g.Weather.Normals.High[6] != quantity.Celsius(26) {
		t.Errorf("got %+v", g.Weather)
	}
	if g.Offset.Night != -1 || !like(float64(g.Offset.Day), 0.5*5/9) {
		t.Errorf("got %+v", g.Offset)
	}
	want := Season{PlantYear: 2027, FrostRisk: 0.1, Fits: 0.9, HoursPerWeek: 12*time.Hour + 30*time.Minute, StemsSold: 0.25}
	if g.Season != want {
		t.Errorf("got %+v", g.Season)
	}
	if len(g.Places) != 5 || len(g.Stock) != 4 {
		t.Fatalf("%d places, %d lots", len(g.Places), len(g.Stock))
	}
	if got := g.Figures["dahlia"]; len(got) != 2 || got[1] != (culture.Override{Key: "sprout.sum", Text: "180 °C·d"}) || got[0].Key != "pot.floor" {
		t.Errorf("got %+v", got)
	}
}

func TestReadPrices(t *testing.T) {
	p := mustRead(t, folder(goodGarden, goodStock)).Prices
	if got := p.Electricity.For(100 * quantity.KilowattHour); got != quantity.MoneyOf(14, "CAD") {
		t.Errorf("100 kWh cost %v", got)
	}
	if got := p.Mix.For(2 * quantity.CubicFoot); got != quantity.MoneyOf(22, "CAD") {
		t.Errorf("two cubic feet of mix cost %v", got)
	}
	if p.Pots["no1"] != quantity.MoneyOf(0.6, "CAD") || p.Stem != quantity.MoneyOf(1.25, "CAD") || p.Hour != quantity.MoneyOf(20, "CAD") {
		t.Errorf("got %+v", p)
	}
	// 0.92 CAD for a gallon of propane, which holds 92 500 Btu (Bartok 2013): a cent for
	// a thousandth of a million Btu.
	if got := p.Fuels["propane"].For(1e6 * quantity.Btu); math.Abs(got.Units()-0.92/0.0925) > 0.006 {
		t.Errorf("a million Btu of propane costs %v", got)
	}
}

func TestReadPlaces(t *testing.T) {
	g := mustRead(t, folder(goodGarden, goodStock))
	cellar, _ := g.Place("cellar")
	store := cellar.Model.(place.Steady)
	if cellar.Crates != 40 || store.Temperature[0] != quantity.Fahrenheit(42) || store.Temperature[6] != quantity.Fahrenheit(55) || store.Humidity[3] != 0.6 {
		t.Errorf("cellar: %+v", cellar)
	}
	room, _ := g.Place("landing")
	model := room.Model.(place.Steady)
	if room.Bench != 3 || model.Lamps == nil || *model.Lamps != (place.Lamps{Area: 1.5, Light: 150, Hours: 14, Power: 180}) || model.Daylight != 0.1 || model.HeatPerKelvin != 20 {
		t.Errorf("landing: %+v", room)
	}
	if !math.IsNaN(float64(model.Humidity[0])) {
		t.Errorf("humidity that nobody gave is %v", model.Humidity[0])
	}
	glass, _ := g.Place("glass")
	house := glass.Model.(place.Covered)
	if house.Cover.Name != "twin-wall" || house.Heater.Power != 6000 || house.Heater.Efficiency != 0.8 || house.Heater.Fuel != "propane" ||
		!house.Vent.ByHand || house.Vent.Most != 25 || house.Screen.Saves != 0.35 || house.WarmBench.Root != quantity.Celsius(20) {
		t.Errorf("glass: %+v", house)
	}
	if len(glass.Levels) != 3 || glass.Levels[0].String() != "off" || glass.Levels[2].String() != place.Steadily(quantity.Fahrenheit(50)).String() {
		t.Errorf("levels: %v", glass.Levels)
	}
	frame, _ := g.Place("frame")
	if c := frame.Model.(place.Covered); c.Cover.U != 4 || c.Cover.Light != 0.7 || c.Heater != nil || !like(float64(c.FloorArea()), 6) {
		t.Errorf("frame: %+v", c)
	}
	patch, _ := g.Place("patch")
	if patch.Sort != Ground || patch.Bench != 60 || !like(float64(patch.Spacing), 0.4572) {
		t.Errorf("patch: %+v", patch)
	}
	if _, there := g.Place("attic"); there {
		t.Error("there is an attic")
	}
}

func TestReadStock(t *testing.T) {
	g := mustRead(t, folder(goodGarden, goodStock))
	first := stock.Holding{
		Code:    "MRMM5",
		Variety: stock.Variety{Name: "Grey Barn", Kind: "dahlia", Timing: stock.Late, Colour: "#f4efe4", Height: 1.3},
		Form:    stock.Clump, Count: 14, Place: "cellar", Crate: "1", Pack: "vermiculite", Plant: 16, Reserve: 4, Note: `large, "white"`, Line: 2,
	}
	if g.Stock[0] != first {
		t.Errorf("got %+v\nwant %+v", g.Stock[0], first)
	}
	if last := g.Stock[3]; last.Variety.Kind != "sea holly" || last.Code != "" || last.Variety.Height != 0 {
		t.Errorf("a kind nobody knows is to be noted as it is: %+v", last)
	}
}

// A file from a spreadsheet has a byte-order mark, ends its lines otherwise, and has its
// columns in any order.
func TestReadStockFromASpreadsheet(t *testing.T) {
	list := "\ufeffplace,count,form,kind,variety\r\ncellar,3,clump,dahlia,Grey Barn\r\n"
	g := mustRead(t, folder(goodGarden, list))
	if len(g.Stock) != 1 || g.Stock[0].Variety.Name != "Grey Barn" || g.Stock[0].Place != "cellar" || g.Stock[0].Count != 3 {
		t.Errorf("got %+v", g.Stock)
	}
}

// The small garden of the open data reads whole.
func TestReadExample(t *testing.T) {
	g, err := ReadGarden(fstest.MapFS{
		"garden.toml": {Data: opendata.Read(t, "example/garden.toml")},
		"stock.csv":   {Data: opendata.Read(t, "example/stock.csv")},
	}, "example")
	if err != nil {
		t.Fatal(err)
	}
	if len(g.Places) != 5 || len(g.Stock) != 9 || g.Weather.File != "weather.csv" || g.Weather.FromYear != 1981 {
		t.Errorf("got %+v", g)
	}
}

func TestFolderWithoutItsFiles(t *testing.T) {
	for name, fsys := range map[string]fs.FS{
		"nothing":   fstest.MapFS{},
		"no stock":  fstest.MapFS{"garden.toml": {Data: []byte(goodGarden)}},
		"no garden": fstest.MapFS{"stock.csv": {Data: []byte(goodStock)}},
		"a folder":  fstest.MapFS{"garden.toml/x": {}, "stock.csv": {}},
		"too large": fstest.MapFS{"garden.toml": {Data: make([]byte, mostBytes+1)}},
	} {
		_, err := ReadGarden(fsys, "here")
		var fault Fault
		if !errors.As(err, &fault) || !strings.HasPrefix(fault.File, "here/") {
			t.Errorf("%s: %v", name, err)
		}
	}
}
