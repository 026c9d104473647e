package certificate

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
)

// mostHouses is of how many houses a bound goes through all days one by one.
const mostHouses = 2

// summing adds up the bound of one leaf.
type summing struct {
	c      *Certificate
	leaf   Leaf
	l      *Levels
	prices map[int]float64
	shared []HeaterPrices
	total  float64
	size   float64 // of all that was added, whatever its sign
}

// saving is what a group saves by a way through a heated house, against its cheapest way through none.
type saving struct {
	group  int
	amount float64
	wanted [2]int
}

// heating is a house heated on some days: the cost, the cost less what all groups save, and what each
// group saves.
type heating struct {
	cost, net float64
	saves     []float64
}

// roundingSlack bounds what floating point can have lost, as a share of all that was added up.
const roundingSlack = 1e-10

func (a *summing) count(x float64) {
	a.total += x
	a.size += math.Abs(x)
}

// LeafBound returns a cost below which no plan in a leaf can lie: the Lagrangian bound by the
// leaf's prices, rounded down. It adds up the limits at their prices, the least cost of the heaters
// outside leaf.Houses, and, over all days of the heaters in leaf.Houses, the least of their cost
// and of the cheapest way of every group. It fails for a leaf that names what is not there, and
// for prices below nothing.
func (c *Certificate) LeafBound(leaf Leaf) (float64, error) {
	a, err := c.summing(leaf)
	if err != nil {
		return 0, err
	}
	for _, limit := range slices.Sorted(maps.Keys(a.prices)) {
		a.count(-a.prices[limit] * c.Limits[limit])
	}
	for i := range a.l.On {
		if !slices.Contains(leaf.Houses, i) {
			a.count(a.leastOf(i))
		}
	}
	savings := make([][]saving, len(leaf.Houses))
	for g, ways := range a.l.Ways {
		base := a.unheated(g, ways)
		a.count(float64(c.Groups[g].Plants) * base)
		for _, w := range ways {
			h := a.houseOf(w)
			if cost := a.costOf(g, w); h >= 0 && leaf.allows(a.l, w) && cost < base {
				savings[h] = append(savings[h], saving{g, float64(c.Groups[g].Plants) * (base - cost), w.Wanted[leaf.Houses[h]]})
			}
		}
	}
	var all [][]heating
	for h, i := range leaf.Houses {
		all = append(all, a.heatings(i, savings[h]))
	}
	a.count(together(all))
	return a.total - roundingSlack*a.size, nil
}

// summing prepares a leaf, and refuses one that makes no sense.
func (c *Certificate) summing(leaf Leaf) (*summing, error) {
	if leaf.Levels < 0 || leaf.Levels >= len(c.Levels) || leaf.Prices < 0 || leaf.Prices >= len(c.Prices) || len(c.Shared) != len(c.Prices) {
		return nil, errors.New("it names levels or prices that are not there")
	}
	a := &summing{c: c, leaf: leaf, l: &c.Levels[leaf.Levels], prices: c.Prices[leaf.Prices], shared: c.Shared[leaf.Prices]}
	heaters := len(a.l.On)
	if len(leaf.On) != heaters || len(leaf.Off) != heaters || len(leaf.Step) != heaters || len(a.l.Costs) != heaters || len(a.l.Ways) != len(c.Groups) {
		return nil, errors.New("it does not name every heater and group")
	}
	if len(leaf.Houses) > mostHouses || slices.ContainsFunc(leaf.Houses, func(i int) bool { return i < 0 || i >= heaters }) {
		return nil, errors.New("it goes through the days of houses that are not there")
	}
	for limit, price := range a.prices {
		if price < 0 || limit < 0 || limit >= len(c.Limits) || limit >= c.Hours && price > c.Hired {
			return nil, fmt.Errorf("limit %d has a price of %v", limit, price)
		}
	}
	for _, d := range a.shared {
		if slices.ContainsFunc(append(d.Plants, d.Room), func(weeks []float64) bool { return len(weeks) > 0 && slices.Min(weeks) < 0 }) {
			return nil, errors.New("it has prices of shared heat below nothing")
		}
	}
	return a, nil
}

// houseOf returns which of the leaf's houses a way wants, -1 for none.
func (a *summing) houseOf(w Way) int {
	return slices.IndexFunc(a.leaf.Houses, func(i int) bool { return w.Wanted[i][0] != never })
}

