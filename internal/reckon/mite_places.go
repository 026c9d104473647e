package reckon

import (
	"fmt"
	"io"
	"math"
	"time"

	"eyeup/civil"
	"eyeup/growth"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/report"
	"eyeup/odds"
	"eyeup/place"
	"eyeup/quantity"
)

// MitePlacesAnswer is when each generation of a pest is complete in every warm place of a garden. It
// assumes that some were there at midwinter.
type MitePlacesAnswer struct {
	Garden string      `json:"garden"`
	Pest   string      `json:"pest"`
	Since  civil.Date  `json:"counted_from" jsonschema_description:"as if some were there that day, which is an assumption"`
	Until  civil.Date  `json:"counted_to"`
	Years  int         `json:"years"`
	MadeUp bool        `json:"made_up" jsonschema_description:"true when no station measured the weather"`
	Look   int         `json:"look_every_days"`
	Places []MitePlace `json:"places"`
}

// MitePlace is one place of a MitePlacesAnswer.
type MitePlace struct {
	Place       string       `json:"place"`
	Level       *float64     `json:"level_c,omitempty" jsonschema_description:"what a heater holds there"`
	Generations []civil.When `json:"generations" jsonschema_description:"when each is done, at most six"`
}

// mostGenerations is the most generations in an answer; by then there are mites on every leaf.
const mostGenerations = 6

// MitePlaces computes the generations of a pest in every covered place of the garden. Heated places are held
// at level, or are off if level is unknown.
func MitePlaces(g *garden.Garden, pest string, level quantity.Temperature) (*MitePlacesAnswer, error) {
	of, err := pestNamed(pest)
	if err != nil {
		return nil, err
	}
	a := &MitePlacesAnswer{
		Garden: g.Name, Pest: of.Name, Since: midwinter(g), Years: len(g.Members), MadeUp: g.Record.MadeUp,
		Look: lookEvery, Places: []MitePlace{},
	}
	a.Until = a.Since.AddDays(halfYear)
	hours := g.Hours()
	for _, p := range g.Places {
		if p.Sort == exchange.Ground {
			continue
		}
		setting, err := heldAt(p, level)
		if err != nil {
			return nil, err
		}
		var done [mostGenerations][]float64
		for _, h := range hours {
			course := p.Model.Run(h, g.Site, setting)
			days := growth.DailyRates(course.Air, of.Rate)
			from, to := int(a.Since.Sub(g.Span.From)), int(a.Until.Sub(g.Span.From))
			addGenerations(&done, growth.Generations(days[:min(to+1, len(days))], from))
		}
		one := MitePlace{Place: p.Name, Generations: generationDates(g.Span.From, done)}
		if held, on := setting.At(a.Since); on {
			one.Level = knownCelsius(held)
		}
		a.Places = append(a.Places, one)
	}
	return a, nil
}

// halfYear is how long generations are counted: until plants stand outside.
const halfYear civil.Days = 181

// midwinter is 1 January of the plant year, or 1 July in the southern hemisphere.
func midwinter(g *garden.Garden) civil.Date {
	if g.Site.IsSouthern() {
		return civil.MustOn(g.Span.From.Year(), time.July, 1)
	}
	return civil.MustOn(g.Span.To.Year(), time.January, 1)
}

// heldAt is the setting that holds a level in a place that is heated, off elsewhere.
func heldAt(p exchange.Place, level quantity.Temperature) (place.Setting, error) {
	model, covered := p.Model.(place.Covered)
	if !level.IsKnown() || !covered || model.Heater == nil {
		return place.Off(), nil
	}
	setting := place.Steadily(level)
	if err := model.Accepts(setting); err != nil {
		return place.Setting{}, fmt.Errorf("--level in the %s: %w", p.Name, err)
	}
	return setting, nil
}

// addGenerations adds the days of one year. A generation that is not complete in it gets infinity.
func addGenerations(done *[mostGenerations][]float64, days []int) {
	for i := range done {
		day := math.Inf(1)
		if i < len(days) {
			day = float64(days[i])
		}
		done[i] = append(done[i], day)
	}
}

// generationDates returns the spread of dates of each generation, up to the last that one year in ten
// completes.
func generationDates(from civil.Date, done [mostGenerations][]float64) []civil.When {
	all := []civil.When{}
	for _, days := range done {
		d := odds.AmountOf(days)
		when := civil.When{Early: dayOf(from, d.Low), Middle: dayOf(from, d.Middle), Late: dayOf(from, d.High)}
		if when.Early.IsZero() {
			break
		}
		all = append(all, when)
	}
	return all
}

func dayOf(from civil.Date, day float64) civil.Date {
	if math.IsInf(day, 0) || math.IsNaN(day) {
		return civil.Date{}
	}
	return from.AddDays(civil.Days(math.Round(day)))
}

// Print writes the answer for the grower.
func (a *MitePlacesAnswer) Print(w io.Writer, units quantity.System) {
	p := report.NewPage(w)
	p.Wrap("", fmt.Sprintf("%s at %s: when each generation is complete, counted from %v to %v as if some were there from the start.", report.Capital(a.Pest), a.Garden, a.Since, a.Until))
	if a.MadeUp {
		p.Line("The weather is made up.")
	}
	for _, place := range a.Places {
		p.Line("")
		held := ""
		if place.Level != nil {
			held = ", held at " + units.Temperature(quantity.Celsius(*place.Level))
		}
		p.Line(report.Capital(place.Place) + held)
		if len(place.Generations) == 0 {
			p.Line("  no generation is complete in that time, in nine years of ten")
			continue
		}
		p.Line("  generation   one year in ten by   even odds    nine in ten by")
		for i, g := range place.Generations {
			p.Line(fmt.Sprintf("  %d            %-21v%-13v%v", i+1, g.Early, orNever(g.Middle), orNever(g.Late)))
		}
		p.Wrap("  ", fmt.Sprintf("Look every %d days from %v.", a.Look, place.Generations[0].Early.AddDays(-civil.Days(a.Look))))
	}
	p.Line("")
	p.Wrap("", lookingAdvice)
}

func orNever(d civil.Date) string {
	if d.IsZero() {
		return "not by then"
	}
	return d.String()
}
