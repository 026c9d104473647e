package reckon

import (
	"errors"
	"fmt"
	"io"
	"math"
	"strings"

	"eyeup/culture"
	"eyeup/growth"
	"eyeup/internal/report"
	"eyeup/odds"
	"eyeup/quantity"
)

// SproutQuestion asks how soon a kind comes up. Give either the steady temperature Warm, or the Night and Day
// between which it swings; leave the others unknown.
type SproutQuestion struct {
	KindQuestion
	Warm, Night, Day quantity.Temperature
	Why              bool
}

// SproutAnswer is how soon a kind comes up.
type SproutAnswer struct {
	Kind       string     `json:"kind"`
	Warm       *float64   `json:"temperature_c,omitempty" jsonschema_description:"steady temperature"`
	Night      *float64   `json:"night_c,omitempty"`
	Day        *float64   `json:"day_c,omitempty"`
	PerDay     float64    `json:"degree_days_per_day"`
	Eyed       *DaySpread `json:"eyed_days" jsonschema:"nullable" jsonschema_description:"till eyes show; null for seed"`
	Up         DaySpread  `json:"up_days" jsonschema_description:"till it is up, of those that ever come"`
	NeverShare float64    `json:"never_share"`
	NeverFrom  string     `json:"never_from" jsonschema_description:"what the share that never comes up rests on"`
	LookAfter  *float64   `json:"look_after_days,omitempty" jsonschema_description:"look then at what is not up"`
	Assumption bool       `json:"assumption" jsonschema_description:"whether the curve is an assumption or recalled and not a measurement"`
	Notes      []string   `json:"notes"`

	Figures []FigureAnswer `json:"figures,omitempty"`
	Sources []SourceAnswer `json:"sources,omitempty"`

	base, ceiling quantity.Temperature
}

// DaySpread is a number of days with its spread within a lot. null means never.
type DaySpread struct {
	Early  *float64 `json:"early" jsonschema:"oneof_type=number;null" jsonschema_description:"one in ten is sooner"`
	Middle *float64 `json:"middle" jsonschema:"oneof_type=number;null" jsonschema_description:"even odds"`
	Late   *float64 `json:"late" jsonschema:"oneof_type=number;null" jsonschema_description:"one in ten is later"`
}

// sproutWords begin the keys of the figures that a sprouting rests on.
var sproutWords = []string{"sprout.", "seed.", "start.warmth"}

// Sprout answers a SproutQuestion.
func Sprout(q SproutQuestion) (*SproutAnswer, error) {
	k, err := q.kind()
	if err != nil {
		return nil, err
	}
	for _, l := range k.Lacks() {
		if l.Blocks && strings.HasPrefix(l.Key, "sprout.") {
			return nil, fmt.Errorf("how %s sprouts is not known (%s); give this garden's own figure in its folder", k.Name, l.Meaning)
		}
	}
	rate, mean, err := q.rate(k.Sprout)
	if err != nil {
		return nil, err
	}
	up := k.Sprout.UpDaysAt(rate)
	a := &SproutAnswer{
		Kind: k.Name, Warm: knownCelsius(q.Warm), Night: knownCelsius(q.Night), Day: knownCelsius(q.Day),
		PerDay: *report.Rounded(rate, 3), Up: daySpread(up), Assumption: isAssumed(k), Notes: notesOn(k, "sprouting", "rest", "warm"),
		base: k.Sprout.Base, ceiling: k.Sprout.Ceiling,
	}
	if k.Life != culture.Sow {
		eyed := daySpread(up.Times(k.Sprout.Eyed))
		a.Eyed = &eyed
	}
	if !math.IsNaN(k.LookAfter) {
		a.LookAfter = &k.LookAfter
	}
	a.setNever(k, mean)
	if q.Why {
		a.Figures = FiguresOf(k, sproutWords)
		var sources []string
		for _, f := range a.Figures {
			sources = append(sources, f.Source)
		}
		a.Sources = citations(sources)
	}
	return a, nil
}

