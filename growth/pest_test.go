package growth

import (
	"math"
	"slices"
	"testing"

	"eyeup/quantity"
)

func pestDays(t *testing.T, p Pest, celsius float64) (usual, fewest float64) {
	t.Helper()
	usual, fewest, err := p.Days(quantity.Celsius(celsius))
	if err != nil {
		t.Fatal(err)
	}
	return usual, fewest
}

// Egyptian Academic Journal of Biological Sciences A, article 12844: one generation of
// two-spotted mites takes 146.5 °C·d above 12.5 °C, which is 8.4 days at 30 °C.
func TestMitesByTheThermalConstant(t *testing.T) {
	for c, want := range map[float64]float64{20: 19.5, 25: 11.7, 30: 8.4} {
		usual, _ := pestDays(t, Mites, c)
		near(t, "mites", usual, want, .1)
	}
}

// At 15 °C one study counts 15.3 days (IOBC-WPRS), another 30.6 (the same journal as
// above); the first also 6.0 at 30 and 5.4 at 35 °C. The extension services of
// Massachusetts and Connecticut say about 28 days at 50 to 68 °F and 8 at 77 to 95 °F.
func TestMitesInCoolHouses(t *testing.T) {
	usual, fewest := pestDays(t, Mites, 15)
	near(t, "slower study", usual, 30.6, .1)
	near(t, "quicker study at 15", fewest, 15.3, .1)
	_, fewest = pestDays(t, Mites, 30)
	near(t, "quicker study at 30", fewest, 6.0, .1)
	_, fewest = pestDays(t, Mites, 35)
	near(t, "quicker study at 35", fewest, 5.4, .5)
	slow, quick := pestDays(t, Mites, 15)
	if 28 > slow || 28 < quick {
		t.Errorf("28 days at 59 °F lie outside %.1f to %.1f", quick, slow)
	}
	slow, quick = pestDays(t, Mites, 30)
	if 8 > slow || 8 < quick {
		t.Errorf("8 days at 86 °F lie outside %.1f to %.1f", quick, slow)
	}
}

func TestPestLinesMeet(t *testing.T) {
	for _, p := range []Pest{Mites, Thrips} {
		at := p.Joined.Celsius()
		near(t, p.Name, p.Rate(at-1e-9), p.Rate(at+1e-9), 1e-4)
		near(t, p.Name+" beyond", p.Rate(p.Warmest.Celsius()+8), p.Rate(p.Warmest.Celsius()), 0)
	}
}

func TestPestRefuses(t *testing.T) {
	for _, c := range []float64{36, 45, math.NaN(), -300} {
		if _, _, err := Mites.Days(quantity.Celsius(c)); err == nil {
			t.Errorf("mites at %g °C gave no error", c)
		}
	}
	usual, _ := pestDays(t, Mites, 2)
	if !math.IsInf(usual, 1) {
		t.Errorf("mites at 2 °C take %g days", usual)
	}
}

// Japanese Journal of Applied Entomology and Zoology 41(4): measured 34.2, 19.2, 12.1 and
// 9.5 days; the line of the same paper gives 35.3, 18.5, 12.5 and 9.5.
func TestThrips(t *testing.T) {
	for _, c := range [][3]float64{{15, 34.2, 35.3}, {20, 19.2, 18.5}, {25, 12.1, 12.5}, {30, 9.5, 9.5}} {
		usual, _ := pestDays(t, Thrips, c[0])
		near(t, "measured", usual, c[1], .05*c[1])
		near(t, "line", usual, c[2], .05)
	}
}

// Bounfour & Tanigoshi 2001 (Journal of Economic Entomology 94): r 0.08 a day at 15 °C,
// 0.321 at 30 °C, so doubling in 8.7 and 2.2 days.
func TestMiteIncrease(t *testing.T) {
	for _, c := range [][3]float64{{15, .08, 8.7}, {30, .321, 2.2}} {
		r, ok := MiteIncrease(quantity.Celsius(c[0]))
		if !ok {
			t.Fatalf("no rate at %g °C", c[0])
		}
		near(t, "r", r, c[1], 1e-9)
		near(t, "doubling", DoublingDays(r), c[2], .1)
	}
	for _, c := range []float64{14.9, 30.1, math.NaN()} {
		if _, ok := MiteIncrease(quantity.Celsius(c)); ok {
			t.Errorf("a rate at %g °C, where none was measured", c)
		}
	}
}

// Each generation is done on the first day at which the shares of a day have come to one
// more, worked by hand.
func TestGenerations(t *testing.T) {
	daily := []float64{9, .25, .25, .5, .75, 2.5}
	for from, want := range map[int][]int{1: {3, 5, 5, 5}, 4: {5, 5, 5}, 6: nil, -1: nil} {
		if got := Generations(daily, from); !slices.Equal(got, want) {
			t.Errorf("from %d: %v, want %v", from, got, want)
		}
	}
}
