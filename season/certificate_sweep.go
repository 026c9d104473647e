package season

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
)

// CertifiedDues are what plants pay, week by week from the first Monday, for a burner that is
// not swept: lamps, which burn for all. What all could pay is taken off what it costs to burn.
type CertifiedDues struct {
	Burner int         `json:"burner"`
	Plants [][]float64 `json:"plants" jsonschema_description:"by group and week: each plant that wants it in the week"`
	Room   []float64   `json:"room" jsonschema_description:"by week: each square metre that is taken under it by plants that want it in the week"`
	Limit  int         `json:"limit" jsonschema_description:"the number of the limit of that room in the first week"`
}

// adding adds up one leaf.
type adding struct {
	*Certificate
	leaf   CertifiedSetting
	l      *CertifiedLevels
	prices map[int]float64
	dues   []CertifiedDues
	total  float64
	size   float64 // of all that was added, whatever its sign
}

// certifiedSaving is a way by which a group saves against what it does without a house.
type certifiedSaving struct {
	group  int
	amount float64
	wanted [2]int
}

// certifiedLighting is a house lit on some days: what it costs, and that less what each group
// saves.
type certifiedLighting struct {
	cost, net float64
	saves     []float64
}

// addingSlack is the share of all that was added up which floating point can't have lost.
const addingSlack = 1e-10

func (a *adding) count(x float64) {
	a.total += x
	a.size += math.Abs(x)
}

// add reckons the bound of a leaf: the limits at their prices, what burns beside the swept
// houses at its least, and the least, over all days on which these may burn, of their heat and
// of the cheapest way of every group.
func (c *Certificate) add(leaf CertifiedSetting) (float64, error) {
	a, err := c.adding(leaf)
	if err != nil {
		return 0, err
	}
	for _, limit := range slices.Sorted(maps.Keys(a.prices)) {
		a.count(-a.prices[limit] * c.Limits[limit])
	}
	for i := range a.l.Lit {
		if !slices.Contains(leaf.Swept, i) {
			a.count(a.leastOf(i))
		}
	}
	savings := make([][]certifiedSaving, len(leaf.Swept))
	for g, ways := range a.l.Ways {
		base := a.unlit(g, ways)
		a.count(float64(c.Groups[g].Plants) * base)
		for _, w := range ways {
			h := a.houseOf(w)
			if cost := a.costOf(g, w); h >= 0 && leaf.allows(a.l, w) && cost < base {
				savings[h] = append(savings[h], certifiedSaving{g, float64(c.Groups[g].Plants) * (base - cost), w.Wanted[leaf.Swept[h]]})
			}
		}
	}
	var all [][]certifiedLighting
	for h, i := range leaf.Swept {
		all = append(all, a.lightings(i, savings[h]))
	}
	a.count(together(all))
	return a.total - addingSlack*a.size, nil
}

// adding readies a leaf, and refuses one that makes no sense.
func (c *Certificate) adding(leaf CertifiedSetting) (*adding, error) {
	if leaf.Levels < 0 || leaf.Levels >= len(c.Levels) || leaf.Prices < 0 || leaf.Prices >= len(c.Prices) || len(c.Dues) != len(c.Prices) {
		return nil, errors.New("it names levels or prices that are not there")
	}
	a := &adding{Certificate: c, leaf: leaf, l: &c.Levels[leaf.Levels], prices: c.Prices[leaf.Prices], dues: c.Dues[leaf.Prices]}
	burners := len(a.l.Lit)
	if len(leaf.Lit) != burners || len(leaf.Out) != burners || len(leaf.Step) != burners || len(a.l.Burns) != burners || len(a.l.Ways) != len(c.Groups) {
		return nil, errors.New("it does not name every burner and group")
	}
	if len(leaf.Swept) > mostSwept || slices.ContainsFunc(leaf.Swept, func(i int) bool { return i < 0 || i >= burners }) {
		return nil, errors.New("it sweeps houses that are not there")
	}
	for limit, price := range a.prices {
		if price < 0 || limit < 0 || limit >= len(c.Limits) || limit >= c.Hours && price > c.Hired {
			return nil, fmt.Errorf("limit %d has a price of %v", limit, price)
		}
	}
	for _, d := range a.dues {
		if slices.ContainsFunc(append(d.Plants, d.Room), func(weeks []float64) bool { return len(weeks) > 0 && slices.Min(weeks) < 0 }) {
			return nil, errors.New("it has dues below nothing")
		}
	}
	return a, nil
}

