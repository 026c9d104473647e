package odds

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// R 4.2.2, by the textbook formula: ten individuals, eight for and two against believed.
func TestBetaBinomialAgreesWithR(t *testing.T) {
	want := []float64{.00011907597, .00086600706, .0035073286, .010392085, .025005954, .051440819,
		.092879257, .14860681, .20897833, .24767802, .21052632}
	c := Among(10, Beta{8, 2})
	sum := 0.0
	for k, w := range want {
		if got := c.Exactly(k); math.Abs(got-w) > 1e-8 {
			t.Errorf("odds of %d: %.11f, want %.11f", k, got, w)
		}
		sum += w
		if got := c.AtMost(k); math.Abs(got-sum) > 1e-7 {
			t.Errorf("odds of at most %d: %.9f, want %.9f", k, got, sum)
		}
	}
	if math.Abs(c.Mean()-8) > 1e-12 || math.Abs(c.Variance()-2.90909) > 1e-5 {
		t.Errorf("mean %g and variance %g, want 8 and 2.90909", c.Mean(), c.Variance())
	}
	for k := range 6 { // nothing known: every count equally likely
		if got := Among(5, Even).Exactly(k); math.Abs(got-1.0/6) > 1e-12 {
			t.Errorf("nothing known, odds of %d of 5: %g, want 1/6", k, got)
		}
	}
}

// R 4.2.2 (qbeta): eight for and two against believed, then seven of ten seen.
func TestBeliefAfterSeeingAgreesWithR(t *testing.T) {
	b := Beta{8, 2}.After(7, 10)
	if b != (Beta{15, 5}) || b.Mean() != 0.75 || b.Weight() != 20 {
		t.Errorf("belief %v with mean %g", b, b.Mean())
	}
	for p, want := range map[float64]float64{.05: .58087977, .5: .75845745, .95: .89009363} {
		if got := b.Quantile(p); math.Abs(got-want) > 1e-6 {
			t.Errorf("quantile %g: %.8f, want %.8f", p, got, want)
		}
	}
	if !math.IsNaN(Beta{0, 1}.Quantile(.5)) || !math.IsNaN(Among(4, Beta{}).Exactly(1)) || Among(4, Beta{}).Quantile(.5) != -1 {
		t.Error("a belief of nothing gave an answer")
	}
}

// R 4.2.2 (pbinom, and the beta-binomial by its formula).
func TestLeastAgreesWithR(t *testing.T) {
	for _, c := range []struct {
		want        int
		share, sure float64
		n           int
		reached     float64
	}{
		{1, .8, .95, 2, .96}, {1, .5, .99, 7, .9921875}, {10, .8, .9, 15, .93894857},
		{10, .8, .95, 16, .97334267}, {20, .7, .95, 35, .96411778}, {50, .85, .95, 64, .95091299},
		{50, .85, .99, 67, .99149407}, {12, .6, .9, 25, .92219894}, {100, .9, .95, 117, .95692952},
	} {
		n, err := Least(c.want, c.share, c.sure)
		if err != nil || n != c.n || math.Abs(Of(n, c.share).AtLeast(c.want)-c.reached) > 1e-7 {
			t.Errorf("%d at %g, %g sure: %d (%v) reaching %.8f, want %d reaching %.8f",
				c.want, c.share, c.sure, n, err, Of(n, c.share).AtLeast(c.want), c.n, c.reached)
		}
	}
	for _, c := range []struct {
		want    int
		belief  Beta
		sure    float64
		n       int
		reached float64
	}{
		{10, Beta{8, 2}, .9, 17, .9221968}, {10, Beta{80, 20}, .9, 15, .92548407},
		{10, Beta{15, 5}, .95, 19, .95445089}, {20, Beta{42, 10}, .95, 31, .96740117},
	} {
		n, err := LeastBelieved(c.want, c.belief, c.sure)
		if err != nil || n != c.n || math.Abs(Among(n, c.belief).AtLeast(c.want)-c.reached) > 1e-7 {
			t.Errorf("%d at %v, %g sure: %d (%v) reaching %.8f, want %d reaching %.8f",
				c.want, c.belief, c.sure, n, err, Among(n, c.belief).AtLeast(c.want), c.n, c.reached)
		}
	}
}

