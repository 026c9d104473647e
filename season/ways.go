package season

import (
	"runtime"
	"slices"
	"sync"
)

// placeWays is every way that leads through one place as it is held, or through none that has
// a thermostat.
type PlaceWays struct {
	place   int // -1: none
	hold    Hold
	Choices [][]Choice // by group
}

type waysKey struct {
	place   int
	hold    Hold
	benches bool // whether warm benches are on
	basis   float64
}

// passes reports whether a way leads through a place.
func (r *route) passes(place int) bool {
	return !r.direct && (r.firstPlace == place || r.onPlace == place)
}

// waysThrough gathers the ways through a place as it is held, each once. All ways with a step are
// gathered together, since they begin alike.
func (c *Columns) waysThrough(key waysKey) *PlaceWays {
	c.door.Lock()
	defer c.door.Unlock()
	return c.cachedWays(key)
}

// cachedWays is passage, behind the door.
func (c *Columns) cachedWays(key waysKey) *PlaceWays {
	known := c.ways
	if known[key] == nil {
		all := []Hold{key.hold}
		if c.AllSteps && key.hold.Steps() && key.basis == float64(c.planner.Asked.Fits) {
			all = slices.DeleteFunc(c.planner.AllHolds(key.place), func(h Hold) bool { return !h.Steps() })
		}
		c.gatherWays(key, all)
	}
	return known[key]
}

// gatherWays lives through the ways of every group while the place of a key is held in several
// ways, on as many cores as there are.
func (c *Columns) gatherWays(key waysKey, all []Hold) {
	for _, h := range all {
		c.ways[key.heldAs(h)] = &PlaceWays{place: key.place, hold: h, Choices: make([][]Choice, len(c.groups))}
	}
	var beside *PlaceWays
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
			var known []Choice
			if beside != nil {
				known = beside.Choices[i]
			}
			for h, ways := range c.choicesByHold(b, key, all, levels) {
				c.ways[key.heldAs(h)].Choices[i] = c.undominated(ways, known)
			}
			<-cores
		})
	}
	wait.Wait()
}

// outcomesByLevel lists the ways of a batch at each level that some holds want, by level.
func (c *Columns) outcomesByLevel(b *batch, key waysKey, all []Hold) [][]*outcome {
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
		want(h.Level)
		want(h.Lower)
	}
	return by
}

// openWays lists the ways that are open while the places are held in some ways, that of
// no thermostat first.
func (c *Columns) Through(at Holds, basis float64) []*PlaceWays {
	key := waysKey{benches: c.hasBenches(at), basis: basis}
	all := []*PlaceWays{c.waysThrough(key.noPlace())}
	for _, place := range c.Open {
		key.place = place
		all = append(all, c.waysThrough(key.heldAs(at[place])))
	}
	return all
}

// outcomesThrough lists the ways of a batch through a place, -1 for none that has a thermostat.
func (c *Columns) outcomesThrough(b *batch, place int, at Levels) []*outcome {
	return slices.DeleteFunc(slices.Clone(c.planner.held(b, c.planner.options(b, at))), func(o *outcome) bool {
		if place >= 0 {
			return !o.route.passes(place)
		}
		return slices.ContainsFunc(c.Open, o.route.passes)
	})
}

// onlyOn holds the place of a key at a level, all others off but for warm benches.
func (c *Columns) onlyOn(key waysKey, level int) Levels {
	l := make(Levels, len(c.planner.Given.Places))
	if key.benches {
		c.planner.benchesOn(l)
	}
	if key.place >= 0 {
		l[key.place] = level
	}
	return l
}

// heldAs is the key of the same place held in another way.
func (k waysKey) heldAs(h Hold) waysKey {
	k.hold = h
	return k
}

// noPlace is the key of the ways through no place with a thermostat.
func (k waysKey) noPlace() waysKey {
	k.place, k.hold = -1, Hold{Lower: none}
	return k
}

// hasBenches reports whether the warm benches are on.
func (c *Columns) hasBenches(at Holds) bool {
	for i, h := range at {
		if c.planner.Given.Places[i].Sort == Bench && h.Level > 0 {
			return true
		}
	}
	return false
}

// choicesByHold turns outcomes, by level, into choices, by hold.
func (c *Columns) choicesByHold(b *batch, key waysKey, all []Hold, levels [][]*outcome) map[Hold][]Choice {
	choices := map[Hold][]Choice{}
	way := &steppedWay{columns: c, batch: b, place: key.place, base: c.planner.weeksOf(c.planner.baseline(b))}
	for i := range levels[all[0].Level] {
		way.turnTo(levels, i)
		for _, h := range all {
			for _, found := range way.outcomes(h) {
				if c.planner.admissible(found.outcome) {
					takes := c.planner.takesOf
					if h.Steps() { // these are not met again
						takes = c.planner.takesIn
					}
					c := c.choiceOf(b, found.outcome, c.onlyOn(key, h.Level), takes(found.outcome, key.basis))
					if h.Steps() {
						c.Place, c.Steps = key.place, found.steps
					}
					choices[h] = append(choices[h], c)
				}
				found.release()
			}
		}
	}
	return choices
}
