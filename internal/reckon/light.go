package reckon

import (
	"fmt"
	"io"
	"strings"
	"time"

	"eyeup/culture"
	"eyeup/internal/garden"
	"eyeup/internal/report"
	"eyeup/odds"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/sun"
	"eyeup/weather"
)

// Hours of day light that decide between flowers and tubers in dahlias raised from tubers.
// Below tooShort a plant sets tubers and blind buds. Growers lengthen the day to longEnough with lamps.
var (
	tooShort   = ofDahlia("day.blind")
	longEnough = ofDahlia("day.lamps")
)

// ofDahlia returns a figure of the dahlia. The figure must exist.
func ofDahlia(figure string) float64 {
	dahlia, _ := culture.Lookup("dahlia")
	f, _ := dahlia.Figure(figure)
	return f.Value
}

// LightAnswer is the light of a place month by month.
type LightAnswer struct {
	Garden string       `json:"garden"`
	Place  string       `json:"place"`
	Years  int          `json:"years" jsonschema_description:"how many years of weather the figures are means of"`
	MadeUp bool         `json:"made_up" jsonschema_description:"true when no station measured the weather"`
	Sky    string       `json:"sky" jsonschema_description:"where the sun of a day comes from and how sure it is"`
	Months []LightMonth `json:"months"`
	Note   string       `json:"note,omitempty" jsonschema_description:"what short days do to dahlias"`
}

// LightMonth is a mean day of one month.
type LightMonth struct {
	Month      string      `json:"month" jsonschema:"pattern=^\\d{4}-\\d{2}$"`
	OutsideMol float64     `json:"outside_mol" jsonschema_description:"light that plants use in a mean day outside: mol/m²"`
	InsideMol  float64     `json:"inside_mol" jsonschema_description:"the same in the place with its lamps: mol/m²"`
	InsideSpan odds.Amount `json:"inside_mol_years" jsonschema_description:"the month's mean inside over the years"`
	DayLength  float64     `json:"day_length_h" jsonschema_description:"outside with the sun's middle above a level horizon (FAO 56)"`
	LitHours   float64     `json:"lit_h" jsonschema_description:"hours that are light in the place: its lamps counted; 0 in the dark"`
	LampHours  float64     `json:"lamp_hours" jsonschema_description:"hours of lamps still needed for a day of 14 h"`
	IsShort    bool        `json:"short_day" jsonschema_description:"the lit hours are fewer than 12"`
}

// Light computes the light of a place of the garden, month by month. It refuses an unknown place, and
// names those there are.
func Light(g *garden.Garden, name string) (*LightAnswer, error) {
	if _, known := g.Place(name); !known {
		return nil, fmt.Errorf("the garden has no place named %q; it has: %s", name, strings.Join(placeNames(g), ", "))
	}
	a := &LightAnswer{Garden: g.Name, Place: name, Years: len(g.Members), MadeUp: g.Record.MadeUp, Sky: g.Sky.Why}
	months := newLightTally(g)
	for _, h := range g.Hours() {
		months.add(g, name, h)
	}
	a.Months = months.means()
	a.Note = dahliaNote(a.Months)
	return a, nil
}

func placeNames(g *garden.Garden) []string {
	var names []string
	for _, p := range g.Places {
		names = append(names, p.Name)
	}
	return names
}

// dahliaNote says what short days do to dahlias, if any month has short days and some light.
func dahliaNote(months []LightMonth) string {
	dahlia, _ := culture.Lookup("dahlia")
	for _, m := range months {
		if !m.IsShort || m.LitHours == 0 {
			continue
		}
		for _, f := range dahlia.Facts() {
			if f.About == "day length" {
				return "Dahlia: " + f.Text + " (" + f.Source + ")"
			}
		}
	}
	return ""
}

// lightTally sums the days of each month of the season, year by year.
type lightTally struct {
	months []LightMonth
	days   []float64   // in each month
	inside [][]float64 // each month's mean of each year
}

