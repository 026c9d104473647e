package reckon

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"eyeup/culture"
	"eyeup/internal/report"
	"eyeup/quantity"
)

// headings are the words over the groups of figures.
var headings = map[string]string{
	"rest": "Rest", "store": "In the store", "divide": "Dividing", "soak": "Soaking", "presprout": "Pre-sprouting",
	"sprout": "Coming up", "start": "Starting", "grow": "Growing", "flower": "Flowering", "pot": "In pots",
	"day": "Length of days", "light": "Light", "cold": "Cold", "heat": "Heat", "plant": "Planting out",
	"bench": "Room on the bench", "cut": "Cuttings", "seed": "Seedlings", "work": "Labour, each",
}

// Print writes the answer for the grower.
func (a *CultureAnswer) Print(w io.Writer, units quantity.System) {
	p := report.NewPage(w)
	p.Line(fmt.Sprintf("%s, from a %s, for its %s: middle figure (range), and how sure", report.Capital(a.Kind), a.Form, a.Goal))
	group := ""
	for _, f := range a.Figures {
		if g, _, _ := strings.Cut(f.Key, "."); g != group {
			group = g
			p.Line("")
			p.Line(headings[g])
		}
		printFigure(p, f, units, a.why)
	}
	if len(a.Unknown) > 0 {
		p.Line("")
		p.Line("Not known, and left out of a season")
		for _, u := range a.Unknown {
			p.Wrap("  ", u.Meaning+a.keyOf(u))
		}
	}
	for _, f := range a.Facts {
		p.Line("")
		p.Wrap(report.Capital(f.About)+": ", f.Text)
	}
	if !a.why {
		p.Line("")
		p.Line("--why shows the source of each figure and the key that sets a garden's own.")
		return
	}
	printSources(p, a.Sources)
}

func (a *CultureAnswer) keyOf(u UnknownPart) string {
	if !a.why {
		return ""
	}
	return " (" + u.Key + ")"
}

// The columns of a figure: what it is, the amount, how sure.
const (
	meaningWidth = 43
	amountWidth  = 24
)

// printFigure prints one figure, with its key and source where asked.
func printFigure(p *report.Page, f FigureAnswer, units quantity.System, why bool) {
	value, unit := inUnits(f.Value, f.Unit, units)
	amount := value
	if f.Low != f.High {
		low, _ := inUnits(f.Low, f.Unit, units)
		high, _ := inUnits(f.High, f.Unit, units)
		amount = fmt.Sprintf("%s (%s to %s)", value, low, high)
	}
	p.Line("  " + padded(f.Meaning, meaningWidth) + padded(amount+" "+unit, amountWidth) + f.Sure)
	if why {
		p.Wrap("    ", f.Key+" · "+f.Source)
	}
}

// padded pads s with spaces to a width, at least one.
func padded(s string, width int) string {
	return s + strings.Repeat(" ", max(1, width-utf8.RuneCountInString(s)))
}

// printSources prints what the short names stand for.
func printSources(p *report.Page, all []SourceAnswer) {
	if len(all) == 0 {
		return
	}
	p.Line("")
	p.Line("Sources")
	for _, s := range all {
		p.Wrap("  "+s.Name+": ", s.Citation+" ("+s.Read+")")
	}
}

// inUnits writes a figure and its unit in a system of units.
func inUnits(v float64, unit string, units quantity.System) (value, in string) {
	var written string
	switch culture.Unit(unit) {
	case culture.Celsius:
		written = units.FineTemperature(quantity.Celsius(v))
	case culture.Area:
		written = units.Area(quantity.Area(v))
	case culture.Depth:
		if units == quantity.US {
			v, unit = v*float64(quantity.Centimetre/quantity.Inch), "in"
		}
		written = fmt.Sprintf("%.2g %s", v, unit)
	case culture.Share:
		written = fmt.Sprintf("%.3g %%", 100*v)
	case culture.Times, culture.Each:
		written = fmt.Sprintf("%.3g", v)
	case culture.DegreeDays:
		if units == quantity.US {
			v, unit = v*9/5, "°F·d"
		}
		written = fmt.Sprintf("%.4g %s", v, unit)
	case culture.PerArea:
		if units == quantity.US {
			v, unit = v*float64(quantity.SquareFoot), "/ft²"
		}
		written = fmt.Sprintf("%.3g %s", v, unit)
	default:
		written = fmt.Sprintf("%.4g %s", v, unit)
	}
	value, in, _ = strings.Cut(written, " ")
	return value, in
}
