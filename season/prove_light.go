package season

import (
	"cmp"
	"math"
	"slices"
)

// lighting is what lighting one house can save.
type lighting struct {
	burner   int
	savings  []saving
	from, to []int     // days on which it may as well be lit, from the latest, and put out, from the first
	all      []float64 // by day lit and day put out: what all groups save
	of       []float64 // what one group saves
	serve    []lit
}

// saving is a choice that costs less than what a group does without a house.
type saving struct {
	group  int
	amount float64 // of all plants
	days   span
	*choice
}

// lit is a house lit from one day to another.
type lit struct {
	span
	cost float64 // of the heat
	net  float64 // less what all groups save
}

// light fills in what lighting a house saves, and on which days it may serve: those on which
// it saves more, beyond its heat, than on the fewest.
func (s *sweep) light(one *lighting) {
	one.days(s.n.least[one.burner])
	one.all = append(one.all[:0], make([]float64, len(one.from)*len(one.to))...)
	for first := 0; first < len(one.savings); {
		last := first + 1
		for last < len(one.savings) && one.savings[last].group == one.savings[first].group {
			last++
		}
		one.spread(one.savings[first:last])
		first = last
	}
	b, turns, wide := s.n.f.burners[one.burner], s.n.turns(one.burner), len(one.to)
	for i, saved := range one.all {
		if i >= wide && saved == one.all[i-wide] || i%wide > 0 && saved == one.all[i-1] {
			continue // fewer days do as well
		}
		days := span{one.from[i/wide], one.to[i%wide]}
		cost := b.least(days, turns)
		if len(one.serve) == 0 || cost-saved < one.serve[0].net {
			one.serve = append(one.serve, lit{days, cost, cost - saved})
		}
	}
}

// spread adds to all runs of days what one group saves in them.
func (one *lighting) spread(savings []saving) {
	wide := len(one.to)
	one.of = append(one.of[:0], make([]float64, len(one.all))...)
	of := one.of
	for i := range savings {
		v := &savings[i]
		at := slices.Index(one.from, v.days.from)*wide + slices.Index(one.to, v.days.to)
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

// each returns what each group saves while a house burns on some days, in room that it is given.
func (one *lighting) each(days span, groups int, each []float64) []float64 {
	each = append(each[:0], make([]float64, groups)...)
	for i := range one.savings {
		if v := &one.savings[i]; v.days.from >= days.from && v.days.to <= days.to {
			each[v.group] = max(each[v.group], v.amount)
		}
	}
	return each
}

// days lists the days on which a house may as well be lit and put out: those on which some
// saving begins and ends to want it.
func (one *lighting) days(least span) {
	one.from, one.to = append(one.from[:0], least.from), append(one.to[:0], least.to)
	for i := range one.savings {
		one.from, one.to = append(one.from, one.savings[i].days.from), append(one.to, one.savings[i].days.to)
	}
	slices.Sort(one.from)
	slices.Sort(one.to)
	one.from, one.to = slices.Compact(one.from), slices.Compact(one.to)
	slices.Reverse(one.from)
}

// within returns what a group saves most by while a house burns on some days; nil for nothing.
func (one *lighting) within(g int, days span) *saving {
	var best *saving
	for i := range one.savings {
		v := &one.savings[i]
		if v.group == g && v.days.from >= days.from && v.days.to <= days.to && (best == nil || v.amount > best.amount) {
			best = v
		}
	}
	return best
}

// pair finds the days on which two houses do best together: each group saves by the one that
// serves it better.
func (s *sweep) pair(a, b *lighting) (float64, []lit) {
	order := func(x, y lit) int { return cmp.Compare(x.net, y.net) }
	slices.SortStableFunc(a.serve, order)
	slices.SortStableFunc(b.serve, order)
	s.known = append(s.known[:0], make([]bool, len(b.serve))...)
	for len(s.each) <= len(b.serve) { // the last for the first house
		s.each = append(s.each, nil)
	}
	mine := len(b.serve)
	least, best := math.Inf(1), []lit(nil)
	for _, one := range a.serve {
		if one.net+b.serve[0].net >= least {
			break
		}
		s.each[mine] = a.each(one.span, len(s.groups), s.each[mine])
		for j, other := range b.serve {
			if one.net+other.net >= least {
				break
			}
			if !s.known[j] {
				s.each[j], s.known[j] = b.each(other.span, len(s.groups), s.each[j]), true
			}
			net := one.net + other.net
			for g, saved := range s.each[mine] {
				net += min(saved, s.each[j][g])
			}
			if net < least {
				least, best = net, []lit{one, other}
			}
		}
	}
	return least, best
}
