package season

import (
	"testing"

	"eyeup/quantity"
	"eyeup/weather"
)

// TestYearsAsked counts the years in which benches are to suffice: whole years, and no year more
// for a share that comes out even.
func TestYearsAsked(t *testing.T) {
	for _, one := range []struct {
		fits  quantity.Share
		years int
		want  int
	}{{0.9, 30, 27}, {0.9, 28, 26}, {0.7, 10, 7}, {1, 12, 12}, {0.55, 20, 11}, {0.5, 5, 3}} {
		m := &Planner{Given: &Given{Weather: make([]*weather.Hours, one.years)}, Asked: &Asked{Fits: one.fits}}
		if got := m.AskedYears(); got != one.want {
			t.Errorf("%v of %d years: %d, want %d", one.fits, one.years, got, one.want)
		}
	}
}
