package place

import (
	"fmt"
	"slices"
	"strings"

	"eyeup/civil"
	"eyeup/quantity"
)

// Setting is the schedule of heating levels of a place. Its zero value is off throughout.
// Before the first step the heat is off.
type Setting struct {
	Steps []Step // ordered by date
}

// Step sets the thermostat on the morning of a day, until the next step.
type Step struct {
	From  civil.Date           // zero: from the beginning
	Level quantity.Temperature // lowest temperature to hold
	Off   bool                 // the heat is off; Level is ignored
}

// Off returns the setting of a place that is never heated.
func Off() Setting { return Setting{} }

// Steadily returns the setting that holds one level throughout.
func Steadily(level quantity.Temperature) Setting {
	return Setting{Steps: []Step{{Level: level}}}
}

// At returns the level of day d, and whether the heat is on at all.
func (s Setting) At(d civil.Date) (level quantity.Temperature, on bool) {
	for _, step := range slices.Backward(s.Steps) {
		if !step.From.After(d) {
			return step.Level, !step.Off
		}
	}
	return quantity.Temperature{}, false
}

// Check returns an error if the steps are out of order or a level is outside -10 to 40 °C.
func (s Setting) Check() error {
	for i, step := range s.Steps {
		switch {
		case i > 0 && !s.Steps[i-1].From.Before(step.From):
			return fmt.Errorf("the step of %v is not after the step of %v; give the steps in order of their dates", step.From, s.Steps[i-1].From)
		case !step.Off && !(step.Level.Celsius() >= -10 && step.Level.Celsius() <= 40):
			return fmt.Errorf("a level of %.1f °C is outside -10 to 40 °C; give the temperature to hold", step.Level.Celsius())
		}
	}
	return nil
}

// String writes the setting in °C, such as "4.0 °C; 16.0 °C from 2027-04-01".
func (s Setting) String() string {
	if len(s.Steps) == 0 {
		return "off"
	}
	parts := make([]string, len(s.Steps))
	for i, step := range s.Steps {
		parts[i] = "off"
		if !step.Off {
			parts[i] = fmt.Sprintf("%.1f °C", step.Level.Celsius())
		}
		if !step.From.IsZero() {
			parts[i] += " from " + step.From.String()
		}
	}
	return strings.Join(parts, "; ")
}

// daily returns the level of every day of the span in °C, cold where the heat is off.
func (s Setting) daily(span civil.Span) []float64 {
	levels := make([]float64, span.Days())
	for i := range levels {
		levels[i] = cold
		if level, on := s.At(span.From.AddDays(civil.Days(i))); on {
			levels[i] = level.Celsius()
		}
	}
	return levels
}

// cold is a level that the air never falls to: the heat is off.
const cold = -1000.0
