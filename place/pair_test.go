package place

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// lone is a body of 2 MJ/K losing 50 W/K beside a floor that it does not touch: the one-node
// case whose answers follow from the closed form T∞ + (T0 − T∞)·exp(−Kt/C).
func lone(loss float64) pair {
	return pair{airLoss: loss, airHeat: 2e6, floorHeat: 1}
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.9g, want %.9g within %g", what, got, want, within)
	}
}

// The expected figures were computed from the closed form of a first-order body with
// K 50 W/K, C 2 MJ/K, outside at -5 °C, starting at 10 °C.
func TestOneBodyInClosedForm(t *testing.T) {
	s := strideOf(lone(50), hour)
	end, mean := s.step(twin{10, 0}, drive{out: -5})
	near(t, "an hour without heat, end", end.air, 8.708968, 1e-6)
	near(t, "an hour without heat, mean", mean.air, 9.344802, 1e-6)
	end, mean = s.step(twin{10, 0}, drive{out: -5, gain: 500})
	near(t, "500 W of gain, end", end.air, 9.569656, 1e-6)
	near(t, "500 W of gain, mean", mean.air, 9.781601, 1e-6)

	x := twin{10, 0}
	for range 24 {
		x, _ = s.step(x, drive{out: -5})
	}
	near(t, "a day by hours", x.air, -3.270123, 1e-6)
	day := strideOf(lone(50), 24*hour)
	end, _ = day.step(twin{10, 0}, drive{out: -5})
	near(t, "a day at once", end.air, x.air, 1e-9)

	ten := strideOf(lone(50), 10*hour)
	end, _ = ten.step(twin{10, 0}, drive{out: -5, gain: 400})
	near(t, "400 W for ten hours", end.air, 5.845988, 1e-6)
	long := strideOf(lone(50), 1e7)
	end, _ = long.step(twin{10, 0}, drive{out: -5, gain: 400})
	near(t, "400 W for ever", end.air, 3, 1e-9)
}

func TestOneBodyHeated(t *testing.T) {
	s := strideOf(lone(50), hour)
	free, _ := s.step(twin{10, 0}, drive{out: -5})
	near(t, "heat to hold 10 °C", s.heatToEnd(10, free.air), 750, 1e-9)
	free, mean := s.step(twin{8, 0}, drive{out: -5})
	near(t, "heat from 8 to 10 °C in an hour", s.heatToEnd(10, free.air), 1811.861, 1e-3)
	end, mean := s.heated(free, mean, 1000)
	near(t, "1000 W at most, end", end.air, 8.602482, 1e-6)
	near(t, "1000 W at most, mean", mean.air, 8.305759, 1e-6)
}

func TestOneBodyVented(t *testing.T) {
	s := strideOf(lone(50), hour)
	sunny := drive{out: 15, gain: 1500}
	x, _ := s.step(twin{20, 0}, sunny)
	near(t, "an hour shut", x.air, 22.151720, 1e-5)
	for range 5 {
		x, _ = s.step(x, sunny)
	}
	near(t, "six hours shut", x.air, 30.431294, 1e-5)

	h := house{opens: 25, ventMost: 500}
	shut, open := strideOf(lone(50), hour), strideOf(lone(550), hour)
	start := twin{24.8, 0}
	v, end, _ := h.ventToHold(&shut, &open, start, sunny)
	near(t, "loss that holds 25 °C", 50+v, 140.232, 1e-2)
	near(t, "end", end.air, 25, 2*ventPrecision)
}

func TestOneBodyThatLosesNothing(t *testing.T) {
	s := strideOf(lone(0), hour)
	end, mean := s.step(twin{10, 0}, drive{out: -5, gain: 100})
	near(t, "end", end.air, 10+100*3600/2e6, 1e-12)
	near(t, "mean", mean.air, 10+100*1800/2e6, 1e-12)
}