// rate returns the degree-days counted in a day, and the mean temperature.
func (q SproutQuestion) rate(s growth.Sprouting) (float64, quantity.Temperature, error) {
	if q.Warm.IsKnown() == (q.Night.IsKnown() || q.Day.IsKnown()) || q.Night.IsKnown() != q.Day.IsKnown() {
		return 0, quantity.Temperature{}, errors.New("say how warm it is: --temp 70F where it is steady, or --night 50F and --day 75F where it swings")
	}
	if q.Warm.IsKnown() {
		return s.Rate(q.Warm.Celsius()), q.Warm, nil
	}
	if q.Day.Above(s.WarmTo) {
		return 0, quantity.Temperature{}, fmt.Errorf("days of %.1f °C are warmer than the %.1f °C up to which a swing can be reckoned; ask with --temp", q.Day.Celsius(), s.WarmTo.Celsius())
	}
	rate, err := growth.SineDegreeDays(q.Night.Celsius(), q.Day.Celsius(), s.Base.Celsius(), s.WarmFrom.Celsius())
	if err != nil {
		return 0, quantity.Temperature{}, fmt.Errorf("nights of %.1f °C are warmer than days of %.1f °C; are the two swapped?", q.Night.Celsius(), q.Day.Celsius())
	}
	return rate, q.Night.Between(q.Day, 0.5), nil
}

// setNever sets the share that never comes up: from seedlings counted at that temperature if there are any,
// otherwise the kind's usual share.
func (a *SproutAnswer) setNever(k *culture.Kind, mean quantity.Temperature) {
	if s, counted := k.Germination(mean.Celsius()); counted {
		a.NeverShare, a.NeverFrom = *report.Rounded(1-float64(s), 4), "seedlings counted at this temperature"
		return
	}
	a.NeverShare, a.NeverFrom = float64(k.Sprout.Never), "the usual share, at a good temperature"
}

// isAssumed reports whether the base or the sum of the curve was not measured.
func isAssumed(k *culture.Kind) bool {
	for _, name := range []string{"sprout.base", "sprout.sum"} {
		if f, _ := k.Figure(name); f.Sure != culture.Measured && f.Sure != culture.Own {
			return true
		}
	}
	return false
}

// notesOn returns the facts of a kind about any of the words.
func notesOn(k *culture.Kind, about ...string) []string {
	notes := []string{}
	for _, f := range k.Facts() {
		for _, word := range about {
			if f.About == word {
				notes = append(notes, f.Text)
			}
		}
	}
	return notes
}

func daySpread(a odds.Amount) DaySpread {
	return DaySpread{finiteDays(a.Low), finiteDays(a.Middle), finiteDays(a.High)}
}

func finiteDays(x float64) *float64 {
	if math.IsInf(x, 0) {
		return nil
	}
	return report.Rounded(x, 1)
}

func knownCelsius(t quantity.Temperature) *float64 {
	if !t.IsKnown() {
		return nil
	}
	return report.Rounded(t.Celsius(), 3)
}

// Print writes the answer for the grower.
func (a *SproutAnswer) Print(w io.Writer, units quantity.System) {
	p := report.NewPage(w)
	p.Line(report.Capital(a.Kind) + " " + a.where(units))
	p.Line("")
	if a.Up.Middle == nil {
		p.Wrap("  ", fmt.Sprintf("does not sprout there: it needs between %s and %s", units.Temperature(a.base), units.Temperature(a.ceiling)))
	} else {
		if a.Eyed != nil {
			p.Line("  eyes show    " + a.Eyed.words())
		}
		p.Line("  up           " + a.Up.words())
		p.Line("               (one in ten sooner, even odds, one in ten later)")
		p.Line(fmt.Sprintf("  never up     %.0f in 100 (%s)", 100*a.NeverShare, a.NeverFrom))
		if a.LookAfter != nil {
			p.Line(fmt.Sprintf("  look         after %.0f days at what is not up", *a.LookAfter))
		}
	}
	for _, note := range a.Notes {
		p.Line("")
		p.Wrap("", note)
	}
	if a.Assumption && len(a.Notes) == 0 {
		p.Line("")
		p.Line("The curve is an assumption, not a measurement.")
	}
	if len(a.Figures) > 0 {
		p.Line("")
		for _, f := range a.Figures {
			printFigure(p, f, units, true)
		}
		printSources(p, a.Sources)
	}
}

func (a *SproutAnswer) where(units quantity.System) string {
	if a.Warm != nil {
		return "at a steady " + units.FineTemperature(quantity.Celsius(*a.Warm))
	}
	return fmt.Sprintf("at nights of %s and days of %s", units.FineTemperature(quantity.Celsius(*a.Night)), units.FineTemperature(quantity.Celsius(*a.Day)))
}

func (d DaySpread) words() string {
	return fmt.Sprintf("after %.0f, %.0f, %.0f days", *d.Early, *d.Middle, *d.Late)
}
