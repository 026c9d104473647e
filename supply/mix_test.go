package supply

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"eyeup/quantity"
)

// Common practice: thirty no. 1 nursery pots, each with a clump, took two cubic feet.
func TestThirtyPotsWithAClumpTakeTwoCubicFeet(t *testing.T) {
	n, err := Mix("no1", 30, "clump")
	if err != nil {
		t.Fatal(err)
	}
	const twoCubicFeet = 2 * 28.316846592
	if n.Litres.Low > twoCubicFeet || n.Litres.High < twoCubicFeet || math.Abs(n.Litres.Middle/twoCubicFeet-1) > 0.15 {
		t.Errorf("%.1f, %.1f, %.1f L; want a range with %.1f L, and the middle within 15 %%", n.Litres.Low, n.Litres.Middle, n.Litres.High, twoCubicFeet)
	}
	t.Logf("%.1f, %.1f, %.1f L against %.1f", n.Litres.Low, n.Litres.Middle, n.Litres.High, twoCubicFeet)
}

// HortScience 59(10):1477 (2024): a no. 1 pot holds 2.8 L; 0.75 US gallons are 2.839 L.
// Ontario's cell volumes, in cubic centimetres.
func TestContainersHoldWhatIsPublished(t *testing.T) {
	for id, want := range map[string]float64{"no1": 2.8, "tray24": .171, "tray38": .106, "tray50": .066, "tray72": .043, "tray128": .023, "tray200": .011, "tray288": .007} {
		c, err := ContainerNamed(id)
		if err != nil || c.Volume.Value != want {
			t.Errorf("%s holds %g L (%v), want %g", id, c.Volume.Value, err, want)
		}
	}
	if c, _ := ContainerNamed("no1"); math.Abs(c.Volume.Value-2.839) > 0.05 {
		t.Errorf("a trade gallon holds %g L, want 2.839 within 0.05", c.Volume.Value)
	}
}

// The widths and heights of a pot must make the volume that is told of it.
func TestMeasuresOfPotsAgreeWithTheirVolumes(t *testing.T) {
	for _, c := range Containers() {
		if !known(c.Height) {
			continue
		}
		if v := c.brim(); v < c.Volume.Low || v > c.Volume.High || math.Abs(v/c.Volume.Value-1) > 0.05 {
			t.Errorf("%s: its measures make %.2f L, its volume is %.2f L", c.ID, v, c.Volume.Value)
		}
	}
}

// Solid geometry: a cylinder's foot and rim, a cone, and the half-way cut of one.
func TestFrustum(t *testing.T) {
	for _, c := range []struct{ top, bottom, depth, want float64 }{{2, 2, 3, 12}, {2, 0, 3, 4}, {2, 1, 3, 7}} {
		if got := frustum(c.top, c.bottom, c.depth); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("frustum %v: %g", c, got)
		}
	}
	c := Container{Shape: Round, Cells: 1}
	c.Top.Value, c.Bottom.Value, c.Height.Value = 2, 0, 4
	if got := c.filled(2); math.Abs(got-1.0/8) > 1e-12 {
		t.Errorf("a cone filled half way up holds %g of the whole, want an eighth", got)
	}
	if got := c.brim() * 1000; math.Abs(got-4*math.Pi/3) > 1e-12 {
		t.Errorf("a cone 4 high on a circle of radius 1 holds %g, want 4π/3", got)
	}
}

func TestMixProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.SampledFrom(Containers()).Draw(t, "container")
		n := rapid.IntRange(0, 500).Draw(t, "count")
		bare, err := Mix(c.ID, n, "")
		if err != nil {
			t.Fatal(err)
		}
		if bare.Litres.Low > bare.Litres.Middle || bare.Litres.Middle > bare.Litres.High || bare.Litres.Low < 0 {
			t.Errorf("out of order: %v", bare.Litres)
		}
		if twice, _ := Mix(c.ID, 2*n, ""); math.Abs(twice.Litres.Middle-2*bare.Litres.Middle) > 1e-9 {
			t.Error("twice the pots do not take twice the mix")
		}
		most := float64(n*c.Cells) * c.Volume.Value * 1.15
		if bare.Litres.Middle > most+1e-9 {
			t.Errorf("%g L fill what holds %g L with its settling", bare.Litres.Middle, most)
		}
		if full, err := Mix(c.ID, n, "division"); err == nil && n > 0 && full.Litres.Middle >= bare.Litres.Middle {
			t.Error("a division takes no room")
		}
	})
}

func TestMixRefuses(t *testing.T) {
	for _, c := range []struct {
		container, form string
		count           int
	}{{"no9", "clump", 3}, {"no1", "hat", 3}, {"no1", "clump", -1}, {"no1", "clump", 1 << 40}, {"tray72", "clump", 1}, {"round4", "clump", 4}} {
		if n, err := Mix(c.container, c.count, c.form); err == nil {
			t.Errorf("%v gave %v", c, n.Litres)
		}
	}
	if _, err := potUp("no3", "no1", 1); err == nil {
		t.Error("a large ball went into a small pot")
	}
	if _, err := potUp("no9", "no1", 1); err == nil {
		t.Error("a ball from nowhere went into a pot")
	}
}

func potUp(from, to string, count int) (Need, error) {
	c, err := ContainerNamed(to)
	if err != nil {
		return Need{}, err
	}
	return c.PotUp(from, count)
}

// Common practice: four to six clumps are woken in a tray, half in the mix. They leave room
// for most of it.
func TestAWakingTrayHoldsSeveralClumps(t *testing.T) {
	bare, _ := Mix("tray1020", 1, "")
	with, err := Mix("tray1020", 1, "clump")
	if err != nil || with.Litres.Middle > 0.9*bare.Litres.Middle || with.Litres.Middle < 0.5*bare.Litres.Middle {
		t.Errorf("%v with clumps, %v without (%v)", with.Litres, bare.Litres, err)
	}
	if _, err := Mix("tray1020", 1, "seed"); err == nil {
		t.Error("it is known how many seeds lie in a tray")
	}
}

func TestAContainerMayBeMeasured(t *testing.T) {
	c, _ := ContainerNamed("no1")
	large, err := c.Holding(5.6 * quantity.Litre)
	if err != nil {
		t.Fatal(err)
	}
	small, _ := c.Mix(10, "")
	if n, err := large.Mix(10, ""); err != nil || math.Abs(n.Litres.Middle/small.Litres.Middle-2) > 1e-9 || n.Figures()[0].Value != 5.6 {
		t.Errorf("twice the pot takes %v (%v), not twice %v", n.Litres, err, small.Litres)
	}
	if _, err := c.Holding(0); err == nil {
		t.Error("a pot of nothing passed")
	}
}

func TestPottingUpTakesLessThanAnEmptyPot(t *testing.T) {
	up, err := potUp("round4", "no1", 10)
	if err != nil {
		t.Fatal(err)
	}
	whole, _ := Mix("no1", 10, "")
	ball, _ := Mix("round4", 10, "")
	if math.Abs(whole.Litres.Middle-ball.Litres.Middle-up.Litres.Middle) > 1e-9 {
		t.Errorf("%g L for the ball and %g L around it are not the %g L of the pot", ball.Litres.Middle, up.Litres.Middle, whole.Litres.Middle)
	}
}
