package plans

import (
	"fmt"

	"eyeup/quantity"
	"eyeup/season"
)

// ShortWords says what a plan needs and how much of it there is, in the reader's units.
func ShortWords(s season.Shortfall, units quantity.System) string {
	switch s.Of {
	case "room":
		return fmt.Sprintf("%s: %s wanted, %s there", s.Place, units.Area(quantity.Area(s.Wanted)), units.Area(quantity.Area(s.There)))
	case "crates":
		return fmt.Sprintf("the stores hold %.0f crates, autumn needs %.0f", s.There, s.Wanted)
	case "hands":
		return fmt.Sprintf("%.0f hours of work, %.0f hours available", s.Wanted, s.There)
	}
	return fmt.Sprintf("%s: %.0f wanted, %.0f expected", s.Variety, s.Wanted, s.There)
}

// NoRoomWords says where a batch finds no room, in the reader's units. week is the Monday, as it is to be
// printed.
func NoRoomWords(c *season.Crowded, units quantity.System, week string) string {
	return fmt.Sprintf("no room: %s is %s short in the week of %s", c.Place, units.Area(quantity.Area(c.ShortM2)), week)
}
