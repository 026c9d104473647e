package stock

import (
	"fmt"
	"strings"
)

// Spot is where individuals stand and as what. When it points at some that stand
// already, whatever is left empty may be anything.
type Spot struct {
	Place string `json:"place,omitzero"`
	Crate string `json:"crate,omitzero"` // crate, tray or pot within a store or on a bench
	Bed   string `json:"bed,omitzero"`   // bed in open ground
	Row   string `json:"row,omitzero"`   // row within the bed
	Form  Form   `json:"form,omitzero"`
}

// Forms lists the forms stock stands in.
func Forms() []Form { return []Form{Clump, Division, Corm, Seed, Cutting, Tray, Pot, Plant} }

// holds reports whether s, where it says anything, says the same as t.
func (s Spot) holds(t Spot) bool {
	return (s.Place == "" || s.Place == t.Place) && (s.Crate == "" || s.Crate == t.Crate) &&
		(s.Bed == "" || s.Bed == t.Bed) && (s.Row == "" || s.Row == t.Row) &&
		(s.Form == "" || s.Form == t.Form)
}

// moved returns where what stands at s stands when it is brought to t: another place or
// another bed leaves crate, bed and row behind; what t says holds.
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

// String says the spot in words, like "cellar, crate 2, as clumps".
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

// many is the form for more than one.
func (f Form) many() string {
	if f == Seed {
		return "packets of seed"
	}
	return string(f) + "s"
}

// count says so many of the form, like "1 clump" or "9 clumps".
func (f Form) count(n int) string {
	if n == 1 || n == -1 {
		if f == Seed {
			return fmt.Sprintf("%d packet of seed", n)
		}
		return fmt.Sprintf("%d %s", n, f)
	}
	return fmt.Sprintf("%d %s", n, f.many())
}
