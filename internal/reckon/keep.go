package reckon

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"eyeup/internal/report"
	"eyeup/keeping"
	"eyeup/odds"
	"eyeup/quantity"
)

// KeepQuestion asks how stock keeps in a store: how much weight it loses and how much survives.
type KeepQuestion struct {
	KindQuestion
	Form, Pack  string
	Temperature quantity.Temperature
	Humidity    quantity.Share // of the room
	Days        float64
	Why         bool
}

// KeepAnswer is how the stock keeps.
type KeepAnswer struct {
	Kind     string         `json:"kind"`
	Form     string         `json:"form"`
	Pack     string         `json:"pack"`
	Warm     float64        `json:"temperature_c"`
	Humidity float64        `json:"relative_humidity_percent"`
	Days     float64        `json:"days"`
	Lost     odds.Amount    `json:"weight_lost_percent"`
	State    keeping.State  `json:"state" jsonschema:"enum=firm,enum=wrinkled,enum=dried out"`
	Wrinkles odds.Amount    `json:"wrinkles_after_days" jsonschema_description:"from packing; null: not within years"`
	Through  *odds.Amount   `json:"comes_through_percent" jsonschema:"nullable" jsonschema_description:"share alive at the end; null where it can't be reckoned"`
	ToDo     string         `json:"to_do"`
	Assumed  bool           `json:"assumption" jsonschema_description:"whether the figures are assumptions and no measurements"`
	Advice   []AdviceAnswer `json:"advice"`
	Disagree bool           `json:"advice_on_humidity_disagrees"`
	Notes    []string       `json:"notes"`

	Figures []FigureAnswer `json:"figures,omitempty"`
}

// AdviceAnswer is what one source advises; null where it says nothing.
type AdviceAnswer struct {
	Source  string   `json:"source"`
	Coldest *float64 `json:"coldest_c" jsonschema:"oneof_type=number;null"`
	Warmest *float64 `json:"warmest_c" jsonschema:"oneof_type=number;null"`
	Driest  *float64 `json:"driest_percent" jsonschema:"oneof_type=number;null"`
	Dampest *float64 `json:"dampest_percent" jsonschema:"oneof_type=number;null"`
	Medium  string   `json:"medium,omitempty"`
	Remarks string   `json:"remarks,omitempty"`
	Sure    string   `json:"sure"`
}

// Keep answers a KeepQuestion.
func Keep(q KeepQuestion) (*KeepAnswer, error) {
	k, err := q.kind()
	if err != nil {
		return nil, err
	}
	stored := keeping.Stock{Kind: k.Name, Form: q.Form, Pack: q.Pack, Culture: k}
	spells := []keeping.Spell{{Days: q.Days, Temperature: q.Temperature, Humidity: q.Humidity}}
	dried, err := keeping.Loss(stored, spells)
	if err != nil {
		return nil, withAdvice(err, k.Name)
	}
	wrinkles, err := keeping.DaysTo(stored, 0, keeping.WrinkledAt().Value, q.Temperature, q.Humidity)
	if err != nil {
		return nil, err
	}
	a := &KeepAnswer{
		Kind: k.Name, Form: q.Form, Pack: q.Pack,
		Warm: *report.Rounded(q.Temperature.Celsius(), 2), Humidity: *report.Rounded(q.Humidity.Percent(), 1), Days: q.Days,
		Lost: report.RoundedAmount(dried.Lost.Times(100), 1), State: dried.State, Wrinkles: report.RoundedAmount(wrinkles, 0),
		ToDo: keeping.ToDo(dried.State, q.Temperature), Assumed: true, Advice: adviceOn(k.Name), Notes: []string{},
	}
	_, _, a.Disagree = keeping.Disagree(k.Name)
	if err := a.setSurvival(stored, spells); err != nil {
		return nil, err
	}
	if q.Why {
		a.Figures = append(FigureAnswers(keeping.FiguresOf(stored)), FiguresOf(k, []string{"store.success"})...)
	}
	return a, nil
}

// setSurvival sets the share alive at the end, or a note why it can't be computed.
func (a *KeepAnswer) setSurvival(s keeping.Stock, spells []keeping.Spell) error {
	through, err := keeping.Survival(s, spells)
	switch {
	case errors.Is(err, keeping.ErrFrozen), errors.Is(err, keeping.ErrUnknown):
		a.Notes = append(a.Notes, report.Capital(err.Error())+".")
		return nil
	case err != nil:
		return err
	}
	share := report.RoundedAmount(through.Times(100), 1)
	a.Through = &share
	return nil
}

