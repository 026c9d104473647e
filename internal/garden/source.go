package garden

import (
	"fmt"
)

// WeatherSource describes the weather that a season is computed from.
type WeatherSource struct {
	Source   string   `json:"source" jsonschema_description:"station or made-up"`
	Station  string   `json:"station,omitempty"`
	Name     string   `json:"name,omitempty"`
	MadeUp   bool     `json:"made_up"`
	FromYear int      `json:"from_year"`
	ToYear   int      `json:"to_year"`
	Years    int      `json:"years" jsonschema_description:"whole years that can be used"`
	LeftOut  []string `json:"left_out"`
	Bridged  int      `json:"days_bridged" jsonschema_description:"days without a low and a high, interpolated between their neighbours"`
	Findings []string `json:"findings" jsonschema_description:"problems found while reading the file"`
	Sky      string   `json:"sky"`
	NightK   float64  `json:"night_offset_k"`
	DayK     float64  `json:"day_offset_k"`
}

// Source describes the weather that the garden's season is computed from.
func (g *Garden) Source() WeatherSource {
	from, to := g.Years()
	s := WeatherSource{
		LeftOut: []string{}, Findings: []string{},
		Source: "station", Station: g.Record.Station.ID, Name: g.Record.Station.Name, MadeUp: g.Record.MadeUp,
		FromYear: from, ToYear: to, Years: len(g.Members), Sky: g.Sky.Why,
		NightK: float64(g.Offset.Night), DayK: float64(g.Offset.Day),
	}
	if s.MadeUp {
		s.Source = "made-up"
	}
	for _, l := range g.LeftOut {
		s.LeftOut = append(s.LeftOut, fmt.Sprintf("%d: %s", l.Year, l.Why))
	}
	for _, m := range g.Members {
		s.Bridged += m.Bridged
	}
	for _, f := range g.Record.Findings {
		where := ""
		if f.Line > 0 { // made-up weather has no line numbers
			where = fmt.Sprintf("line %d: ", f.Line)
		}
		s.Findings = append(s.Findings, fmt.Sprintf("%s%s (%d times)", where, f.What, f.Count))
	}
	return s
}
