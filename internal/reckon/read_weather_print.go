package reckon

import (
	"fmt"
	"io"

	"eyeup/internal/report"
	"eyeup/quantity"
)

// Print writes the answer for the grower.
func (a *WeatherAnswer) Print(w io.Writer, units quantity.System) {
	p := report.NewPage(w)
	if len(a.Nearest) > 0 {
		printNearest(p, a.Nearest, units)
	}
	for _, f := range a.Files {
		what := f.Name
		if f.Fetched > 0 {
			what += fmt.Sprintf(", %.1f MB fetched", float64(f.Fetched)/1e6)
		}
		p.Wrap("", what)
		for _, s := range f.Stations {
			printStation(p, s, units)
		}
		if len(f.Stations) > 1 {
			p.Wrap("", "Several stations: say which with --station wherever the file is used.")
		}
		p.Line("")
	}
	p.Wrap("", a.Note)
}

// printNearest lists stations of the archive.
func printNearest(p *report.Page, all []NearStation, units quantity.System) {
	p.Line("Nearest long records of the archive (years may have gaps)")
	unit, per := "km", 1.0
	if units == quantity.US {
		unit, per = "miles", float64(1000*quantity.Metre/(5280*quantity.Foot))
	}
	for _, s := range all {
		mark := " "
		if s.IsFetched {
			mark = "*"
		}
		p.Line(fmt.Sprintf("%s %-11s  %5.0f %s  %d to %d  %.28s", mark, s.ID, s.DistanceKm*per, unit, s.FromYear, s.ToYear, s.Name))
	}
	p.Line("")
}

// printStation says what a file holds of a station.
func printStation(p *report.Page, s WeatherStation, units quantity.System) {
	p.Wrap("  ", fmt.Sprintf("%s, %s to %s", s.StationAnswer, s.From, s.To))
	if s.Latitude != nil && s.Longitude != nil {
		p.Wrap("    ", fmt.Sprintf("at %.4g, %.4g%s", *s.Latitude, *s.Longitude, elevation(s.ElevationM, units)))
	}
	p.Wrap("    ", fmt.Sprintf("%d days, %d with a low and a high (%.1f %%)", s.Days, s.Known, 100*float64(s.Known)/float64(s.Days)))
	if s.LongestGap > 0 {
		p.Wrap("    ", fmt.Sprintf("no low on %d, no high on %d; longest gap %d days from %s", s.NoLow, s.NoHigh, s.LongestGap, s.GapFrom))
	}
	if s.Sun > 0 || s.Soil > 0 {
		p.Wrap("    ", fmt.Sprintf("sun measured on %d days, soil on %d", s.Sun, s.Soil))
	}
	for _, f := range s.Findings {
		times := ""
		if f.Count > 1 {
			times = fmt.Sprintf(", %d times in all", f.Count)
		}
		p.Wrap("    ", fmt.Sprintf("line %d: %s%s", f.Line, f.What, times))
	}
}

func elevation(metres *float64, units quantity.System) string {
	if metres == nil {
		return ""
	}
	return ", " + units.Length(quantity.Length(*metres)) + " above the sea"
}