func TestLeastRefusesWhatCannotBe(t *testing.T) {
	for _, c := range []struct {
		want        int
		share, sure float64
	}{{10, 0, .95}, {10, 1.2, .95}, {10, .8, 1}, {10, .8, 95}, {-1, .8, .95}, {999_999, .5, .95}, {1, 1e-9, .95}} {
		if n, err := Least(c.want, c.share, c.sure); err == nil {
			t.Errorf("%d at %g, %g sure gave %d", c.want, c.share, c.sure, n)
		}
	}
	if _, err := LeastBelieved(10, Beta{0, 3}, .95); err == nil {
		t.Error("a belief of nothing for gave a number")
	}
	if n, err := Least(0, .5, .95); n != 0 || err != nil {
		t.Errorf("nothing wanted: %d (%v)", n, err)
	}
}

func TestSeedsInACell(t *testing.T) { // arithmetic: 1 - 0.2^n
	for n, want := range map[int]float64{1: .8, 2: .96, 3: .992} {
		if got := Of(n, .8).AtLeast(1); math.Abs(got-want) > 1e-12 {
			t.Errorf("%d seeds: %g, want %g", n, got, want)
		}
	}
}

// The least number is enough and one fewer is not; the odds of all counts are one; the
// uncertain count is never narrower than the certain one of its mean.
func TestCountProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.IntRange(1, 60).Draw(t, "want")
		belief := Beta{rapid.Float64Range(1, 80).Draw(t, "for"), rapid.Float64Range(.5, 40).Draw(t, "against")}
		sure := rapid.Float64Range(.5, .95).Draw(t, "sure")
		n, err := LeastBelieved(want, belief, sure)
		if err != nil {
			t.Fatal(err)
		}
		if Among(n, belief).AtLeast(want) < sure-1e-9 || Among(n-1, belief).AtLeast(want) > sure+1e-9 {
			t.Errorf("%d is not the least", n)
		}
		c := Among(min(n, 300), belief)
		if sum := c.AtMost(c.N/2) + c.AtLeast(c.N/2+1); math.Abs(sum-1) > 1e-9 {
			t.Errorf("all counts together have odds %.12f", sum)
		}
		if c.Variance() < Of(c.N, belief.Mean()).Variance()-1e-12 {
			t.Error("a believed count is narrower than a known one")
		}
		k := c.Quantile(sure)
		if c.AtMost(k) < sure-1e-9 || (k > 0 && c.AtMost(k-1) > sure+1e-9) {
			t.Errorf("%d is not the quantile %g of %d", k, sure, c.N)
		}
	})
}

func TestCountsAtTheirEnds(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"none can turn out", Of(5, 0).Exactly(0), 1}, {"all must", Of(5, 1).Exactly(5), 1},
		{"at least one of none", Of(5, 0).AtLeast(1), 0}, {"at least all of sure ones", Of(5, 1).AtLeast(5), 1},
		{"fewer than none", Of(5, .5).AtMost(-1), 0}, {"more than all", Of(5, .5).Exactly(6), 0},
		{"of no individuals", Of(0, .5).Exactly(0), 1}, {"mean", Of(5, .5).Mean(), 2.5},
	} {
		if c.got != c.want {
			t.Errorf("%s: %g, want %g", c.name, c.got, c.want)
		}
	}
	if a := Of(10, .5).Amount(); a != (Amount{3, 5, 7}) { // qbinom(c(.1,.5,.9),10,.5) is 3 5 7: from the row 1 10 45 120 210 252 of Pascal's triangle
		t.Errorf("ten coins: %v", a)
	}
}
