package season

import (
	"testing"

	"eyeup/civil"
	"eyeup/stock"
)

// TestYearsOfABatch: what is told year by year agrees with the dates told as odds, and is in
// the order in which a plant lives.
func TestYearsOfABatch(t *testing.T) {
	b := framed(t, 6)
	r, err := Make(b)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range r.Plans {
		for _, batch := range p.Batches {
			if len(batch.Years) != len(b.Given.Years) || batch.OutFrom.IsZero() {
				t.Fatalf("%s: %d years, out from %v", batch.ID, len(batch.Years), batch.OutFrom)
			}
			earlier := 0
			for i, y := range batch.Years {
				if y.Year != b.Given.Years[i] || y.PlantOut.Before(batch.OutFrom) || !y.HandOn.IsZero() && y.HandOn.Before(batch.SafeFrom) {
					t.Errorf("%s in %d: handed on %v, planted out %v", batch.ID, y.Year, y.HandOn, y.PlantOut)
				}
				last := y.Start
				for _, d := range []civil.Date{y.Eyed, y.Up, y.HandOn, y.Frame, y.PlantOut} {
					if d.IsZero() || batch.Container == "" {
						continue
					}
					if d.Before(last) {
						t.Errorf("%s in %d: %v comes after %v", batch.ID, y.Year, last, d)
					}
					last = d
				}
				if !y.PlantOut.After(batch.Dates.PlantOut.Middle) {
					earlier++
				}
			}
			if 2*earlier < len(b.Given.Years) {
				t.Errorf("%s is planted out by %v in %d of %d years, not in half", batch.ID, batch.Dates.PlantOut.Middle, earlier, len(b.Given.Years))
			}
		}
	}
}

// TestDivisionsWakeInTrays: until it is up a division takes a fifteenth of a tray of 0.15 m²,
// and a pot from then on; a clump takes a fifth of one.
func TestDivisionsWakeInTrays(t *testing.T) {
	b := waterville(t)
	for form, tray := range map[stock.Form]float64{stock.Division: 0.01, stock.Clump: 0.03} {
		b.Given.Stock = b.Given.Stock[:1]
		b.Given.Stock[0].Form = form
		m := makerOf(t, b)
		o := of(m.options(m.batches[0], Levels{0, 0, 3, 0}), "room, then glass")[8]
		f := o.fates()[0]
		if _, area := o.stands(f, f.up); area != tray {
			t.Errorf("a waking %s takes %g m², not %g", form, area, tray)
		}
		if _, area := o.stands(f, f.up+1); area != o.life.tight {
			t.Errorf("a %s that is up takes %g m², not %g", form, area, o.life.tight)
		}
	}
}
