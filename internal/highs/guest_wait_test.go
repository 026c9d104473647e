package highs

import (
	"context"
	"reflect"
	"testing"

	"eyeup/solve"
)

// A guest serves one programme after another, and what it answered before does not show: the
// answers are those of a guest that has just been started. Letting go twice is letting go once.
func TestGuestsWaitForTheNext(t *testing.T) {
	e := engine(t)
	e.door.Lock()
	for _, g := range e.idle {
		g.close()
	}
	e.idle = nil
	e.door.Unlock()
	relax := func(p *solve.Programme) solve.Relaxation {
		h, err := e.Hold(context.Background(), p)
		if err != nil {
			t.Fatal(err)
		}
		r, err := h.Relax(context.Background(), solve.Limits{})
		if err != nil {
			t.Fatal(err)
		}
		h.Close()
		h.Close()
		return r
	}
	fresh := relax(garden(1, 12, 10))
	if len(e.idle) != 1 {
		t.Fatalf("%d guests wait after one programme", len(e.idle))
	}
	waited := e.idle[0]
	relax(garden(2, 20, 15))
	if again := relax(garden(1, 12, 10)); !reflect.DeepEqual(again, fresh) || len(e.idle) != 1 || e.idle[0] != waited {
		t.Errorf("%d guests wait; the second answer is %+v, the first was %+v", len(e.idle), again, fresh)
	}
	first, second := held(t, workshop()), held(t, garden(3, 12, 10))
	if first.g == second.g {
		t.Error("one guest serves two programmes at once")
	}
}
