package certificate

import (
	"fmt"
	"math"
	"slices"
)

// Check works out the bound of every leaf again from its prices, with sums rounded outwards.
// It also checks that the leaves leave no setting out, and that the certificate's bound is the
// least of theirs. The error names the leaf and what is wrong with it.
func (c *Certificate) Check() error {
	least := math.Inf(1)
	for i, leaf := range c.Leaves {
		bound, err := c.LeafBound(leaf)
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

// covers reports which levels have a setting in no leaf, if any. No two leaves may overlap, and
// together they must hold as many settings as there are.
func (c *Certificate) covers() error {
	for at, l := range c.Levels {
		var boxes [][][2]int
		for _, leaf := range c.Leaves {
			if leaf.Levels == at {
				boxes = append(boxes, slices.Concat(leaf.On, leaf.Off, leaf.Step))
			}
		}
		whole := 1
		for _, days := range slices.Concat(l.On, l.Off, l.Step) {
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
