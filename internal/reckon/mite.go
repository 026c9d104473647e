package reckon

import (
	"fmt"
	"io"
	"math"

	"eyeup/culture"
	"eyeup/growth"
	"eyeup/internal/report"
	"eyeup/quantity"
)

// MiteQuestion asks how fast a pest goes from egg to adult.
type MiteQuestion struct {
	Pest string // mites or thrips
	Warm quantity.Temperature
	Why  bool
}

// MiteAnswer is how fast a pest goes from egg to adult.
type MiteAnswer struct {
	Pest     string   `json:"pest"`
	Warm     float64  `json:"temperature_c"`
	Days     *float64 `json:"days_egg_to_adult" jsonschema:"oneof_type=number;null" jsonschema_description:"null where it is too cold"`
	Fewest   *float64 `json:"fewest_days" jsonschema:"oneof_type=number;null" jsonschema_description:"the fewest that any study has found"`
	Increase *float64 `json:"increase_per_day,omitempty" jsonschema_description:"natural logarithm of how many times a colony grows in a day"`
	Doubling *float64 `json:"doubling_days,omitempty"`
	Look     int      `json:"look_every_days"`
	Sources  []string `json:"sources"`

	why bool
}

// lookEvery is how often plants are looked over for mites, in days.
var lookEvery = int(culture.Usual("mite.look"))

// lookingAdvice says how: Florida and Iowa State extension services.
const lookingAdvice = "Look at the undersides of leaves with a lens of 10 to 15 times, or beat leaves onto white paper. Warm dry air favours mites. Whatever is sprayed, the label is the law."

func pestNamed(name string) (growth.Pest, error) {
	switch name {
	case "mites":
		return growth.Mites, nil
	case "thrips":
		return growth.Thrips, nil
	}
	return growth.Pest{}, fmt.Errorf("nothing is known of %q; ask for mites or thrips", name)
}

// Mite answers a MiteQuestion.
func Mite(q MiteQuestion) (*MiteAnswer, error) {
	pest, err := pestNamed(q.Pest)
	if err != nil {
		return nil, err
	}
	usual, fewest, err := pest.Days(q.Warm)
	if err != nil {
		return nil, err
	}
	a := &MiteAnswer{
		Pest: pest.Name, Warm: *report.Rounded(q.Warm.Celsius(), 3), Days: finiteDays(usual), Fewest: finiteDays(fewest),
		Look: lookEvery, Sources: []string{pest.Source}, why: q.Why,
	}
	if q.Warm.Below(pest.Joined) {
		a.Sources = []string{pest.CoolSource}
	}
	if pest.QuickSource != pest.CoolSource {
		a.Sources = append(a.Sources, pest.QuickSource)
	}
	if r, tried := growth.MiteIncrease(q.Warm); tried && q.Pest == "mites" {
		a.Increase, a.Doubling = report.Rounded(r, 4), report.Rounded(growth.DoublingDays(r), 1)
		a.Sources = append(a.Sources, "Bounfour & Tanigoshi 2001: increase of 0.08 a day at 15 °C, 0.321 at 30 °C, a line between")
	}
	return a, nil
}

// Print writes the answer for the grower.
func (a *MiteAnswer) Print(w io.Writer, units quantity.System) {
	p := report.NewPage(w)
	p.Line(fmt.Sprintf("%s at a steady %s", report.Capital(a.Pest), units.FineTemperature(quantity.Celsius(a.Warm))))
	p.Line("")
	if a.Days == nil {
		p.Line("  too cold: eggs do not develop")
	} else {
		p.Line(fmt.Sprintf("  egg to adult   %.1f days", *a.Days))
		if a.Fewest != nil && math.Abs(*a.Fewest-*a.Days) >= 0.1 {
			p.Line(fmt.Sprintf("  at the fewest  %.1f days, in another study", *a.Fewest))
		}
	}
	if a.Doubling != nil {
		p.Line(fmt.Sprintf("  doubles in     %.1f days", *a.Doubling))
	}
	p.Line("")
	p.Wrap("", fmt.Sprintf("Look every %d days (common practice). %s", a.Look, lookingAdvice))
	if a.why {
		p.Line("")
		for _, s := range a.Sources {
			p.Wrap("  · ", s)
		}
	}
}