// houseOf returns which of the swept houses a way wants, -1 for none.
func (a *adding) houseOf(w CertifiedChoice) int {
	return slices.IndexFunc(a.leaf.Swept, func(i int) bool { return w.Wanted[i][0] != never })
}

// unlit is what a plant of a group costs at least where no house burns.
func (a *adding) unlit(g int, ways []CertifiedChoice) float64 {
	base := a.LeftOut
	if slices.ContainsFunc(ways, func(w CertifiedChoice) bool { return w.Direct }) {
		base = math.Inf(1)
	}
	for _, w := range ways {
		if a.houseOf(w) < 0 && a.leaf.allows(a.l, w) {
			base = min(base, a.costOf(g, w))
		}
	}
	return base
}

// costOf is what a way costs with its prices and dues.
func (a *adding) costOf(g int, w CertifiedChoice) float64 {
	cost := w.Money - a.WeekWorth*w.Gain
	for _, limit := range slices.Sorted(maps.Keys(w.Takes)) {
		cost += a.prices[limit] * w.Takes[limit]
	}
	for _, d := range a.dues {
		wanted := w.Wanted[d.Burner]
		if wanted[0] == never {
			continue
		}
		for week := a.week(wanted[0]); week <= a.week(wanted[1]-1); week++ {
			cost += d.Plants[g][week] + d.Room[week]*w.Takes[d.Limit+week]
		}
	}
	return cost
}

func (c *Certificate) week(day int) int { return (day - c.Monday) / 7 }

// burns is what a burner costs by its places in the lists of days, at the best of the leaf's
// days for its step.
func (a *adding) burns(burner, lit, out int) float64 {
	cost := math.Inf(1)
	for step := a.leaf.Step[burner][0]; step <= a.leaf.Step[burner][1]; step++ {
		cost = min(cost, a.l.Burns[burner][step][lit][out])
	}
	return cost
}

// leastOf is what a burner that is not swept costs at least, with all that could be paid for it.
func (a *adding) leastOf(burner int) float64 {
	least := math.Inf(1)
	for lit := a.leaf.Lit[burner][0]; lit <= a.leaf.Lit[burner][1]; lit++ {
		for out := a.leaf.Out[burner][0]; out <= a.leaf.Out[burner][1]; out++ {
			least = min(least, a.burns(burner, lit, out)-a.paid(burner, a.l.Lit[burner][lit], a.l.Out[burner][out]))
		}
	}
	return least
}

// paid is what all plants and all the room could pay for a burner from one day to another.
func (a *adding) paid(burner, from, to int) float64 {
	sum := 0.0
	for _, d := range a.dues {
		if d.Burner != burner || from >= to {
			continue
		}
		for week := a.week(from); week <= a.week(to-1); week++ {
			for g, weeks := range d.Plants {
				sum += weeks[week] * float64(a.Groups[g].Plants)
			}
			if d.Room[week] > 0 {
				sum += d.Room[week] * a.Limits[d.Limit+week]
			}
		}
	}
	return sum
}

// lightings lists what comes of lighting a house on the fewest days of the leaf, and on others
// that save more beyond what they cost.
func (a *adding) lightings(burner int, savings []certifiedSaving) []certifiedLighting {
	var all []certifiedLighting
	for lit := a.leaf.Lit[burner][0]; lit <= a.leaf.Lit[burner][1]; lit++ {
		for out := a.leaf.Out[burner][0]; out <= a.leaf.Out[burner][1]; out++ {
			one := certifiedLighting{cost: a.burns(burner, lit, out), saves: make([]float64, len(a.Groups))}
			for _, s := range savings {
				if s.wanted[0] >= a.l.Lit[burner][lit] && s.wanted[1] <= a.l.Out[burner][out] {
					one.saves[s.group] = max(one.saves[s.group], s.amount)
				}
			}
			one.net = one.cost
			for _, saved := range one.saves {
				one.net -= saved
			}
			if len(all) == 0 || one.net < all[0].net {
				all = append(all, one)
			}
		}
	}
	return all
}

// together is the least that the swept houses cost beyond what is saved by them; each group
// saves by one of them.
func together(all [][]certifiedLighting) float64 {
	least := math.Inf(1)
	switch len(all) {
	case 0:
		return 0
	case 1:
		for _, one := range all[0] {
			least = min(least, one.net)
		}
		return least
	}
	for _, one := range all[0] {
		for _, other := range all[1] {
			if one.net+other.net >= least {
				continue
			}
			net := one.cost + other.cost
			for g, saved := range one.saves {
				net -= max(saved, other.saves[g])
			}
			least = min(least, net)
		}
	}
	return least
}
