package season

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"eyeup/culture"
	"eyeup/place"
	"eyeup/quantity"
)

// TestMemoryTakesNothingForAnother works out one season after another of a garden that is
// changed a little each time, by a figure that a season rests on: out of what is remembered of
// those before each is, to the last digit, what it is from nothing.
func TestMemoryTakesNothingForAnother(t *testing.T) {
	b := waterville(t)
	b.Given.Weather, b.Given.Years = b.Given.Weather[:4], b.Given.Years[:4]
	b.Given.Stock[0].Plant, b.Given.Stock[0].Variety.Kind = 12, "tomato"
	b.Given.Stock[0].Form = "seed"
	b.Ports.Kept = &Memory{}
	for _, step := range []struct {
		what   string
		change func()
	}{
		{"as it is", func() {}},
		{"dearer", func() { b.Given.Places[2].Energy.Amount *= 2 }},
		{"more of one", func() { b.Given.Stock[1].Plant = 14 }},
		{"a risk of no year in four", func() { b.Asked.FrostRisk = 0.24 }},
		{"a risk of one year in four, on the same Monday", func() { b.Asked.FrostRisk = 0.26 }},
		{"a risk of half the years", func() { b.Asked.FrostRisk = 0.5 }},
		{"one level", func() { b.Given.Places = levelled(b.Given.Places, 10) }},
		{"nearly the same level", func() { b.Given.Places = levelled(b.Given.Places, 10.04) }},
		{"room that suffices more seldom", func() { b.Asked.Fits = 0.5 }},
		{"a larger patch", func() { b.Given.Places[3].Room = 30 }},
		{"wider apart", func() { b.Given.Places[3].Spacing = 2 }},
		{"fewer years", func() { b.Given.Weather, b.Given.Years = b.Given.Weather[1:], b.Given.Years[1:] }},
		{"slower tomatoes", func() { b.Given.Kinds = slower(t) }},
		{"one kind fewer", func() { b.Given.Stock = b.Given.Stock[1:] }},
	} {
		step.change()
		with := workedOut(t, b)
		bare := b
		bare.Ports.Kept = nil
		if everyWay(t, b) != everyWay(t, bare) {
			t.Errorf("%s: some way goes otherwise with what is remembered", step.what)
		}
		if without := workedOut(t, bare); with != without {
			t.Errorf("%s: with what is remembered\n%s\nwithout\n%s", step.what, with, without)
		}
	}
}

func workedOut(t *testing.T, b Brief) string {
	t.Helper()
	r, err := Make(b)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// everyWay says how plants fare by every way there is.
func everyWay(t *testing.T, b Brief) string {
	t.Helper()
	m := makerOf(t, b)
	var s strings.Builder
	for _, at := range m.AllLevels() {
		for _, batch := range m.batches {
			for _, o := range m.options(batch, at) {
				fmt.Fprintln(&s, o.route.name, o.start, o.route.onFrom(batch.life), o.gain, o.lost, o.cold, o.fates())
			}
		}
	}
	return s.String()
}

// levelled is the places with one level for the glass.
func levelled(all []Place, celsius float64) []Place {
	all = slices.Clone(all)
	level := quantity.Celsius(celsius)
	all[2].Levels, all[2].Level = []place.Setting{place.Off(), place.Steadily(level)}, []quantity.Temperature{quantity.Unknown(), level}
	return all
}

// slower looks kinds up; tomatoes take longer to flower.
func slower(t *testing.T) func(string) (*culture.Kind, bool) {
	own, known := culture.Lookup("tomato")
	if !known {
		t.Fatal("no tomatoes")
	}
	own, err := own.With([]culture.Override{{Key: "flower.mid", Text: "80 days"}})
	if err != nil {
		t.Fatal(err)
	}
	return func(name string) (*culture.Kind, bool) {
		if name == "tomato" {
			return own, true
		}
		return culture.Lookup(name)
	}
}

// TestMemoryIsBounded tries one level after another: of ways no more are remembered than twice
// what the first season asked for, of climates than four times.
func TestMemoryIsBounded(t *testing.T) {
	b := waterville(t)
	b.Given.Weather, b.Given.Years, b.Ports.Kept = b.Given.Weather[:2], b.Given.Years[:2], &Memory{}
	workedOut(t, b)
	climates, lived := b.Ports.Kept.now.climates.len(), b.Ports.Kept.now.lived.len()
	for n := range 40 {
		b.Given.Places = levelled(b.Given.Places, 5+0.25*float64(n))
		workedOut(t, b)
		if now := b.Ports.Kept.now; now.climates.len() > 4*climates || now.lived.len() > 2*lived {
			t.Fatalf("after %d levels %d climates are remembered, at first %d, and %d ways, at first %d", n+1, now.climates.len(), climates, now.lived.len(), lived)
		}
	}
}

// TestRememberedForgetsTheOldest holds that what was asked for lately is not computed again,
// and that no more is kept than twice the most.
func TestRememberedForgetsTheOldest(t *testing.T) {
	var r remembered[int, int]
	r.most = 10
	reckoned := 0
	for n := range 1000 {
		for _, key := range []int{n, 7, max(0, n-3)} { // 7 is asked for again and again
			if got := r.get(key, func() int { reckoned++; return -key }); got != -key {
				t.Fatalf("%d is remembered as %d", key, got)
			}
		}
		if kept := len(r.young) + len(r.old); kept > 20 {
			t.Fatalf("%d are kept", kept)
		}
	}
	if reckoned != 1000 {
		t.Errorf("of 1000 %d were reckoned", reckoned)
	}
}