func newLightTally(g *garden.Garden) *lightTally {
	t := &lightTally{}
	for d := g.Span.From; !d.After(g.Span.To); d = d.AddDays(1) {
		month := d.String()[:len("2027-03")]
		if n := len(t.months); n == 0 || t.months[n-1].Month != month {
			t.months = append(t.months, LightMonth{Month: month})
			t.days, t.inside = append(t.days, 0), append(t.inside, nil)
		}
		last := len(t.months) - 1
		t.days[last]++
		t.months[last].DayLength += sun.DayLength(g.Site.Latitude, d).Hours()
	}
	return t
}

// add adds the light of one year of weather.
func (t *lightTally) add(g *garden.Garden, name string, h *weather.Hours) {
	p, _ := g.Place(name)
	course := p.Model.Run(h, g.Site, place.Off())
	day := 0
	for m := range t.months {
		var inside float64
		for range int(t.days[m]) {
			var shine float64
			for _, w := range h.Sun[24*day : 24*day+24] {
				shine += w * time.Hour.Seconds()
			}
			t.months[m].OutsideMol += float64(sun.Light(quantity.Insolation(shine)))
			t.months[m].LitHours += course.DayLength[day]
			inside += course.Light[day]
			day++
		}
		t.inside[m] = append(t.inside[m], inside/t.days[m])
	}
}

// means returns the mean day of each month over the years.
func (t *lightTally) means() []LightMonth {
	for i := range t.months {
		m, years := &t.months[i], float64(len(t.inside[i]))
		var sum float64
		for _, mean := range t.inside[i] {
			sum += mean
		}
		spread := odds.AmountOf(t.inside[i])
		m.OutsideMol = *report.Rounded(m.OutsideMol/t.days[i]/years, 2)
		m.InsideMol = *report.Rounded(sum/years, 2)
		m.InsideSpan = odds.Amount{Low: *report.Rounded(spread.Low, 2), Middle: *report.Rounded(spread.Middle, 2), High: *report.Rounded(spread.High, 2)}
		m.DayLength = *report.Rounded(m.DayLength/t.days[i], 2)
		m.LitHours = *report.Rounded(m.LitHours/t.days[i]/years, 2)
		m.LampHours = *report.Rounded(max(0, longEnough-m.LitHours), 2)
		m.IsShort = m.LitHours < tooShort
	}
	return t.months
}

// Print writes the answer for the grower.
func (a *LightAnswer) Print(w io.Writer, _ quantity.System) {
	p := report.NewPage(w)
	p.Line(fmt.Sprintf("Light in %q at %s: the mean day of each month over %d years", a.Place, a.Garden, a.Years))
	if a.MadeUp {
		p.Line("No station measured this weather: its years are made up.")
	}
	p.Line("")
	p.Line("           light for plants, mol/m²               hours of the day")
	p.Line("month      outside   inside  years differ   sun up   light  lamps to 14 h")
	for _, m := range a.Months {
		p.Line(m.row())
	}
	p.Line("")
	p.Wrap("", "Light is computed at 2.02 mol for each MJ of sun (Faust & Logan 2018); "+a.Sky+".")
	if a.Note != "" {
		p.Line("")
		p.Wrap("", a.Note)
		p.Wrap("", "Lamps and water: a ground-fault breaker, and wiring by the local code.")
	}
}

func (m LightMonth) row() string {
	lamps := "-"
	if m.LampHours > 0 {
		lamps = fmt.Sprintf("%.1f", m.LampHours)
	}
	if m.IsShort {
		lamps += " short"
	}
	span := fmt.Sprintf("%.1f-%.1f", m.InsideSpan.Low, m.InsideSpan.High)
	return fmt.Sprintf("%s    %7.1f  %7.1f  %12s  %7.1f %7.1f  %s", m.Month, m.OutsideMol, m.InsideMol, span, m.DayLength, m.LitHours, lamps)
}