// A body driven by an outside that swings once a day keeps 1/√(1+(ωτ)²) of the swing and
// lags by atan(ωτ)/ω: textbook first-order response, here stepped in minutes.
func TestOneBodyFollowsASwing(t *testing.T) {
	want := map[float64][2]float64{
		1: {.96740, .978}, 2: {.88591, 1.842}, 3: {.78644, 2.543}, 6: {.53703, 3.835}, 12: {.30331, 4.823},
	}
	const dt, omega = 60.0, 2 * math.Pi / 86400
	for tau, w := range want {
		s := strideOf(pair{airLoss: 1, airHeat: tau * 3600, floorHeat: 1}, dt)
		var x twin
		var cosine, sine float64
		for i := range 20 * 1440 {
			x, _ = s.step(x, drive{out: math.Cos(omega * (float64(i) + 0.5) * dt)})
			if i >= 19*1440 {
				at := omega * float64(i+1) * dt
				cosine, sine = cosine+x.air*math.Cos(at)/720, sine+x.air*math.Sin(at)/720
			}
		}
		near(t, "gain", math.Hypot(cosine, sine), w[0], 1e-4)
		near(t, "lag in hours", math.Atan2(sine, cosine)/omega/3600, w[1], 1e-3)
	}
}

// An independent reckoning of the pair: the fourth-order rule of Runge and Kutta in steps
// of a second.
func TestPairAgainstRungeKutta(t *testing.T) {
	p := pair{airLoss: 263, coupling: 79, edge: 27.5, deep: 13.1, airHeat: 788e3, floorHeat: 3.15e6}
	d := drive{out: -7, ground: 9, gain: 2400, floorGain: 800}
	rate := func(x twin) twin { s := stride{pair: p}; return s.rates(x, d) }
	plus := func(x, r twin, dt float64) twin { return twin{x.air + r.air*dt, x.floor + r.floor*dt} }
	x := twin{12, 6}
	for range 3600 {
		k1 := rate(x)
		k2 := rate(plus(x, k1, 0.5))
		k3 := rate(plus(x, k2, 0.5))
		k4 := rate(plus(x, k3, 1))
		x = twin{
			x.air + (k1.air+2*k2.air+2*k3.air+k4.air)/6,
			x.floor + (k1.floor+2*k2.floor+2*k3.floor+k4.floor)/6,
		}
	}
	s := strideOf(p, hour)
	end, _ := s.step(twin{12, 6}, d)
	near(t, "air", end.air, x.air, 1e-10)
	near(t, "floor", end.floor, x.floor, 1e-10)
}

// What goes in, less what goes out, is what is stored, whatever the pair.
func TestPairKeepsAccount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		some := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		p := pair{
			airLoss: some("airLoss", 0, 2000), coupling: some("coupling", 0, 500), edge: some("edge", 0, 100),
			deep: some("deep", 0, 50), airHeat: some("airHeat", 1e4, 1e7), floorHeat: some("floorHeat", 1e4, 1e8),
		}
		d := drive{some("out", -40, 40), some("ground", 0, 20), some("gain", 0, 20e3), some("floorGain", 0, 9e3)}
		x := twin{some("air", -30, 40), some("floor", -20, 30)}
		s := strideOf(p, hour)
		end, mean := s.step(x, d)
		heat := some("heat", 0, 20e3)
		end, mean = s.heated(end, mean, heat)

		crossing := p.coupling * (mean.air - mean.floor)
		in := d.gain + heat - p.airLoss*(mean.air-d.out) - crossing
		floor := d.floorGain + crossing - p.edge*(mean.floor-d.out) - p.deep*(mean.floor-d.ground)
		scale := 1e5 + math.Abs(d.gain) + heat
		if off := math.Abs(p.airHeat*(end.air-x.air)/hour - in); off > 1e-9*scale {
			t.Fatalf("the air's account is out by %g W", off)
		}
		if off := math.Abs(p.floorHeat*(end.floor-x.floor)/hour - floor); off > 1e-9*scale {
			t.Fatalf("the floor's account is out by %g W", off)
		}
	})
}
