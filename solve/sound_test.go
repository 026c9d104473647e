package solve

import (
	"math"
	"strings"
	"testing"
)

func TestSoundNamesWhatIsWrong(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	one := func(c Column, rows ...Row) *Programme { return &Programme{Columns: []Column{c}, Rows: rows} }
	row := func(low, high float64, terms ...Term) Row {
		return Row{Name: "bench", Low: low, High: high, Terms: terms}
	}
	tray := Column{Name: "trays", High: 3}
	for _, c := range []struct {
		p    *Programme
		want string
	}{
		{one(Column{Name: "trays", Cost: nan}), "column 0 (trays): cost NaN"},
		{one(Column{Cost: inf}), "column 0: cost +Inf"},
		{one(Column{Low: 2, High: 1}), "least 2 is above most 1"},
		{one(Column{Low: nan}), "limits NaN"},
		{one(Column{Low: inf, High: inf}), "limits +Inf"},
		{one(Column{High: 1e16}), "infinite limit or one within 1e+15"},
		{one(tray, row(0, 1, Term{0, 1}), row(0, 1, Term{1, 1})), "row 1 (bench): names column 1 of 1"},
		{one(tray, row(0, 1, Term{-1, 1})), "names column -1"},
		{one(tray, row(0, 1, Term{0, 1}, Term{0, 2})), "names column 0 twice"},
		{one(tray, row(0, 1, Term{0, nan})), "factor NaN"},
		{one(tray, row(0, 1, Term{0, 1e-12})), "factor 1e-12"},
		{one(tray, row(-inf, -inf)), "limits -Inf to -Inf"},
		{&Programme{Offset: inf}, "offset is +Inf"},
	} {
		if err := c.p.Sound(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v, want %q", err, c.want)
		}
	}
	good := one(tray, row(-inf, 1, Term{0, 1}), row(0, inf, Term{0, -2}), row(-inf, inf, Term{0, 0}), row(1, 1))
	if err := good.Sound(); err != nil {
		t.Error(err)
	}
}

func TestReadyRefusesLimits(t *testing.T) {
	p := &Programme{Columns: []Column{{High: 1}}}
	for _, l := range []Limits{{Nodes: -1}, {Iterations: -1}, {Share: -1}, {Apart: math.NaN()}} {
		if Ready(p, l, nil) == nil {
			t.Errorf("limits %+v are taken", l)
		}
	}
	if Ready(p, Limits{}, []float64{1, 2}) == nil {
		t.Error("a start of two values for one column is taken")
	}
}

func TestGapIsToldHonestly(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct{ objective, bound, want float64 }{
		{100, 99, 0.01}, {-100, -101, 0.01}, {0, 0, 0}, {0, -1, inf}, {inf, 5, inf}, {5, -inf, inf}, {7, 7, 0},
	} {
		if got := GapOf(c.objective, c.bound); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("cost %v, bound %v: gap %v, want %v", c.objective, c.bound, got, c.want)
		}
	}
	if !(Limits{Apart: 2}).Met(10, 8) || (Limits{Apart: 1}).Met(10, 8) || !(Limits{Share: 0.2}).Met(10, 8) || (Limits{Apart: inf}).Met(inf, inf) {
		t.Error("a gap is met that was not asked for, or the other way round")
	}
}
