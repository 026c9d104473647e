package odds

import (
	"math"
	"testing"
)

func TestStreamsRepeatAndStandApart(t *testing.T) {
	first := func(seed uint64, name string) uint64 { return Stream(seed, name).Uint64() }
	once, again := first(1, "normals/1987"), first(1, "normals/1987")
	if once != again {
		t.Error("the same seed and name gave other figures")
	}
	a := Stream(1, "a")
	for range 100 {
		Stream(1, "b").Uint64()
	}
	if a.Uint64() != first(1, "a") {
		t.Error("another stream disturbed this one")
	}
	seen := map[uint64]bool{}
	for seed := range uint64(20) {
		for _, name := range []string{"", "a", "b", "a/b"} {
			seen[first(seed, name)] = true
		}
	}
	if len(seen) != 80 {
		t.Errorf("80 streams began with %d figures", len(seen))
	}
}

// A stream is the same for ever: these were its figures when it was made. The source
// behind it is held fixed by the promise of math/rand/v2 for PCG.
func TestStreamStaysWhatItWas(t *testing.T) {
	s := Stream(2027, "trial")
	got := [3]uint64{s.Uint64(), s.Uint64(), s.Uint64()}
	if want := [3]uint64{0xb21f2d67913c9623, 0x826cdeaa21486e98, 0xf3b3adcfdfb052db}; got != want {
		t.Errorf("%#x, want %#x", got, want)
	}
}

// Efron 1979: among n drawn from n, the i-th figure or a lower one is the median of an
// odd sample with the odds that a binomial of n and i/n reaches half. So the bounds of
// many draws are those figures at which these odds pass the tails.
func TestBoundsOfAMedianAgreeWithEfron(t *testing.T) {
	const n, sure = 31, 0.86 // so that no figure lies near a tail
	s := make(Sample, n)
	for i := range s {
		s[i] = float64(i + 1)
	}
	exact := func(odds float64) float64 {
		for i := 1; ; i++ {
			if tail(n, (n+1)/2, n, float64(i)/n) >= odds {
				return float64(i)
			}
		}
	}
	from, to, err := s.Bounds(0.5, sure, 4000, Stream(1, "bounds"))
	if err != nil || from != exact((1-sure)/2) || to != exact((1+sure)/2) {
		t.Errorf("%g to %g (%v), want %g to %g", from, to, err, exact((1-sure)/2), exact((1+sure)/2))
	}
}

func TestBoundsKeepNeverAndRepeat(t *testing.T) {
	s := Sorted([]float64{math.Inf(-1), math.Inf(-1), 90, 95, 99, 101, 102, 103, 110, 115})
	from, to, err := s.Bounds(0.2, 0.9, 500, Stream(3, "x"))
	if err != nil || !math.IsInf(from, -1) || math.IsInf(to, 0) {
		t.Errorf("%g to %g (%v)", from, to, err)
	}
	f, o, _ := s.Bounds(0.2, 0.9, 500, Stream(3, "x"))
	if f != from || o != to {
		t.Error("the same stream gave other bounds")
	}
	for _, bad := range []func() error{
		func() error { _, _, err := Sample{}.Bounds(.5, .9, 500, Stream(1, "")); return err },
		func() error { _, _, err := s.Bounds(1.5, .9, 500, Stream(1, "")); return err },
		func() error { _, _, err := s.Bounds(.5, 1, 500, Stream(1, "")); return err },
		func() error { _, _, err := s.Bounds(.5, .9, 5, Stream(1, "")); return err },
	} {
		if bad() == nil {
			t.Error("nonsense was given bounds")
		}
	}
}
