package prove

import (
	"cmp"
	"math"
	"slices"

	"eyeup/season"
)

// houseSavings is what lighting one house can save.
type houseSavings struct {
	heater  int
	savings []saving
	on, off []int     // days on which it may as well be switched on, from the latest, and off, from the first
	all     []float64 // by day on and day off: what all groups save
	one     []float64 // what one group saves
	runs    []heatedRun
}

// saving is a choice that costs less than what a group does without a house.
type saving struct {
	group  int
	amount float64 // of all plants
	days   season.Days
	*season.Choice
}

// heatedRun is a house heated from one day to another.
type heatedRun struct {
	season.Days
	cost float64 // of the heat
	net  float64 // less what all groups save
}

// fillRuns fills in what lighting a house saves, and on which days it may serve: those on which
// it saves more, beyond its heat, than on the fewest.
func (s *lagrangian) fillRuns(one *houseSavings) {
	one.listDays(s.n.shortest[one.heater])
	one.all = append(one.all[:0], make([]float64, len(one.on)*len(one.off))...)
	for first := 0; first < len(one.savings); {
		last := first + 1
		for last < len(one.savings) && one.savings[last].group == one.savings[first].group {
			last++
		}
		one.addGroup(one.savings[first:last])
		first = last
	}
	b, stepDays, wide := s.n.sub.heaters[one.heater], s.n.stepDays(one.heater), len(one.off)
	for i, saved := range one.all {
		if i >= wide && saved == one.all[i-wide] || i%wide > 0 && saved == one.all[i-1] {
			continue // fewer days do as well
		}
		days := season.Days{From: one.on[i/wide], To: one.off[i%wide]}
		cost := b.LeastCost(days, stepDays)
		if len(one.runs) == 0 || cost-saved < one.runs[0].net {
			one.runs = append(one.runs, heatedRun{days, cost, cost - saved})
		}
	}
}

// addGroup adds to all runs of days what one group saves in them.
func (one *houseSavings) addGroup(savings []saving) {
	wide := len(one.off)
	one.one = append(one.one[:0], make([]float64, len(one.all))...)
	of := one.one
	for i := range savings {
		v := &savings[i]
		at := slices.Index(one.on, v.days.From)*wide + slices.Index(one.off, v.days.To)
		of[at] = max(of[at], v.amount)
	}
	for i := range of {
		if i%wide > 0 {
			of[i] = max(of[i], of[i-1])
		}
		if i >= wide {
			of[i] = max(of[i], of[i-wide])
		}
		one.all[i] += of[i]
	}
}

// savedByGroup returns what each group saves while a house is heated on some days, in room that it is given.
func (one *houseSavings) savedByGroup(days season.Days, groups int, each []float64) []float64 {
	each = append(each[:0], make([]float64, groups)...)
	for i := range one.savings {
		if v := &one.savings[i]; v.days.From >= days.From && v.days.To <= days.To {
			each[v.group] = max(each[v.group], v.amount)
		}
	}
	return each
}

// listDays lists the days on which a house may as well be switched on and off: those on which some
// saving begins and ends to want it.
func (one *houseSavings) listDays(least season.Days) {
	one.on, one.off = append(one.on[:0], least.From), append(one.off[:0], least.To)
	for i := range one.savings {
		one.on, one.off = append(one.on, one.savings[i].days.From), append(one.off, one.savings[i].days.To)
	}
	slices.Sort(one.on)
	slices.Sort(one.off)
	one.on, one.off = slices.Compact(one.on), slices.Compact(one.off)
	slices.Reverse(one.on)
}

// bestOf returns what a group saves most by while a house is heated on some days; nil for nothing.
func (one *houseSavings) bestOf(g int, days season.Days) *saving {
	var best *saving
	for i := range one.savings {
		v := &one.savings[i]
		if v.group == g && v.days.From >= days.From && v.days.To <= days.To && (best == nil || v.amount > best.amount) {
			best = v
		}
	}
	return best
}

// pairHouses finds the days on which two houses do best together: each group saves by the one that
// serves it better.
func (s *lagrangian) pairHouses(a, b *houseSavings) (float64, []heatedRun) {
	order := func(x, y heatedRun) int { return cmp.Compare(x.net, y.net) }
	slices.SortStableFunc(a.runs, order)
	slices.SortStableFunc(b.runs, order)
	s.isKnown = append(s.isKnown[:0], make([]bool, len(b.runs))...)
	for len(s.saved) <= len(b.runs) { // the last for the first house
		s.saved = append(s.saved, nil)
	}
	mine := len(b.runs)
	least, best := math.Inf(1), []heatedRun(nil)
	for _, one := range a.runs {
		if one.net+b.runs[0].net >= least {
			break
		}
		s.saved[mine] = a.savedByGroup(one.Days, len(s.p.problem.groups), s.saved[mine])
		for j, other := range b.runs {
			if one.net+other.net >= least {
				break
			}
			if !s.isKnown[j] {
				s.saved[j], s.isKnown[j] = b.savedByGroup(other.Days, len(s.p.problem.groups), s.saved[j]), true
			}
			net := one.net + other.net
			for g, saved := range s.saved[mine] {
				net += min(saved, s.saved[j][g])
			}
			if net < least {
				least, best = net, []heatedRun{one, other}
			}
		}
	}
	return least, best
}
