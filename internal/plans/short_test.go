package plans

import (
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/season"
)

// TestShortIsSaidInTheReadersMeasures says what there is too little of as growers in feet and in
// metres read it.
func TestShortIsSaidInTheReadersMeasures(t *testing.T) {
	room := season.Shortfall{Of: "room", Place: "patch", Wanted: 96.12, There: 90}
	for _, one := range []struct {
		says, want string
	}{
		{ShortWords(room, quantity.Metric), "patch: 96.1 m² wanted, 90 m² there"},
		{ShortWords(room, quantity.US), "patch: 1035 ft² wanted, 969 ft² there"},
		{ShortWords(season.Shortfall{Of: "crates", Wanted: 64, There: 60}, quantity.US), "the stores hold 60 crates, autumn needs 64"},
		{ShortWords(season.Shortfall{Of: "hands", Wanted: 22, There: 9}, quantity.US), "22 hours of work, 9 hours available"},
		{ShortWords(season.Shortfall{Of: "stock", Variety: "Marl Pit", Wanted: 20, There: 7}, quantity.US), "Marl Pit: 20 wanted, 7 expected"},
		{NoRoomWords(&season.Crowded{Place: "cold frame", ShortM2: 0.5, Week: civil.MustOn(2027, time.May, 24)}, quantity.US, "24 May"), "no room: cold frame is 5.38 ft² short in the week of 24 May"},
	} {
		if one.says != one.want {
			t.Errorf("%q, want %q", one.says, one.want)
		}
	}
}
