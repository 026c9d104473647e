package place

import (
	"slices"
	"testing"
)

// A figure without source, range and sureness does not go in.
func TestFiguresAreWhole(t *testing.T) {
	for _, table := range tables {
		seen := map[string]bool{}
		rows := Figures(table)
		if len(rows) == 0 {
			t.Errorf("the table %s is empty", table)
		}
		for _, f := range rows {
			switch {
			case seen[f.Key]:
				t.Errorf("%s: %s stands twice", table, f.Key)
			case !(f.Low <= f.Value && f.Value <= f.High):
				t.Errorf("%s: %s is %g, outside its range %g to %g", table, f.Key, f.Value, f.Low, f.High)
			case f.Unit == "" || len(f.Source) < 10:
				t.Errorf("%s: %s has no unit or no source", table, f.Key)
			case !slices.Contains([]string{"measured", "practice", "assumption", "memory"}, f.Sure):
				t.Errorf("%s: %s is %q sure", table, f.Key, f.Sure)
			}
			seen[f.Key] = true
		}
	}
}

func TestRowsAreFoundByName(t *testing.T) {
	for _, name := range CoverNames() {
		if c, ok := CoverNamed(name); !ok || c.Name != name || c.U <= 0 || c.Light <= 0 || c.FrostLift <= 0 {
			t.Errorf("cover %s: %+v %t", name, c, ok)
		}
		if len(FiguresOf("covers", name)) != 3 {
			t.Errorf("cover %s has %d figures", name, len(FiguresOf("covers", name)))
		}
	}
	for _, name := range FuelNames() {
		if f, ok := FuelNamed(name); !ok || f.Name != name || f.Heat <= 0 || f.Efficiency <= 0 || f.Unit == "" {
			t.Errorf("fuel %s: %+v %t", name, f, ok)
		}
	}
	if _, ok := CoverNamed("straw"); ok {
		t.Error("there is a cover of straw")
	}
	if _, ok := FuelNamed("hope"); ok {
		t.Error("there is a fuel called hope")
	}
}
