package season

import (
	"testing"

	"eyeup/place"
)

// TestDarkRoomStretches: the longer a plant waits in a room without light, the more of its
// days are stretched; none are in the open, and of equals the sturdier is put first.
func TestDarkRoomStretches(t *testing.T) {
	b := waterville(t)
	room := b.Given.Places[1].Model.(place.Steady)
	room.Lamps = nil
	b.Given.Places[1].Model, b.Given.Places[1].Lit = room, 0
	m := makerOf(t, b)
	all := m.options(m.batches[0], Levels{0, 0, 3, 0})
	for _, o := range of(all, "room, then glass") {
		for year, f := range o.fates() {
			if dark := f.handOn - f.up - 1; f.handOn <= f.out && f.stretched < dark && f.out != Never {
				t.Fatalf("started on day %d, in %d: %d stretched days, %d of them in the dark", o.start, m.Given.Years[year], f.stretched, dark)
			}
		}
	}
	for _, o := range of(all, "straight into the ground") {
		if o.drawn != 0 {
			t.Errorf("in the open %.1f days are stretched", o.drawn)
		}
	}
	sturdy, drawn := *all[0], *all[0]
	drawn.drawn, drawn.start = 20, drawn.start+7
	sturdy.drawn = 0
	if first := byGain([]*outcome{&drawn, &sturdy})[0]; first != &sturdy {
		t.Error("of two that gain alike the one with more stretched days is first")
	}
}
