package plans

import (
	"fmt"

	"eyeup/quantity"
	"eyeup/season"
)

// ShortWords says what there is too little of in a plan, in the reader's measures.
func ShortWords(s season.Shortfall, units quantity.System) string {
	switch s.Of {
	case "room":
		return fmt.Sprintf("%s: %s wanted, %s there", s.Place, units.Area(quantity.Area(s.Wanted)), units.Area(quantity.Area(s.There)))
	case "crates":
		return fmt.Sprintf("the stores hold %.0f crates, autumn asks for %.0f", s.There, s.Wanted)
	case "hands":
		return fmt.Sprintf("%.0f hours of work, %.0f there", s.Wanted, s.There)
	}
	return fmt.Sprintf("%s: %.0f wanted, %.0f to be counted on", s.Variety, s.Wanted, s.There)
}

// NoRoomWords says where a batch found no room, in the reader's measures; week is written as
// the reader writes days.
func NoRoomWords(c *season.Crowded, units quantity.System, week string) string {
	return fmt.Sprintf("no room: %s is %s short in the week of %s", c.Place, units.Area(quantity.Area(c.ShortM2)), week)
}
