package season

import (
	"math"
	"slices"

	"eyeup/civil"
	"eyeup/stock"
)

// Growing is stock that grows already: what a plan needs not start any more. It is taken off what
// is wanted before a season is worked out, and has its room on the benches.
type Growing struct {
	Code    string     `json:"code,omitempty"`
	Kind    string     `json:"kind"`
	Variety string     `json:"variety"`
	Form    stock.Form `json:"form"`
	Place   string     `json:"place"`
	Count   int        `json:"count"`
	Since   civil.Date `json:"since,omitzero" jsonschema_description:"when it came to stand there; left out where a list tells of it"`
}

// growsOf reports whether some of a variety grows already.
func (g *Given) growsOf(v stock.Variety) bool {
	return slices.ContainsFunc(g.Growing, func(of Growing) bool { return of.Kind == v.Kind && of.Variety == v.Name })
}

// grown is the room that growing plants take on a bench in a week, m²: where they stand today, at
// the distance of grown pots, until nothing leafy is kept from being planted out any more. Where they
// are brought meanwhile nobody knows. They stand under lamps where there are any.
func (m *Planner) grown(bench, week int) float64 {
	monday := m.FirstMonday + 7*week
	if m.taken == nil || monday < m.day(m.Given.Today.Monday()) || monday >= m.OutFrom {
		return 0
	}
	return m.taken[bench]
}

// takenRoom is the room that growing plants take, by bench; nil where nothing grows.
func (m *Planner) takenRoom() []float64 {
	if len(m.Given.Growing) == 0 {
		return nil
	}
	taken := make([]float64, 2*len(m.Given.Places))
	for _, g := range m.Given.Growing {
		at := m.placeNamed(g.Place)
		kind, known := m.Given.Kinds(g.Kind)
		if at < 0 || !known || m.Given.Places[at].Sort == Ground {
			continue
		}
		area := float64(g.Count) * orElse(float64(kind.Bench.Spaced), 0)
		if g.Form == stock.Tray {
			area = float64(g.Count) * orElse(float64(kind.Bench.Tray), 0)
		}
		taken[at] += area
		if lit := float64(m.Given.Places[at].Lit); lit > 0 {
			taken[m.Lamps(at)] = math.Min(lit, taken[at])
		}
	}
	return taken
}
