package season

import (
	"runtime"
	"slices"
	"sync"
)

// placeWays is every way that leads through one place as it is held, or through none that has
// a thermostat.
type placeWays struct {
	place   int // -1: none
	hold    hold
	choices [][]choice // by group
}

type waysKey struct {
	place   int
	hold    hold
	benches bool // whether warm benches are on
	basis   float64
}

// passes reports whether a way leads through a place.
func (r *route) passes(place int) bool {
	return !r.direct && (r.firstPlace == place || r.onPlace == place)
}

// waysThrough gathers the ways through a place as it is held, each once. All ways with a step are
// gathered together, since they begin alike.
func (c *columns) waysThrough(key waysKey) *placeWays {
	c.door.Lock()
	defer c.door.Unlock()
	return c.cachedWays(key)
}

// cachedWays is passage, behind the door.
func (c *columns) cachedWays(key waysKey) *placeWays {
	known := c.ways
	if known[key] == nil {
		all := []hold{key.hold}
		if c.allSteps && key.hold.steps() && key.basis == float64(c.planner.Asked.Fits) {
			all = slices.DeleteFunc(c.planner.allHolds(key.place), func(h hold) bool { return !h.steps() })
		}
		c.gatherWays(key, all)
	}
	return known[key]
}

// gatherWays lives through the ways of every group while the place of a key is held in several
// ways, on as many cores as there are.
func (c *columns) gatherWays(key waysKey, all []hold) {
	for _, h := range all {
		c.ways[key.heldAs(h)] = &placeWays{place: key.place, hold: h, choices: make([][]choice, len(c.groups))}
	}
	var beside *placeWays
	if key.place >= 0 {
		beside = c.cachedWays(key.noPlace())
	}
	var wait sync.WaitGroup
	cores := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i, g := range c.groups {
		b := g.batches[0]
		levels := c.outcomesByLevel(b, key, all)
		cores <- struct{}{}
		wait.Go(func() {
			var known []choice
			if beside != nil {
				known = beside.choices[i]
			}
			for h, ways := range c.choicesByHold(b, key, all, levels) {
				c.ways[key.heldAs(h)].choices[i] = c.undominated(ways, known)
			}
			<-cores
		})
	}
	wait.Wait()
}

// outcomesByLevel lists the ways of a batch at each level that some holds want, by level.
func (c *columns) outcomesByLevel(b *batch, key waysKey, all []hold) [][]*outcome {
	var by [][]*outcome
	want := func(level int) {
		for len(by) <= level {
			by = append(by, nil)
		}
		if level >= 0 && by[level] == nil {
			by[level] = c.outcomesThrough(b, key.place, c.onlyOn(key, level))
		}
	}
	for _, h := range all {
		want(h.level)
		want(h.lower)
	}
	return by
}

// openWays lists the ways that are open while the places are held in some ways, that of
// no thermostat first.
func (c *columns) openWays(at holds, basis float64) []*placeWays {
	key := waysKey{benches: c.hasBenches(at), basis: basis}
	all := []*placeWays{c.waysThrough(key.noPlace())}
	for _, place := range c.open {
		key.place = place
		all = append(all, c.waysThrough(key.heldAs(at[place])))
	}
	return all
}

// outcomesThrough lists the ways of a batch through a place, -1 for none that has a thermostat.
func (c *columns) outcomesThrough(b *batch, place int, at levels) []*outcome {
	return slices.DeleteFunc(slices.Clone(c.planner.held(b, c.planner.options(b, at))), func(o *outcome) bool {
		if place >= 0 {
			return !o.route.passes(place)
		}
		return slices.ContainsFunc(c.open, o.route.passes)
	})
}

// onlyOn holds the place of a key at a level, all others off but for warm benches.
func (c *columns) onlyOn(key waysKey, level int) levels {
	l := make(levels, len(c.planner.Given.Places))
	if key.benches {
		c.planner.benchesOn(l)
	}
	if key.place >= 0 {
		l[key.place] = level
	}
	return l
}

// heldAs is the key of the same place held in another way.
func (k waysKey) heldAs(h hold) waysKey {
	k.hold = h
	return k
}

// noPlace is the key of the ways through no place with a thermostat.
func (k waysKey) noPlace() waysKey {
	k.place, k.hold = -1, hold{lower: none}
	return k
}

// hasBenches reports whether the warm benches are on.
func (c *columns) hasBenches(at holds) bool {
	for i, h := range at {
		if c.planner.Given.Places[i].Sort == Bench && h.level > 0 {
			return true
		}
	}
	return false
}

// choicesByHold turns outcomes, by level, into choices, by hold.
func (c *columns) choicesByHold(b *batch, key waysKey, all []hold, levels [][]*outcome) map[hold][]choice {
	choices := map[hold][]choice{}
	way := &steppedWay{columns: c, batch: b, place: key.place, base: c.planner.weeksOf(c.planner.baseline(b))}
	for i := range levels[all[0].level] {
		way.turnTo(levels, i)
		for _, h := range all {
			for _, found := range way.outcomes(h) {
				if c.planner.admissible(found.outcome) {
					takes := c.planner.takesOf
					if h.steps() { // these are not met again
						takes = c.planner.takesIn
					}
					c := c.choiceOf(b, found.outcome, c.onlyOn(key, h.level), takes(found.outcome, key.basis))
					if h.steps() {
						c.place, c.steps = key.place, found.steps
					}
					choices[h] = append(choices[h], c)
				}
				found.release()
			}
		}
	}
	return choices
}
