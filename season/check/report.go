package check

import (
	"fmt"
	"math"

	"eyeup/civil"
	"eyeup/odds"
)

// Difference is one thing in which a plan and its replay do not agree.
type Difference struct {
	What  string `json:"what"`  // such as "count", "planting out", "heat given"
	Where string `json:"where"` // the batch, place or week, in words
	Want  string `json:"want"`  // as replayed, or added again
	Got   string `json:"got"`   // as the plan has it
}

// String says the difference in a line.
func (d Difference) String() string {
	return fmt.Sprintf("%s, %s: %s in the plan, %s when replayed", d.Where, d.What, d.Got, d.Want)
}

// Report is what replaying a plan brought to light.
type Report struct {
	Differences []Difference `json:"differences"`
}

// OK reports whether the plan holds.
func (r Report) OK() bool { return len(r.Differences) == 0 }

func (r *Report) add(what, where string, want, got any) {
	r.Differences = append(r.Differences, Difference{what, where, fmt.Sprint(want), fmt.Sprint(got)})
}

// exactly holds two whole numbers, names or dates to be the same.
func exactly[T comparable](r *Report, what, where string, want, got T) {
	if want != got {
		r.add(what, where, want, got)
	}
}

// within holds two figures to differ by no more than by. What is not finite must be the same.
func (r *Report) within(what, where string, want, got, by float64) {
	same := want == got || math.IsNaN(want) && math.IsNaN(got)
	if !same && !(math.Abs(want-got) <= by) {
		r.add(what, where, fmt.Sprintf("%.4g", want), fmt.Sprintf("%.4g", got))
	}
}

// spread holds three figures to differ by no more than the share of each, or by.
func (r *Report) spread(what, where string, want, got odds.Amount, share, by float64) {
	for _, part := range []struct {
		name      string
		want, got float64
	}{{"low", want.Low, got.Low}, {"middle", want.Middle, got.Middle}, {"high", want.High, got.High}} {
		r.within(what+" ("+part.name+")", where, part.want, part.got, max(by, share*math.Abs(part.want)))
	}
}

// near reports whether two dates are within so many days, or both never.
func near(a, b civil.Date, days civil.Days) bool {
	if a.IsZero() || b.IsZero() {
		return a == b
	}
	return max(a.Sub(b), b.Sub(a)) <= days
}
