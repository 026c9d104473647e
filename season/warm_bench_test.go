package season

import (
	"math"
	"testing"

	"eyeup/place"
	"eyeup/quantity"
)

// benched is waterville with a warm bench of so many square metres in the glass.
func benched(t testing.TB, room float64) Brief {
	t.Helper()
	b := waterville(t)
	glass := b.Given.Places[2].Model.(place.Covered)
	glass.WarmBench = &place.WarmBench{Area: quantity.Area(room), Root: quantity.Celsius(20), Power: 300}
	glass.BenchApart = true
	b.Given.Places[2].Model = glass
	b.Given.Places = append(b.Given.Places, Place{
		Name: "bench", Sort: Bench, In: "glass", Model: place.OnBench{House: glass}, Room: quantity.Area(room),
		Levels: []place.Setting{place.Off()}, Level: []quantity.Temperature{quantity.Unknown(), quantity.Celsius(20)}, Energy: Price{0.30, true},
	})
	return b
}

// TestWarmBenchWarmsRootsAlone: on it a clump comes up no later than beside it, in the same
// air; from then on it grows on the cool bench, and leaves the warm one to others.
func TestWarmBenchWarmsRootsAlone(t *testing.T) {
	m := makerOf(t, benched(t, 2))
	glass, bench := m.placeNamed("glass"), m.placeNamed("bench")
	at := Levels{0, 0, 2, 0, 1}
	house, on := m.climateAt(glass, at), m.climateAt(bench, at)
	for year := range house.years {
		if &house.years[year].low[0] != &on.years[year].low[0] || house.years[year].root[200] >= on.years[year].root[200] {
			t.Fatalf("%d: another air on the bench than beside it, or roots no warmer", m.Given.Years[year])
		}
	}
	all := m.options(m.batches[0], at)
	cool, warm := of(all, "glass"), of(all, "bench, then glass")
	for i, o := range warm {
		i += len(cool) - len(warm) // the bench is tried no earlier than the last so many starts
		for year, f := range o.fates() {
			if f.up > cool[i].fates()[year].up {
				t.Fatalf("started on day %d it is up on day %d on the bench, on %d beside it", o.start, f.up, cool[i].fates()[year].up)
			}
			if place, _ := o.stands(f, f.handOn-1); place != bench {
				t.Fatalf("before it is handed on it stands in place %d", place)
			}
			if place, _ := o.stands(f, f.handOn); place != glass {
				t.Fatalf("handed on it stands in place %d", place)
			}
		}
	}
	if len(warm) == 0 {
		t.Fatal("no way begins on the bench")
	}
	for _, o := range of(m.options(m.batches[0], Levels{0, 0, 0, 0, 1}), "bench, then glass") {
		for year, f := range o.fates() { // the glass is cold, and so is the air of its bench
			if f.up != Never && f.died == Never && f.handOn-f.up > 7 {
				t.Fatalf("up on day %d of %d, it stays on the bench till day %d", f.up, m.Given.Years[year], f.handOn)
			}
		}
	}
	for _, o := range m.options(m.batches[0], make(Levels, len(m.Given.Places))) {
		if o.route.around >= 0 {
			t.Fatal("a bench that is off is used")
		}
	}
}

// TestWarmBenchByTheTray: a plant that takes a twentieth of the bench pays a twentieth of what
// the whole bench would draw on those days.
func TestWarmBenchByTheTray(t *testing.T) {
	m, seen := makerOf(t, benched(t, 0.6)), 0
	for _, o := range of(m.options(m.batches[0], Levels{0, 0, 3, 0, 1}), "bench, then glass") {
		for year, f := range o.fates() {
			if f.handOn != f.up+1 {
				continue // in its pot before it is handed on
			}
			want := sum(o.route.first.years[year].given[o.start:f.handOn]) / 20
			if got := m.benchKWh(o, year); math.Abs(got-want) > 1e-9 || got <= 0 {
				t.Errorf("started on day %d of %d it takes %.3f kWh, not %.3f", o.start, m.Given.Years[year], got, want)
			}
			seen++
		}
	}
	if seen == 0 {
		t.Error("no plant is up on a Sunday")
	}
}

// TestWarmBenchCosts: what a plan pays for heat is that of the glass and of the bench, each
// while something stands there; the plan without added heat leaves the bench off.
func TestWarmBenchCosts(t *testing.T) {
	b := benched(t, 4)
	b.Given.Places[1].Room, b.Given.Places[1].Lit = 0.1, 0.1
	r, err := Make(b)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range r.Plans {
		heat, bench := 0.0, p.Places[4]
		for _, pl := range p.Places {
			if pl.Heat != nil {
				heat += 0.3 * pl.Heat.GivenKWh.Middle
			}
		}
		if math.Abs(heat-p.Cost.Heat) > 0.01 {
			t.Errorf("%s: heat for %.2f, of which the places took %.2f", p.Name, p.Cost.Heat, heat)
		}
		if used := bench.Heat != nil && bench.Heat.GivenKWh.Middle > 0; used != (p.Name != NoHeat) {
			t.Errorf("%s: of the bench's electricity %+v", p.Name, bench.Heat)
		}
	}
}
