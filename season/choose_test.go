package season

import (
	"testing"

	"eyeup/culture"
)

// What is started later than usual and gains less than the open ground comes behind it;
// what is started in the usual weeks comes first even so, for that is the custom.
func TestBelatedStartsComeBehindTheGround(t *testing.T) {
	l := &life{Kind: &culture.Kind{}}
	way := func(name string, weeksBefore int, gain float64) *outcome {
		return &outcome{option: option{route: &route{name: name, warm: true}, start: 140 - 7*weeksBefore, outFrom: 140}, life: l, gain: gain}
	}
	ground := way("ground", 0, 0)
	ground.route.direct = true
	ranked := byCustom(func(*life) (from, to float64) { return 3, 4 })([]*outcome{
		way("late and poor", 0, -0.2), ground, way("late", 1, 0.4), way("usual", 4, -0.1), way("late and poor", 2, -0.1),
	})
	for i, want := range []string{"usual", "late", "ground", "late and poor", "late and poor"} {
		if ranked[i].route.name != want {
			t.Errorf("%d is %q, want %q", i, ranked[i].route.name, want)
		}
	}
}
