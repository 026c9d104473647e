package season

import (
	"testing"

	"eyeup/odds"
)

// TestKeptClimates works a season out twice with climates kept, and once with other years:
// what is kept changes nothing, and is not taken for what it is not.
func TestKeptClimates(t *testing.T) {
	b := waterville(t)
	gain := func(b Brief) odds.Amount {
		r, err := Make(b)
		if err != nil {
			t.Fatal(err)
		}
		return r.Plans[1].GainWeeks
	}
	bare := gain(b)
	b.Kept = &Climates{}
	for range 2 {
		if kept := gain(b); kept != bare {
			t.Errorf("with climates kept %v weeks are gained, without %v", kept, bare)
		}
	}
	fewer := b
	fewer.Weather, fewer.Years = b.Weather[:20], b.Years[:20]
	with := gain(fewer)
	fewer.Kept = nil
	if without := gain(fewer); with != without {
		t.Errorf("of twenty years %v weeks are gained with climates kept, %v without", with, without)
	}
}