// unheated is what a plant of a group costs at least where none of the leaf's houses is heated.
func (a *summing) unheated(g int, ways []Way) float64 {
	base := a.c.LeftOut
	if slices.ContainsFunc(ways, func(w Way) bool { return w.Direct }) {
		base = math.Inf(1)
	}
	for _, w := range ways {
		if a.houseOf(w) < 0 && a.leaf.allows(a.l, w) {
			base = min(base, a.costOf(g, w))
		}
	}
	return base
}

// costOf is the reduced cost of a way: its own cost, and the price of all that it takes.
func (a *summing) costOf(g int, w Way) float64 {
	cost := w.Money - a.c.WeekWorth*w.Gain
	for _, limit := range slices.Sorted(maps.Keys(w.Takes)) {
		cost += a.prices[limit] * w.Takes[limit]
	}
	for _, d := range a.shared {
		wanted := w.Wanted[d.Heater]
		if wanted[0] == never {
			continue
		}
		for week := a.c.week(wanted[0]); week <= a.c.week(wanted[1]-1); week++ {
			cost += d.Plants[g][week] + d.Room[week]*w.Takes[d.Limit+week]
		}
	}
	return cost
}

func (c *Certificate) week(day int) int { return (day - c.Monday) / 7 }

// heaterCost is what a heater costs, by the places of its days in the lists, with its step on the
// cheapest of the leaf's days.
func (a *summing) heaterCost(heater, on, off int) float64 {
	cost := math.Inf(1)
	for step := a.leaf.Step[heater][0]; step <= a.leaf.Step[heater][1]; step++ {
		cost = min(cost, a.l.Costs[heater][step][on][off])
	}
	return cost
}

// leastOf is the least cost of a heater outside leaf.Houses, less all that plants could pay for it.
func (a *summing) leastOf(heater int) float64 {
	least := math.Inf(1)
	for on := a.leaf.On[heater][0]; on <= a.leaf.On[heater][1]; on++ {
		for off := a.leaf.Off[heater][0]; off <= a.leaf.Off[heater][1]; off++ {
			least = min(least, a.heaterCost(heater, on, off)-a.paid(heater, a.l.On[heater][on], a.l.Off[heater][off]))
		}
	}
	return least
}

// paid is what all plants and all the room could pay for a heater from one day to another.
func (a *summing) paid(heater, from, to int) float64 {
	sum := 0.0
	for _, d := range a.shared {
		if d.Heater != heater || from >= to {
			continue
		}
		for week := a.c.week(from); week <= a.c.week(to-1); week++ {
			for g, weeks := range d.Plants {
				sum += weeks[week] * float64(a.c.Groups[g].Plants)
			}
			if d.Room[week] > 0 {
				sum += d.Room[week] * a.c.Limits[d.Limit+week]
			}
		}
	}
	return sum
}

// heatings lists the days on which a house may be heated: the fewest of the leaf, and those that save
// more beyond their cost.
func (a *summing) heatings(heater int, savings []saving) []heating {
	var all []heating
	for on := a.leaf.On[heater][0]; on <= a.leaf.On[heater][1]; on++ {
		for off := a.leaf.Off[heater][0]; off <= a.leaf.Off[heater][1]; off++ {
			one := heating{cost: a.heaterCost(heater, on, off), saves: make([]float64, len(a.c.Groups))}
			for _, s := range savings {
				if s.wanted[0] >= a.l.On[heater][on] && s.wanted[1] <= a.l.Off[heater][off] {
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

// together is the least cost of the heated houses beyond what is saved by them. Each group saves by
// one of them.
func together(all [][]heating) float64 {
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

// allows reports whether a way wants nothing outside the longest run of days of a leaf.
func (leaf Leaf) allows(l *Levels, w Way) bool {
	for i, wanted := range w.Wanted {
		if wanted[0] != never && (wanted[0] < l.On[i][leaf.On[i][1]] || wanted[1] > l.Off[i][leaf.Off[i][1]]) {
			return false
		}
	}
	return w.Steps == nil || w.Steps.First <= leaf.Step[w.Steps.Heater][1] && w.Steps.Last >= leaf.Step[w.Steps.Heater][0]
}
