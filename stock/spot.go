package stock

import (
	"fmt"
	"strings"
)

// Spot is where individuals stand and in which form. Used to select standing individuals, an
// empty field matches anything.
type Spot struct {
	Place string `json:"place,omitzero"`
	Crate string `json:"crate,omitzero"` // crate, tray or pot within a store or on a bench
	Bed   string `json:"bed,omitzero"`   // bed in open ground
	Row   string `json:"row,omitzero"`   // row within the bed
	Form  Form   `json:"form,omitzero"`
}

// Forms lists the forms stock stands in.
func Forms() []Form { return []Form{Clump, Division, Corm, Seed, Cutting, Tray, Pot, Plant} }

// holds reports whether every field set in s equals that of t.
func (s Spot) holds(t Spot) bool {
	return (s.Place == "" || s.Place == t.Place) && (s.Crate == "" || s.Crate == t.Crate) &&
		(s.Bed == "" || s.Bed == t.Bed) && (s.Row == "" || s.Row == t.Row) &&
		(s.Form == "" || s.Form == t.Form)
}

// moved returns the spot after a move from s to t. A new place clears crate, bed and row, a
// new bed clears the row, and fields set in t win.
func (s Spot) moved(t Spot) Spot {
	to := s
	if t.Place != "" && t.Place != s.Place {
		to = Spot{Place: t.Place, Form: s.Form}
	}
	if t.Bed != "" && t.Bed != s.Bed {
		to.Row = ""
	}
	if t.Crate != "" {
		to.Crate, to.Bed, to.Row = t.Crate, "", ""
	}
	if t.Bed != "" {
		to.Crate, to.Bed = "", t.Bed
	}
	if t.Row != "" {
		to.Row = t.Row
	}
	if t.Form != "" {
		to.Form = t.Form
	}
	return to
}

// String describes the spot, like "cellar, crate 2, as clumps".
func (s Spot) String() string {
	parts := []string{s.Place}
	if s.Place == "" {
		parts[0] = "no place said"
	}
	for _, p := range [][2]string{{"crate", s.Crate}, {"bed", s.Bed}, {"row", s.Row}} {
		if p[1] != "" {
			parts = append(parts, p[0]+" "+p[1])
		}
	}
	if s.Form != "" {
		parts = append(parts, "as "+s.Form.many())
	}
	return strings.Join(parts, ", ")
}

// many returns the plural of the form.
func (f Form) many() string {
	if f == Seed {
		return "packets of seed"
	}
	return string(f) + "s"
}

// count returns a number with the form, like "1 clump" or "9 clumps".
func (f Form) count(n int) string {
	if n == 1 || n == -1 {
		if f == Seed {
			return fmt.Sprintf("%d packet of seed", n)
		}
		return fmt.Sprintf("%d %s", n, f)
	}
	return fmt.Sprintf("%d %s", n, f.many())
}
