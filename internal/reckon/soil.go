package reckon

import (
	"fmt"
	"io"
	"math"
	"strings"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/report"
	"eyeup/odds"
	"eyeup/place"
	"eyeup/quantity"
)

// SoilQuestion asks when open soil is warm enough.
type SoilQuestion struct {
	Place string // open ground of the garden; empty: the first there is
	Reach quantity.Temperature
	Why   bool
}

// SoilAnswer is when open soil is warm enough, with the spread over the years.
type SoilAnswer struct {
	Garden  string               `json:"garden"`
	Place   string               `json:"place"`
	Weather garden.WeatherSource `json:"weather"`
	Reach   float64              `json:"reach_c" jsonschema:"description=mean of three days at 10 cm"`
	Date    civil.When           `json:"date" jsonschema:"description=first day of the growing year on which the mean of three days reaches it; null in years when it never does"`
	Years   int                  `json:"years"`
	Never   int                  `json:"years_never" jsonschema:"description=years in which it is not reached in the season"`
	Reason  string               `json:"reason,omitempty" jsonschema:"description=why there is no early, middle or late day"`
	Months  []SoilMonth          `json:"months"`
	Figures []FigureAnswer       `json:"figures"`
	Notes   []string             `json:"notes"`

	why bool
}

// SoilMonth is the soil of one month.
type SoilMonth struct {
	Month string      `json:"month" jsonschema:"pattern=^\\d{4}-\\d{2}$"`
	Soil  odds.Amount `json:"soil_c" jsonschema:"description=mean of the month at 10 cm"`
	Air   odds.Amount `json:"air_c" jsonschema:"description=mean of the month"`
}

// soilNotes are what must be said with the soil of any garden.
var soilNotes = []string{
	"Computed from air and sun. Against ten-centimetre soil measured at a grassed station in Ireland in 30 years it was four days late at 15.6 °C (60 °F) and a day early at 12.8 °C (55 °F), at even odds; elsewhere it is untested. Allow a week either way.",
	"A bare, dark, raised or covered bed warms sooner, wet clay and a north slope later. A thermometer at ten centimetres in your own bed, read in the morning, is better than this calculation.",
}

// Soil answers a SoilQuestion. It refuses a place that is not open ground.
func Soil(g *garden.Garden, q SoilQuestion) (*SoilAnswer, error) {
	name, ground, err := openGround(g, q.Place)
	if err != nil {
		return nil, err
	}
	if c := q.Reach.Celsius(); !(c >= -5 && c <= 40) {
		return nil, fmt.Errorf("soil of %.1f °C lies outside -5 to 40 °C; check the figure and its unit", c)
	}
	a := &SoilAnswer{
		Garden: g.Name, Place: name, Weather: g.Source(), Reach: *report.Rounded(q.Reach.Celsius(), 3),
		Years: len(g.Members), Notes: soilNotes, Figures: []FigureAnswer{}, why: q.Why,
	}
	if g.Record.MadeUp {
		a.Notes = append([]string{"This weather is made up from monthly normals: no station measured it."}, a.Notes...)
	}
	var days []float64
	var years []soilYear
	for _, h := range g.Hours() {
		year := soilYear{h.Air, ground.Run(h, g.Site, place.Off()).Root}
		days = append(days, year.first(g, q.Reach.Celsius()))
		years = append(years, year)
	}
	a.date(g, days)
	a.Months = soilMonths(g.Span, years)
	for _, f := range place.Figures("ground") {
		a.Figures = append(a.Figures, FigureAnswer{f.Key, soilMeanings[f.Key], f.Low, f.Value, f.High, f.Unit, f.Sure, f.Source})
	}
	return a, nil
}

// openGround finds the open ground of a name, or the first if the name is empty.
func openGround(g *garden.Garden, name string) (string, place.Ground, error) {
	var others []string
	for _, p := range g.Places {
		ground, open := p.Model.(place.Ground)
		if open && (name == "" || p.Name == name) {
			return p.Name, ground, nil
		}
		if open {
			others = append(others, p.Name)
		}
	}
	switch {
	case name == "":
		return "", place.Ground{}, fmt.Errorf("the garden has no open ground; add a [[place]] with sort = \"ground\"")
	case len(others) == 0:
		return "", place.Ground{}, fmt.Errorf("%q is no open ground, and the garden has none", name)
	}
	return "", place.Ground{}, fmt.Errorf("%q is no open ground of this garden; it has: %s", name, strings.Join(others, ", "))
}

