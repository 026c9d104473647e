package garden

import (
	"fmt"
)

// WeatherSource says what weather a season rests on.
type WeatherSource struct {
	Source   string   `json:"source" jsonschema_description:"station or made-up"`
	Station  string   `json:"station,omitempty"`
	Name     string   `json:"name,omitempty"`
	MadeUp   bool     `json:"made_up"`
	FromYear int      `json:"from_year"`
	ToYear   int      `json:"to_year"`
	Years    int      `json:"years" jsonschema_description:"whole years that serve"`
	LeftOut  []string `json:"left_out"`
	Bridged  int      `json:"days_bridged" jsonschema_description:"days without extremes, drawn between their neighbours"`
	Findings []string `json:"findings" jsonschema_description:"what reading the file brought to light"`
	Sky      string   `json:"sky"`
	NightK   float64  `json:"night_offset_k"`
	DayK     float64  `json:"day_offset_k"`
}

// Source says what weather the garden's season rests on.
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
		if f.Line > 0 { // made-up weather has no lines
			where = fmt.Sprintf("line %d: ", f.Line)
		}
		s.Findings = append(s.Findings, fmt.Sprintf("%s%s (%d times)", where, f.What, f.Count))
	}
	return s
}
