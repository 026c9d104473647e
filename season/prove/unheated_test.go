package prove

import (
	"slices"
	"testing"

	"eyeup/place"
	"eyeup/season"
)

// paid is crowded with a warm room whose heat costs money.
func paid(t testing.TB) season.Brief {
	b := crowded(t)
	room := b.Given.Places[1].Model.(place.Steady)
	room.HeatPerKelvin = 40
	b.Given.Places[1].Model, b.Given.Places[1].Costs, b.Given.Places[1].Energy = room, true, season.Price{Amount: 0.30, Known: true}
	return b
}

// TestAPaidRoomIsAddedHeat holds a plan without added heat, filled or proved, to leave a warm room
// alone whose heat costs money; the others may pay for it.
func TestAPaidRoomIsAddedHeat(t *testing.T) {
	b := paid(t)
	made, err := Make(b)
	if err != nil {
		t.Fatal(err)
	}
	used, r := false, proved(t, b)
	c, err := r.Certificate(season.NoHeat)
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Check(); err != nil {
		t.Errorf("its proof does not add up: %v", err)
	}
	for _, plans := range [][]*season.Plan{made.Plans, r.Season.Plans} {
		for _, p := range plans {
			through := slices.ContainsFunc(p.Batches, func(one season.BatchPlan) bool {
				return slices.ContainsFunc(one.Stays, func(s season.Stay) bool { return s.Place == "room" })
			})
			if used = used || through; p.Name == season.NoHeat && (through || p.Cost.Heat != 0) {
				t.Errorf("%s pays %.2f for heat, and uses the room: %v", p.Name, p.Cost.Heat, through)
			}
			if p.Name == season.NoHeat && p.Proof != nil && p.Proof.Gap > 0.005 {
				t.Errorf("%s has a gap of %.4f", p.Name, p.Proof.Gap)
			}
		}
	}
	if !used {
		t.Error("no plan uses the room, which shows nothing")
	}
}