// soilYear is a year's air and soil, hour by hour.
type soilYear struct{ air, soil []float64 }

// first returns the first day of the growing year, as days into the season, on which the
// mean of three days reaches a temperature; never is infinite. The growing year begins in
// the middle of winter.
func (y soilYear) first(g *garden.Garden, reach float64) float64 {
	for day := int(midwinter(g).Sub(g.Span.From)); day < len(y.soil)/24; day++ {
		if mean := (y.soil[24*day] + y.soil[24*(day-1)] + y.soil[24*(day-2)]) / 3; mean >= reach {
			return float64(day)
		}
	}
	return math.Inf(1)
}

func (a *SoilAnswer) date(g *garden.Garden, days []float64) {
	for _, d := range days {
		if math.IsInf(d, 1) {
			a.Never++
		}
	}
	when := odds.AmountOf(days)
	a.Date = civil.When{Early: dayOf(g.Span.From, when.Low), Middle: dayOf(g.Span.From, when.Middle), Late: dayOf(g.Span.From, when.High)}
	if a.Date.Late.IsZero() {
		a.Reason = fmt.Sprintf("the soil does not reach it in %d of %d years", a.Never, a.Years)
	}
}

// soilMonths sums up the months of the season.
func soilMonths(span civil.Span, years []soilYear) []SoilMonth {
	all := []SoilMonth{}
	for d := span.From; !d.After(span.To); {
		m := month(d, span)
		from, to := 24*int(m.From.Sub(span.From)), 24*int(m.To.Sub(span.From)+1)
		var soil, air []float64
		for _, y := range years {
			soil, air = append(soil, meanOf(y.soil[from:to])), append(air, meanOf(y.air[from:to]))
		}
		all = append(all, SoilMonth{
			m.From.String()[:len("2027-03")], report.RoundedAmount(odds.AmountOf(soil), 2), report.RoundedAmount(odds.AmountOf(air), 2),
		})
		d = m.To.AddDays(1)
	}
	return all
}

func meanOf(all []float64) float64 {
	var sum float64
	for _, x := range all {
		sum += x
	}
	return sum / float64(len(all))
}

// soilMeanings says in words what the figures of open ground are.
var soilMeanings = map[string]string{
	"ground.lag":           "share of yesterday's soil that stays at ten centimetres",
	"ground.per_megajoule": "by how much a day's sun warms the surface above the air",
	"ground.least":         "the coldest that the surface is taken to be",
	"ground.bulk_density":  "weight of dry soil",
	"ground.water":         "water in the uppermost metre",
}

// Print writes the answer for the grower.
func (a *SoilAnswer) Print(w io.Writer, units quantity.System) {
	p := report.NewPage(w)
	madeUp := ""
	if a.Weather.MadeUp {
		madeUp = ", which are made up"
	}
	reach := units.FineTemperature(quantity.Celsius(a.Reach))
	p.Wrap("", fmt.Sprintf("Open soil of %q at %s reaches %s at ten centimetres, by %d years%s", a.Place, a.Garden, reach, a.Years, madeUp))
	p.Line("")
	p.Line("  one year in ten by   " + dayOrNever(a.Date.Early))
	p.Line("  at even odds by      " + dayOrNever(a.Date.Middle))
	p.Line("  nine in ten by       " + dayOrNever(a.Date.Late))
	if a.Reason != "" {
		p.Line("  " + a.Reason)
	}
	p.Line("")
	p.Line("month      soil, mean (1 in 10 colder, 1 in 10 warmer)        air")
	for _, m := range a.Months {
		p.Line(fmt.Sprintf("%s    %8s (%s, %s)%20s", m.Month, degreesOf(m.Soil.Middle, units), degreesOf(m.Soil.Low, units), degreesOf(m.Soil.High, units), degreesOf(m.Air.Middle, units)))
	}
	p.Line("")
	for _, note := range a.Notes {
		p.Wrap("", note)
	}
	if a.why {
		printWhy(p, a.Figures, units)
	}
}

func degreesOf(c float64, units quantity.System) string {
	return units.FineTemperature(quantity.Celsius(c))
}

func dayOrNever(d civil.Date) string {
	if d.IsZero() {
		return "never in the season"
	}
	return report.ShortDate(d)
}
