package supply

import (
	"math"
	"testing"

	"eyeup/culture"
	"eyeup/odds"
	"eyeup/quantity"
)

// Every figure has its range, unit, source and sureness; the table's own reader refuses
// one that has not, and this holds the reader to it.
func TestEveryFigureIsWhole(t *testing.T) {
	if len(Figures()) < 80 {
		t.Fatalf("there are %d figures", len(Figures()))
	}
	for _, f := range Figures() {
		if f.Meaning == "" {
			t.Errorf("what %q means is not said", f.Key)
		}
	}
	if got := FiguresOf("no1", "clump displaces", "mix settles"); len(got) != 8 {
		t.Errorf("a no. 1 pot with a clump rests on %d figures, want 8", len(got))
	}
	for _, row := range []string{"a,b,2,1,3,L,measured,x", "a,b,1,1,1,,measured,x", "a,b,1,1,1,L,,x", "a,b,1,1,1,L,measured,", "a,b,one,1,1,L,measured,x",
		"a,b,1,1,1,L,measured,x\na,b,1,1,1,L,measured,x", "a,b,1"} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("the row %q was taken", row)
				}
			}()
			readFigures("of,key,low,value,high,unit,sure,source\n" + row)
		}()
	}
}

// What the kinds are raised in must be containers there are.
func TestContainersOfKinds(t *testing.T) {
	for _, name := range culture.Kinds() {
		k, _ := culture.Lookup(name)
		for _, id := range []string{k.StartIn, k.PotOnIn} {
			if _, err := ContainerNamed(id); id != "" && err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
}

// Makers of containers: a bale of 3.6 cubic feet of compressed peat makes about 6.
func TestABaleSwells(t *testing.T) {
	b := Compressed(3.6 * quantity.CubicFoot)
	loose := float64(b.Volume/quantity.CubicFoot) * b.Swells
	if math.Abs(loose/6-1) > 0.1 {
		t.Errorf("a bale makes %.2f cubic feet, want about 6", loose)
	}
	n, err := b.For(odds.Amount{Low: 100, Middle: 184, High: 400})
	if err != nil || n.Low != 1 || n.Get != 2 || n.High != 3 {
		t.Errorf("bales %+v (%v)", n, err)
	}
}

func TestBagsAreWhole(t *testing.T) {
	two := Loose(2 * quantity.CubicFoot)
	for litres, want := range map[float64]int{0: 0, 1: 1, 56.633693184: 1, 56.7: 2, 113.267386368: 2} {
		if n, err := two.For(odds.Exactly(litres)); err != nil || n.Get != want {
			t.Errorf("%g L: %d bags (%v), want %d", litres, n.Get, err, want)
		}
	}
	if _, err := Loose(quantity.Litre / 1e9).For(odds.Exactly(10)); err == nil {
		t.Error("ten thousand million bags were counted out")
	}
	for _, b := range []Bag{{}, Loose(-1), {quantity.Litre, 0.5}, {quantity.Volume(math.NaN()), 1}, {quantity.Litre, math.NaN()}} {
		if _, err := b.For(odds.Exactly(10)); err == nil {
			t.Errorf("%v was counted in", b)
		}
	}
}

// A part in a million is a milligram in a litre: 100 of them in 10 L are 1 g of nitrogen,
// which 5 g of a feed with a fifth of it bring.
func TestFeeds(t *testing.T) {
	g, err := LiquidFeed(10, 0.2)
	if err != nil || math.Abs(g.Middle-5) > 1e-9 || math.Abs(g.High-7.5) > 1e-9 {
		t.Errorf("%v g (%v), want 5 to 7.5", g, err)
	}
	// 6 pounds a cubic yard are 3.56 g/L: 2721.6 g in 764.55 L.
	if got := SlowFeed(odds.Exactly(764.55)).Middle; math.Abs(got/2721.6-1) > 0.02 {
		t.Errorf("a cubic yard takes %.0f g, want 2722", got)
	}
	for _, bad := range [][2]float64{{10, 0}, {10, 20}, {-1, .2}, {math.NaN(), .2}, {math.Inf(1), .2}} {
		if _, err := LiquidFeed(bad[0], bad[1]); err == nil {
			t.Errorf("%v was fed", bad)
		}
	}
}

func TestLabelsAndWaterAndBench(t *testing.T) {
	if n, err := Labels(100); err != nil || n != 110 {
		t.Errorf("%d labels (%v)", n, err)
	}
	if _, err := Labels(-1); err == nil {
		t.Error("less than no labels were had")
	}
	n, err := Mix("no1", 30, "")
	if err != nil {
		t.Fatal(err)
	}
	if w := n.Water(); !(w.Low > 0 && w.Low < w.Middle && w.Middle < w.High && w.High < n.Litres.Middle) {
		t.Errorf("water %v for %v of mix", w, n.Litres)
	}
	// A pot of 16.5 cm stands on 0.0272 m²; about 35 of them on a square metre.
	if b := n.Bench(); math.Abs(30/b.Middle-36) > 1.5 {
		t.Errorf("%.1f pots on a square metre", 30/b.Middle)
	}
}

func TestPacking(t *testing.T) {
	p, err := Pack(380, "clump", false)
	if err != nil || p.Crates.Low != 19 || p.Crates.Middle != 24 || p.Crates.High != 38 {
		t.Fatalf("380 clumps: %+v (%v)", p, err)
	}
	// A bulb crate of 40 by 60 by 20 cm holds 48 L: its clumps and their packing must go in.
	if held := figure("clump", "crate").Value * (figure("clump", "displaces").Value + figure("clump", "packing").Value); held > 48 {
		t.Errorf("a crate would hold %.0f L", held)
	}
	if !(p.Crate.High > LiftLimit && p.Crate.Middle < LiftLimit) {
		t.Errorf("a crate weighs %v kg", p.Crate)
	}
	bare, err := Pack(380, "clump", true)
	if err != nil || bare.Litres != (odds.Amount{}) || bare.Crate.Middle >= p.Crate.Middle {
		t.Errorf("bare: %+v (%v)", bare, err)
	}
	if _, err := Pack(3, "hat", false); err == nil {
		t.Error("hats were packed")
	}
	if _, err := Pack(-3, "corm", false); err == nil {
		t.Error("less than none were packed")
	}
}