// withAdvice adds what sources advise to the error for a kind that can't be computed.
func withAdvice(err error, kind string) error {
	if !errors.Is(err, keeping.ErrUnknown) {
		return err
	}
	var all []string
	for _, a := range adviceOn(kind) {
		all = append(all, strings.TrimSpace(a.words(quantity.Metric)))
	}
	if len(all) == 0 {
		return err
	}
	return fmt.Errorf("%w\n  advised for %s: %s", err, kind, strings.Join(all, "\n                  "))
}

func adviceOn(kind string) []AdviceAnswer {
	all := []AdviceAnswer{}
	for _, a := range keeping.Advised(kind) {
		all = append(all, AdviceAnswer{
			Source: a.Source, Coldest: knownOrNil(a.Coldest, 1), Warmest: knownOrNil(a.Warmest, 1), Driest: knownOrNil(100*a.Driest, 1), Dampest: knownOrNil(100*a.Dampest, 1),
			Medium: a.Medium, Remarks: a.Remarks, Sure: string(a.Sure),
		})
	}
	return all
}

// words writes an advice in one line.
func (a AdviceAnswer) words(units quantity.System) string {
	var parts []string
	degrees := func(c *float64) string { return units.Temperature(quantity.Celsius(*c)) }
	switch {
	case a.Coldest != nil && a.Warmest != nil && *a.Coldest != *a.Warmest:
		parts = append(parts, strings.Fields(degrees(a.Coldest))[0]+" to "+degrees(a.Warmest))
	case a.Warmest != nil:
		parts = append(parts, "about "+degrees(a.Warmest))
	}
	switch {
	case a.Driest != nil && *a.Driest != *a.Dampest:
		parts = append(parts, fmt.Sprintf("%.0f to %.0f %% humidity", *a.Driest, *a.Dampest))
	case a.Driest != nil:
		parts = append(parts, fmt.Sprintf("about %.0f %% humidity", *a.Driest))
	}
	for _, words := range []string{a.Medium, a.Remarks} {
		if words != "" {
			parts = append(parts, words)
		}
	}
	return strings.Join(parts, "; ") + " (" + a.Source + ")"
}

// Print writes the answer for the grower.
func (a *KeepAnswer) Print(w io.Writer, units quantity.System) {
	p := report.NewPage(w)
	p.Line(fmt.Sprintf("%s %s, %s, %.0f days at %s and %.0f %% humidity", report.Capital(a.Kind), a.Form, packWords(a.Pack), a.Days, units.FineTemperature(quantity.Celsius(a.Warm)), a.Humidity))
	p.Line("")
	p.Line(fmt.Sprintf("  weight lost      %.0f %% (%.0f to %.0f)", a.Lost.Middle, a.Lost.Low, a.Lost.High))
	p.Line(fmt.Sprintf("  condition        %s", a.State))
	p.Line("  wrinkles after   " + dayWords(a.Wrinkles))
	if a.Through != nil {
		p.Line(fmt.Sprintf("  survives         %.0f of 100 (%.0f to %.0f)", a.Through.Middle, a.Through.Low, a.Through.High))
	}
	p.Wrap("  to do            ", a.ToDo)
	p.Line("")
	p.Wrap("", "These figures are assumptions that agree with common practice; none is measured for dahlia. Rounds of your own are worth more.")
	for _, note := range a.Notes {
		p.Wrap("", note)
	}
	p.Line("")
	a.printAdvice(p, units)
	p.Line("")
	p.Wrap("", "A crate packed damp is heavy: "+LiftCaution+" Wear gloves: sap and dust can irritate skin.")
	printWhy(p, a.Figures, units)
}

// printAdvice prints where sources disagree, and all they say where the reasons are asked for.
func (a *KeepAnswer) printAdvice(p *report.Page, units quantity.System) {
	if a.Disagree {
		driest, dampest, _ := keeping.Disagree(a.Kind)
		p.Wrap("", fmt.Sprintf("Sources do not agree on the humidity of the air: from %.0f to %.0f %%. The air at the skin depends on the packing.", 100*driest, 100*dampest))
	}
	if len(a.Figures) == 0 {
		p.Line("What each source advises, and where the figures come from: --why.")
		return
	}
	p.Line("Advised for " + a.Kind + ":")
	for _, advice := range a.Advice {
		p.Wrap("  · ", advice.words(units))
	}
}

func packWords(pack string) string {
	if pack == "bare" {
		return pack
	}
	return "in " + pack
}

// dayWords writes a spread of days. Anything beyond ten years counts as never.
func dayWords(a odds.Amount) string {
	const never = 3650
	if !(a.Middle < never) {
		return "not within ten years"
	}
	high := fmt.Sprintf("%.0f", a.High)
	if !(a.High < never) {
		high = "never"
	}
	return fmt.Sprintf("%.0f days (%.0f to %s)", a.Middle, a.Low, high)
}
