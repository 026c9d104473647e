package season

import (
	"slices"
	"strings"
	"testing"

	"eyeup/place"
	"eyeup/quantity"
)

// framed is waterville with a cold frame of so many square metres.
func framed(t testing.TB, room float64) Brief {
	t.Helper()
	b := waterville(t)
	glazing, _ := place.CoverNamed("twin-wall")
	frame := Place{Name: "frame", Sort: Frame, Room: quantity.Area(room), Model: place.Covered{
		Length: 4, Width: 1.5, Eaves: 0.2, Ridge: 0.5, Cover: glazing, AirChanges: 1, Vent: place.Vent{Opens: quantity.Celsius(20)},
	}}
	b.Given.Places = slices.Insert(b.Given.Places, 3, frame)
	return b
}

// TestHardeningFreesTheGlass holds every way through the frame to its rules, and to the room
// that it takes: the glass is empty in the week in which the frame fills.
func TestHardeningFreesTheGlass(t *testing.T) {
	m := makerOf(t, framed(t, 6))
	glass, frame := m.placeNamed("glass"), m.placeNamed("frame")
	seen := 0
	for _, b := range m.batches {
		for _, o := range m.options(b, Levels{0, 0, 3, 0, 0}) {
			if o.route.framePlace < 0 {
				continue
			}
			for year, f := range o.fates() {
				seen++
				if f.framed == Never || f.out == Never {
					continue
				}
				safe := o.route.frostFree[b.life.kill]
				if !o.isMonday(f.framed) || f.framed < safe || f.out-f.framed < b.life.harden || f.framed <= f.ready {
					t.Fatalf("%s by %s in %d: ready on day %d, into the frame on %d (safe from %d), out on %d", b.id, o.route.name, m.Given.Years[year], f.ready, f.framed, safe, f.out)
				}
				week := (f.framed - m.FirstMonday) / 7
				for _, on := range o.takes(f, week, m, nil) {
					if on.bench == glass && on.area > 0 {
						t.Fatalf("%s by %s still takes %.3f m² of the glass in the week of hardening", b.id, o.route.name, on.area)
					}
					if on.bench == frame && on.area != b.life.tight && on.area != b.life.spaced && on.area != b.life.tray {
						t.Fatalf("%s takes %.3f m² of the frame", b.id, on.area)
					}
				}
			}
		}
	}
	if seen == 0 {
		t.Fatal("no way leads through the frame")
	}
}

// TestFrameTooSmall: of what hardens in a frame no more is there than it has room for, and
// every plant of every lot is still raised, in some way.
func TestFrameTooSmall(t *testing.T) {
	b := framed(t, 0.3)
	r, err := Make(b)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range r.Plans {
		plants := 0
		for _, batch := range p.Batches {
			plants += batch.Count
			if hardened := strings.Contains(batch.Starts[0].Route, "hardened in frame"); hardened != !batch.Dates.Frame.Middle.IsZero() {
				t.Errorf("%s: %s, into the frame on %v", p.Name, batch.Starts[0].Route, batch.Dates.Frame.Middle)
			}
		}
		if plants != 30 {
			t.Errorf("%s raises %d of 30", p.Name, plants)
		}
		for _, pl := range p.Places {
			for _, w := range pl.Weeks {
				if pl.Place == "frame" && w.UsedM2 > 0.3+0.005 {
					t.Errorf("%s puts %.2f m² into the frame in the week of %v", p.Name, w.UsedM2, w.Week)
				}
			}
		}
	}
}

// TestTwoFramesHarden: where one frame is too small for what hardens, the next is used too.
func TestTwoFramesHarden(t *testing.T) {
	b := framed(t, 0.5)
	second := b.Given.Places[3]
	second.Name = "second frame"
	b.Given.Places = slices.Insert(b.Given.Places, 4, second)
	r, err := Make(b)
	if err != nil {
		t.Fatal(err)
	}
	hardened := map[string]int{}
	for _, p := range r.Plans {
		for _, batch := range p.Batches {
			if _, frame, is := strings.Cut(batch.Starts[0].Route, "hardened in "); is {
				hardened[frame] += batch.Count
			}
		}
	}
	if hardened["frame"] == 0 || hardened["second frame"] == 0 {
		t.Errorf("plants hardened: %v", hardened)
	}
}
