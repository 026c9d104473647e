package demo_test

import (
	"math"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/internal/demo"
	"eyeup/internal/exchange"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/stock"
)

func read(t *testing.T) *exchange.Garden {
	t.Helper()
	g, err := exchange.ReadGarden(demo.Garden(), "demo")
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// What the invented garden is meant to hold: some 380 clumps in 34 varieties of dahlia,
// corms and vegetables, and the five places.
func TestGardenHoldsWhatItShould(t *testing.T) {
	g := read(t)
	clumps, varieties, kinds := 0, map[string]bool{}, map[string]bool{}
	for _, h := range g.Stock {
		kinds[h.Variety.Kind] = true
		if h.Variety.Kind == "dahlia" {
			varieties[h.Variety.Name] = true
		}
		if h.Form == stock.Clump {
			clumps += h.Count
		}
		if h.Form != stock.Seed && h.Plant+h.Reserve > h.Count {
			t.Errorf("%s: more wanted than there are", h.Variety.Name)
		}
		if h.Code == "" {
			t.Errorf("%s has no code", h.Variety.Name)
		}
		if _, known := culture.Lookup(h.Variety.Kind); !known {
			t.Errorf("the kind %s is not known", h.Variety.Kind)
		}
	}
	if clumps < 370 || clumps > 390 || len(varieties) != 34 {
		t.Errorf("%d clumps in %d varieties", clumps, len(varieties))
	}
	for _, kind := range []string{"dahlia", "ranunculus", "anemone", "tomato", "pepper", "cucumber"} {
		if !kinds[kind] {
			t.Errorf("there is no %s", kind)
		}
	}
	sorts := map[exchange.Sort]int{}
	for _, p := range g.Places {
		sorts[p.Sort]++
	}
	for _, sort := range []exchange.Sort{exchange.Store, exchange.Room, exchange.Glass, exchange.Frame, exchange.Ground} {
		if sorts[sort] != 1 {
			t.Errorf("%d places of sort %s", sorts[sort], sort)
		}
	}
	if patch, _ := g.Place("patch"); patch.Bench != 90 {
		t.Errorf("the patch has %v m²", patch.Bench)
	}
	if glass, _ := g.Place("glass"); glass.Model.(place.Covered).Heater == nil {
		t.Error("the glass has no heater")
	}
}

// Everything to be planted fits the patch, and its reserve beside it: dahlias at the patch's spacing, the others at
// the density of their kind.
func TestPlantingFitsThePatch(t *testing.T) {
	g := read(t)
	patch, _ := g.Place("patch")
	var taken float64
	for _, h := range g.Stock {
		each := float64(patch.Spacing.Times(patch.Spacing))
		if h.Variety.Kind != "dahlia" {
			each = 1 / density(t, h.Variety.Kind)
		}
		taken += float64(h.Plant+h.Reserve) * each
	}
	if taken > float64(patch.Bench) || taken < 0.8*float64(patch.Bench) {
		t.Errorf("%.1f m² of %v", taken, patch.Bench)
	}
}

func density(t *testing.T, name string) float64 {
	t.Helper()
	kind, _ := culture.Lookup(name)
	for _, f := range kind.Figures() {
		if f.Key == "plant.density" {
			return f.Value
		}
	}
	t.Fatalf("%s has no density", name)
	return 0
}

// The weather is made up, says so, and is that of a cold-winter inland place: its lows of
// January average what [normals] say within a kelvin, the patch a little colder.
func TestWeatherIsMadeUp(t *testing.T) {
	g := read(t)
	record, err := g.LoadWeather(demo.Garden())
	if err != nil {
		t.Fatal(err)
	}
	if !record.MadeUp {
		t.Error("made-up weather does not say so")
	}
	var sum, n float64
	for i, day := range record.Days {
		if record.From.AddDays(civil.Days(i)).Month() == time.January {
			sum += day.Low.Celsius()
			n++
		}
	}
	want := quantity.Fahrenheit(5).Add(g.Offset.Night).Celsius()
	if mean := sum / n; math.Abs(mean-want) > 1 {
		t.Errorf("the lows of January average %.1f °C, not %.1f", mean, want)
	}
}
