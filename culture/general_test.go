package culture

import (
	"math"
	"slices"
	"testing"
)

// Common practice, as growers and societies have it: the value is what is said, and the range
// holds what else is said.
func TestGeneralPractice(t *testing.T) {
	for name, c := range map[string]struct{ value, low, high float64 }{
		"house.usual":  {10, 7.2, 12.8}, // 50 °F; 45 to 55 °F
		"start.frost":  {5, 4, 6},       // four to six weeks before the last frost
		"patch.before": {42, 28, 56},    // started four to eight weeks before planting out
		"plant.harden": {7, 5, 10},      // a week: Utah State, one week for tomato and pepper
		"store.round":  {28, 28, 31},    // monthly
		"pot.last":     {14, 14, 14},    // a fortnight
		"mite.look":    {7, 7, 7},       // weekly
		"store.stirs":  {10, 10, 10},    // 50 °F
		"start.corms":  {92, 61, 92},    // from October, 1 October to 1 January
		"store.packed": {45, 30, 60},    // the middle of October, the season beginning on 1 September
	} {
		f := General(name)
		near(t, name, f.Value, c.value, 0)
		if f.Low > c.low || f.High < c.high {
			t.Errorf("%s: %g to %g does not hold %g to %g", name, f.Low, f.High, c.low, c.high)
		}
	}
}

// Common practice: the first flowers of one variety in one bed come over two to three weeks. Nine in
// ten less one in ten, at 70 days from up to flower and at the 106 of Fernandes 2024.
func TestFlowerSpread(t *testing.T) {
	const oneInTen = 1.2816
	for _, days := range []float64{70, 106} {
		over := days * (math.Exp(oneInTen*Usual("flower.spread")) - math.Exp(-oneInTen*Usual("flower.spread")))
		if over < 14 || over > 22 {
			t.Errorf("first flowers over %.0f days of %.0f, not two to three weeks", over, days)
		}
	}
}

// The plants that stand for a lot stand for its fifths, in coming up and in flowering, and the one
// tells nothing of the other: their correlation is small.
func TestIndividualsStandForFifths(t *testing.T) {
	var up, flower []float64
	product := 0.0
	for _, one := range Individuals() {
		up, flower = append(up, one.Up), append(flower, one.Flower)
		product += (one.Up - .5) * (one.Flower - .5)
	}
	slices.Sort(flower)
	for i := range up {
		fifth := (float64(i) + .5) / float64(len(up))
		near(t, "up", up[i], fifth, 1e-12)
		near(t, "flower", flower[i], fifth, 1e-12)
	}
	if variance := .4; math.Abs(product) > .31*variance {
		t.Errorf("coming up and flowering go together: %.2f", product/variance)
	}
}

// What stands in for a figure that is not known lies among those of the kinds, or asks no more than
// that nothing freezes.
func TestStandInsLieAmongTheKinds(t *testing.T) {
	for _, f := range GeneralFigures() {
		i, shared := numbered[f.Key]
		if !shared {
			continue
		}
		if f.Unit != keys[i].unit {
			t.Errorf("%s is in %s, and of kinds in %s", f.Key, f.Unit, keys[i].unit)
		}
		if f.Sure == Measured {
			t.Errorf("%s is measured of no kind in particular", f.Key)
		}
		low, high := math.Inf(1), math.Inf(-1)
		for _, name := range Kinds() {
			if own, known := kind(t, name).Figure(f.Key); known {
				low, high = min(low, own.Low), max(high, own.High)
			}
		}
		if freezing := f.Unit == Celsius && f.Value == 0; !freezing && (f.Value < low || f.Value > high) {
			t.Errorf("%s: %g lies outside those of all kinds, %g to %g", f.Key, f.Value, low, high)
		}
	}
}

// Konishi & Inaba 1964: blind flowers in days below 12 h. A dahlia's day that is called blind
// gives some progress, and lamps reach further.
func TestBlindDays(t *testing.T) {
	k := kind(t, "dahlia")
	blind, _ := k.Figure("day.blind")
	lamps, _ := k.Figure("day.lamps")
	near(t, "blind", blind.Value, 12, 0)
	if !(k.DayLength.None < blind.Value && blind.Value < k.DayLength.Full && k.DayLength.Full <= lamps.Value) {
		t.Errorf("blind below %g h, of %g to %g h and lamps to %g h", blind.Value, k.DayLength.None, k.DayLength.Full, lamps.Value)
	}
}

// A plant gives in a week of flower what it gives in all, over the weeks in which it flowers: a
// dahlia ten (common practice), ranunculus four to six, anemone six to nine (Utah State, tunnels).
func TestStemsAWeek(t *testing.T) {
	for name, weeks := range map[string][2]float64{"dahlia": {10, 10}, "ranunculus": {4, 6}, "anemone": {6, 9}} {
		all, _ := kind(t, name).Figure("flower.stems")
		week, known := kind(t, name).Figure("flower.week")
		if least, most := all.Value/weeks[1], all.Value/weeks[0]; !known || week.Value < least-.01 || week.Value > most+.01 {
			t.Errorf("%s: %g stems a week, not %.2f to %.2f", name, week.Value, least, most)
		}
	}
}

func TestGeneralKeysAreKnown(t *testing.T) {
	if len(general()) != len(generalKeys) {
		t.Errorf("general.csv has %d figures, of %d keys", len(general()), len(generalKeys))
	}
	defer func() {
		if recover() == nil {
			t.Error("a key that is not known has a figure")
		}
	}()
	Usual("house.unusual")
}
