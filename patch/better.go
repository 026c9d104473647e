package patch

// step is a change of one variety by the fewest places that its least allows.
type step struct{ i, by int }

// up returns the smallest step that gives a variety more; false if it may not have more.
func (s *sums) up(i int) (step, bool) {
	n := s.places[i]
	by := 1
	if n < s.least[i] {
		by = s.least[i] - n
	}
	return step{i, by}, n+by <= s.b.Varieties[i].most()
}

// down returns the smallest step that takes places from a variety; false if none may go.
func (s *sums) down(i int) (step, bool) {
	n := s.places[i]
	switch {
	case n == 0 || s.firm[i] && n <= s.least[i]:
		return step{}, false
	case n <= s.least[i]:
		return step{i, -n}, true
	}
	return step{i, -1}, true
}

// change returns by how much the steps change each part of the count, and whether the list
// then fits. The list itself is not changed.
func (s *sums) change(steps ...step) (c Count, fits bool) {
	before := s.mixes(steps)
	for _, t := range steps {
		v, n := &s.b.Varieties[t.i], s.places[t.i]
		c.Wish += v.lost(n+t.by) - v.lost(n)
		c.Short += shortCounts * float64(v.short(n+t.by)-v.short(n))
		s.add(t.i, t.by)
	}
	fits = s.fits()
	c.Mix = s.mixes(steps) - before
	for _, t := range steps {
		s.add(t.i, -t.by)
	}
	return c, fits
}

// mixes returns the count of the groups that the steps affect.
func (s *sums) mixes(steps []step) float64 {
	total := 0.0
	for g := range s.groups {
		for _, t := range steps {
			if s.of[s.groups[g].mix][t.i] {
				total += s.mixCount(g)
				break
			}
		}
	}
	return total
}

// telling is the smallest improvement of the count worth making, in places: well below the
// smallest difference between choices, well above rounding errors.
const telling = 1e-7

// fill adds places one step at a time, each to the variety that gains most for the room it
// takes, until no step gains.
func (s *sums) fill() {
	for {
		best, most := step{}, telling
		for i := range s.places {
			t, may := s.up(i)
			if !may {
				continue
			}
			c, fits := s.change(t)
			gain := -c.Total() / float64(t.by)
			if area := s.b.Varieties[i].area(); area > 0 {
				gain /= area
			}
			if fits && gain > most {
				best, most = t, gain
			}
		}
		if best.by == 0 {
			return
		}
		s.add(best.i, best.by)
	}
}

// better takes every single step, and every exchange of a step down for a step up, that lowers
// the count, until none does. It ends because the count falls each time.
func (s *sums) better() {
	for changed := true; changed; {
		changed = false
		for i := range s.places {
			for s.single(i) {
				changed = true
			}
			for j := range s.places {
				for i != j && s.exchange(i, j) {
					changed = true
				}
			}
		}
	}
}

// single gives or takes places of one variety if that lowers the count.
func (s *sums) single(i int) bool {
	for _, way := range []func(int) (step, bool){s.up, s.down} {
		if t, may := way(i); may {
			if c, fits := s.change(t); fits && c.Total() < -telling {
				s.add(t.i, t.by)
				return true
			}
		}
	}
	return false
}

// exchange moves places from variety i to variety j if that lowers the count.
func (s *sums) exchange(i, j int) bool {
	from, may := s.down(i)
	to, also := s.up(j)
	if !may || !also {
		return false
	}
	c, fits := s.change(from, to)
	if !fits || c.Total() >= -telling {
		return false
	}
	s.add(from.i, from.by)
	s.add(to.i, to.by)
	return true
}
