package season

import (
	"slices"
	"testing"
)

// TestRoomDayByDay adds up the room that plants take day by day, and holds to it what is
// computed from change to change.
func TestRoomDayByDay(t *testing.T) {
	m := makerOf(t, framed(t, 6))
	tried := 0
	for _, b := range m.batches {
		for _, level := range []int{0, 2, 5} {
			for _, o := range m.options(b, Levels{0, 0, level, 0, 0}) {
				if got, want := m.takesOf(o, 0.9), m.takesDaily(o, 0.9); !slices.Equal(got, want) {
					t.Fatalf("%s by %s, started on day %d: %v, day by day %v", b.id, o.route.name, o.start, got, want)
				}
				tried++
			}
		}
	}
	if tried < 100 {
		t.Errorf("only %d ways were tried", tried)
	}
}

// takesDaily is takesOf day by day.
func (m *Planner) takesDaily(o *outcome, basis float64) []Take {
	years := make([][]float64, m.HoursRow(0))
	note := func(bench, day, year int, area float64) {
		row := m.BenchRow(bench, m.WeekOn(day))
		if years[row] == nil {
			years[row] = make([]float64, len(o.fates()))
		}
		years[row][year] = max(years[row][year], area)
	}
	for year, f := range o.fates() {
		for day := max(o.start, m.FirstMonday); day < int(m.Given.Span.Days()) && !o.route.direct; day++ {
			place, area := o.stands(f, day)
			if place < 0 || place == o.route.groundPlace {
				break
			}
			note(place, day, year, area)
			if m.Given.Places[place].Lit > 0 && f.up != Never && day > f.up+o.dark(place) {
				note(m.Lamps(place), day, year, area)
			}
		}
	}
	var all []Take
	for row, areas := range years {
		if areas == nil {
			continue
		}
		slices.Sort(areas)
		at := 0
		for float64(at+1) < basis*float64(len(areas))-1e-9 {
			at++
		}
		if areas[at] > 0 {
			all = append(all, Take{row, areas[at]})
		}
	}
	return all
}
