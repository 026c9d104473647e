package culture

import (
	"eyeup/quantity"
	"fmt"
	"maps"
	"math"
)

// Override is a garden's own figure that replaces ours.
type Override struct {
	Key  string // such as "sprout.sum"
	Text string // the number with its unit, such as "180 °C·d", "48F", "12 %"
}

// With returns the kind with a garden's own figures, which have no range. It fails for an
// unknown key, a wrong unit, or figures that are no longer consistent; k itself never changes.
func (k *Kind) With(overrides []Override) (*Kind, error) {
	mine := *k
	mine.figures = maps.Clone(k.figures)
	for _, o := range overrides {
		i, known := numbered[o.Key]
		if !known {
			return nil, fmt.Errorf("culture of %s: there is no figure %q; the nearest is %q", k.Name, o.Key, nearest(o.Key))
		}
		v, err := keys[i].unit.parse(o.Text)
		if err != nil {
			return nil, fmt.Errorf("culture of %s, %s: %w", k.Name, o.Key, err)
		}
		mine.figures[o.Key] = Figure{Low: v, Value: v, High: v, Unit: keys[i].unit, Source: "this garden's own", Sure: Own}
	}
	mine.fill()
	return &mine, mine.check()
}

// check returns an error for inconsistent figures; unknown ones are ignored.
func (k *Kind) check() error {
	if !math.IsNaN(k.Sprout.Sum) {
		if err := k.Sprout.Check(); err != nil {
			return fmt.Errorf("culture of %s: %w", k.Name, err)
		}
	}
	if k.Grow.Base.IsKnown() {
		if err := k.Grow.Check(); err != nil {
			return fmt.Errorf("culture of %s: %w", k.Name, err)
		}
	}
	if d := k.DayLength; d.None >= d.Full {
		return fmt.Errorf("culture of %s: days without progress (%g h) must be shorter than days of full progress (%g h)", k.Name, d.None, d.Full)
	}
	if b := k.Bench; b.Spaced < b.Tight {
		return fmt.Errorf("culture of %s: a spaced pot needs at least the bench area of a pot-tight one", k.Name)
	}
	return nil
}

// nearest returns the key that differs from name in the fewest letters.
func nearest(name string) string {
	known := make([]string, len(keys))
	for i, k := range keys {
		known[i] = k.name
	}
	near, _ := quantity.Nearest(name, known)
	return near
}
