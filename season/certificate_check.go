package season

import (
	"fmt"
	"math"
	"slices"
)

// Check adds a certificate up again: each leaf's bound from its prices, all sums rounded
// outwards; that the leaves leave no setting out; and that the bound is the least of theirs.
// It shares nothing with the search that found it.
func (c *Certificate) Check() error {
	least := math.Inf(1)
	for i, leaf := range c.Leaves {
		bound, err := c.add(leaf)
		if err != nil {
			return fmt.Errorf("leaf %d: %w", i, err)
		}
		if bound < leaf.Bound {
			return fmt.Errorf("leaf %d: its prices add up to a bound of %v, and not to %v", i, bound, leaf.Bound)
		}
		least = math.Min(least, leaf.Bound)
	}
	if c.Bound > least {
		return fmt.Errorf("the bound is %v, though a leaf is bound by %v only", c.Bound, least)
	}
	return c.covers()
}

// allows reports whether a way wants nothing outside the longest burning of a leaf.
func (leaf CertifiedSetting) allows(l *CertifiedLevels, w CertifiedChoice) bool {
	for i, wanted := range w.Wanted {
		if wanted[0] != never && (wanted[0] < l.Lit[i][leaf.Lit[i][1]] || wanted[1] > l.Out[i][leaf.Out[i][1]]) {
			return false
		}
	}
	return w.Steps == nil || w.Steps.First <= leaf.Step[w.Steps.Burner][1] && w.Steps.Last >= leaf.Step[w.Steps.Burner][0]
}

// covers reports what setting of the levels named the leaves leave out, if any: no two of
// them overlap, and together they are as many settings as there are.
func (c *Certificate) covers() error {
	for at, l := range c.Levels {
		var boxes [][][2]int
		for _, leaf := range c.Leaves {
			if leaf.Levels == at {
				boxes = append(boxes, slices.Concat(leaf.Lit, leaf.Out, leaf.Step))
			}
		}
		whole := 1
		for _, days := range slices.Concat(l.Lit, l.Out, l.Step) {
			whole *= len(days)
		}
		filled := 0
		for i, box := range boxes {
			size := 1
			for _, r := range box {
				size *= r[1] - r[0] + 1
			}
			filled += size
			if slices.ContainsFunc(boxes[:i], func(other [][2]int) bool { return overlap(box, other) }) {
				return fmt.Errorf("two leaves of the levels %v overlap", l.Held)
			}
		}
		if filled != whole {
			return fmt.Errorf("the leaves of the levels %v hold %d of %d settings", l.Held, filled, whole)
		}
	}
	return nil
}

func overlap(a, b [][2]int) bool {
	for i := range a {
		if a[i][1] < b[i][0] || b[i][1] < a[i][0] {
			return false
		}
	}
	return true
}
