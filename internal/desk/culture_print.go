package desk

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"eyeup/culture"
	"eyeup/quantity"
)

// headings are the words over the groups of figures.
var headings = map[string]string{
	"rest": "Rest", "store": "In the store", "divide": "Dividing", "soak": "Soaking", "presprout": "Pre-sprouting",
	"sprout": "Coming up", "start": "Starting", "grow": "Growing", "flower": "Flowering", "pot": "In pots",
	"day": "Length of days", "light": "Light", "cold": "Cold", "heat": "Heat", "plant": "Planting out",
	"bench": "Room on the bench", "cut": "Cuttings", "seed": "Seedlings", "work": "Hands, for each",
}

// Print writes the answer for the grower.
func (a *CultureAnswer) Print(w io.Writer, units quantity.System) {
	p := &page{w}
	p.line(fmt.Sprintf("%s, from a %s, for its %s: middle figure (range), and how sure", capital(a.Kind), a.Form, a.Goal))
	group := ""
	for _, f := range a.Figures {
		if g, _, _ := strings.Cut(f.Key, "."); g != group {
			group = g
			p.line("")
			p.line(headings[g])
		}
		p.figure(f, units, a.why)
	}
	if len(a.Unknown) > 0 {
		p.line("")
		p.line("Not known, and left out of a season")
		for _, u := range a.Unknown {
			p.wrap("  ", u.Meaning+a.keyOf(u))
		}
	}
	for _, f := range a.Facts {
		p.line("")
		p.wrap(capital(f.About)+": ", f.Text)
	}
	if !a.why {
		p.line("")
		p.line("Where each figure comes from, and its name for a garden's own: --why.")
		return
	}
	p.sources(a.Sources)
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

// figure prints one figure, with its key and source where asked.
func (p *page) figure(f FigureAnswer, units quantity.System, why bool) {
	value, unit := shown(f.Value, f.Unit, units)
	amount := value
	if f.Low != f.High {
		low, _ := shown(f.Low, f.Unit, units)
		high, _ := shown(f.High, f.Unit, units)
		amount = fmt.Sprintf("%s (%s to %s)", value, low, high)
	}
	p.line("  " + padded(f.Meaning, meaningWidth) + padded(amount+" "+unit, amountWidth) + f.Sure)
	if why {
		p.wrap("    ", f.Key+" · "+f.Source)
	}
}

// padded fills s with blanks to a width, and leaves one at least.
func padded(s string, width int) string {
	return s + strings.Repeat(" ", max(1, width-utf8.RuneCountInString(s)))
}

// sources prints what the short names stand for.
func (p *page) sources(all []SourceAnswer) {
	if len(all) == 0 {
		return
	}
	p.line("")
	p.line("Sources")
	for _, s := range all {
		p.wrap("  "+s.Name+": ", s.Citation+" ("+s.Read+")")
	}
}

// shown writes a figure and its unit in the given system.
func shown(v float64, unit string, units quantity.System) (value, in string) {
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

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
