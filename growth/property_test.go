package growth

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"eyeup/quantity"
)

func anySprouting(t *rapid.T) Sprouting {
	base := rapid.Float64Range(-3, 15).Draw(t, "base")
	from := base + rapid.Float64Range(1, 20).Draw(t, "from")
	to := from + rapid.Float64Range(0, 10).Draw(t, "to")
	return Sprouting{
		Base: quantity.Celsius(base), WarmFrom: quantity.Celsius(from), WarmTo: quantity.Celsius(to),
		Ceiling: quantity.Celsius(to + rapid.Float64Range(1, 15).Draw(t, "ceiling")),
		Sum:     rapid.Float64Range(20, 400).Draw(t, "sum"), Eyed: rapid.Float64Range(.2, 1).Draw(t, "eyed"),
		Sigma: rapid.Float64Range(.05, .6).Draw(t, "sigma"), Never: quantity.Share(rapid.Float64Range(0, .6).Draw(t, "never")),
	}
}

func TestSproutingProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySprouting(t)
		if err := s.Check(); err != nil {
			t.Fatal(err)
		}
		cool := rapid.Float64Range(-20, s.WarmTo.Celsius()).Draw(t, "cool")
		warm := rapid.Float64Range(cool, s.WarmTo.Celsius()).Draw(t, "warm")
		if s.Rate(cool) > s.Rate(warm) || s.Rate(cool) < 0 {
			t.Fatalf("%.2f °C sprouts faster than %.2f °C", cool, warm)
		}
		sum := rapid.Float64Range(0, 2000).Draw(t, "warmth")
		more := sum + rapid.Float64Range(0, 500).Draw(t, "more")
		up, eyed := s.ShareUp(sum), s.ShareEyed(sum)
		if up > s.ShareUp(more) || up > eyed || up < 0 || eyed > 1-float64(s.Never)+1e-12 {
			t.Fatalf("%g up and %g eyed of %g at most", up, eyed, 1-float64(s.Never))
		}
		share := rapid.Float64Range(.001, .999).Draw(t, "share")
		at, ok := s.SumFor(share)
		if ok != (share < 1-float64(s.Never)) || ok == math.IsInf(at, 1) {
			t.Fatalf("sum %g, %v for a share of %g", at, ok, share)
		}
		if ok && math.Abs(s.ShareUp(at)-share) > 1e-9 {
			t.Fatalf("%g up, not %g", s.ShareUp(at), share)
		}
		days := s.UpDays(s.WarmFrom)
		if !(days.Low < days.Middle && days.Middle < days.High) || s.EyedDays(s.WarmFrom).Middle > days.Middle {
			t.Fatalf("days up %v", days)
		}
		if cold := s.UpDays(s.Base); !math.IsInf(cold.Low, 1) {
			t.Fatalf("up in %v at the base", cold)
		}
	})
}

func TestGrowingProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base := rapid.Float64Range(-5, 15).Draw(t, "base")
		best := base + rapid.Float64Range(2, 30).Draw(t, "best")
		ceiling := best + rapid.Float64Range(2, 20).Draw(t, "ceiling")
		g := Growing{quantity.Celsius(base), quantity.Celsius(best), quantity.Celsius(ceiling)}
		if err := g.Check(); err != nil {
			t.Fatal(err)
		}
		a := rapid.Float64Range(-30, 60).Draw(t, "a")
		b := rapid.Float64Range(-30, 60).Draw(t, "b")
		low, high := min(a, b), max(a, b)
		for _, c := range []float64{low, high} {
			if r := g.Rate(c); !(r >= 0 && r <= 1) {
				t.Fatalf("rate %g at %g °C", r, c)
			}
		}
		if high <= best && g.Rate(low) > g.Rate(high) || low >= best && g.Rate(low) < g.Rate(high) {
			t.Fatalf("not one hump: %g at %g, %g at %g", g.Rate(low), low, g.Rate(high), high)
		}
	})
}

func TestSlowingProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		limit := rapid.Float64Range(.05, 1).Draw(t, "limit")
		floor := rapid.Float64Range(0, 1).Draw(t, "floor")
		p := rapid.Float64Range(0, 3).Draw(t, "progress")
		further := p + rapid.Float64Range(0, 1).Draw(t, "further")
		s := PotShare(p, limit, floor)
		if !(s >= floor && s <= 1) || PotShare(further, limit, floor) > s {
			t.Fatalf("share %g at %g, %g further on", s, p, PotShare(further, limit, floor))
		}
		if PotShare(p, limit*1.2, floor) < s {
			t.Fatal("a larger pot slows more")
		}
		full := rapid.Float64Range(0, 1).Draw(t, "full")
		part := full * rapid.Float64Range(0, 1).Draw(t, "part")
		first := InPot(p, part, limit, floor)
		if parts := first + InPot(p+first, full-part, limit, floor); math.Abs(parts-InPot(p, full, limit, floor)) > 1e-9 {
			t.Fatalf("%g in two parts, %g in one", parts, InPot(p, full, limit, floor))
		}
		if small := 1e-7; math.Abs(InPot(p, small, limit, floor)-small*s) > 1e-3*small {
			t.Fatalf("it begins with %g of full growth, not %g", InPot(p, small, limit, floor)/small, s)
		}
	})
}

func TestDegreeDayProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-30, 40).Draw(t, "low")
		high := low + rapid.Float64Range(0, 30).Draw(t, "swing")
		sine, err := SineDegreeDays(low, high, 10, 30)
		if err != nil {
			t.Fatal(err)
		}
		warmer, err := SineDegreeDays(low+1, high+1, 10, 30)
		if err != nil {
			t.Fatal(err)
		}
		if sine < -1e-12 || sine > 20+1e-12 || warmer < sine-1e-12 {
			t.Fatalf("%g degree-days, %g when warmer", sine, warmer)
		}
	})
}

func TestBadFiguresAreRefused(t *testing.T) {
	c := quantity.Celsius
	good := Sprouting{Base: c(9), WarmFrom: c(22), WarmTo: c(27), Ceiling: c(35), Sum: 210, Eyed: .55, Sigma: .25, Never: .1}
	if err := good.Check(); err != nil {
		t.Fatal(err)
	}
	for what, spoil := range map[string]func(*Sprouting){
		"base unknown":   func(s *Sprouting) { s.Base = quantity.Unknown() },
		"base too warm":  func(s *Sprouting) { s.Base = c(23) },
		"warm reversed":  func(s *Sprouting) { s.WarmTo = c(20) },
		"ceiling low":    func(s *Sprouting) { s.Ceiling = c(27) },
		"no sum":         func(s *Sprouting) { s.Sum = 0 },
		"sum unknown":    func(s *Sprouting) { s.Sum = math.NaN() },
		"eyes after up":  func(s *Sprouting) { s.Eyed = 1.1 },
		"no spread":      func(s *Sprouting) { s.Sigma = 0 },
		"none ever":      func(s *Sprouting) { s.Never = 1 },
		"less than none": func(s *Sprouting) { s.Never = -.1 },
	} {
		bad := good
		spoil(&bad)
		if bad.Check() == nil {
			t.Errorf("%s: passed", what)
		}
	}
	for _, g := range []Growing{{c(25), c(25), c(35)}, {c(5), c(25), c(25)}, {quantity.Unknown(), c(25), c(35)}, {c(5), c(25), quantity.Unknown()}} {
		if g.Check() == nil {
			t.Errorf("%v passed", g)
		}
	}
}

func BenchmarkBeta(b *testing.B) {
	hourly := make([]float64, 24*365)
	for h := range hourly {
		hourly[h] = 15 + 12*math.Sin(float64(h)/24*2*math.Pi)
	}
	g := Growing{quantity.Celsius(5.5), quantity.Celsius(24.6), quantity.Celsius(34.9)}
	for b.Loop() {
		DailyRates(hourly, g.Rate)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(hourly)), "ns/hour")
}
