package highs

import (
	"sync/atomic"
	"testing"
)

// TestClock holds that the guest's clock counts, leaps over its time limit when hurried, and
// never goes back.
func TestClock(t *testing.T) {
	g := &guest{hurried: new(atomic.Bool)}
	if a, b := g.tick(), g.tick(); a != 1 || b != 2 {
		t.Errorf("the clock tells %v, then %v; want 1, then 2", a, b)
	}
	last := 2.0
	for range 3 {
		g.hurried.Store(true)
		leapt := g.tick()
		if leapt-last < never {
			t.Errorf("hurried from %v to %v, short of the time limit", last, leapt)
		}
		g.calm()
		if last = g.tick(); last <= leapt || last > leapt+10 {
			t.Errorf("calmed from %v to %v", leapt, last)
		}
	}
}
