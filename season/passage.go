package season

import (
	"runtime"
	"slices"
	"sync"
)

// passage is every way that leads through one place as it is held, or through none that has
// a thermostat.
type passage struct {
	place   int // -1: none
	hold    hold
	choices [][]choice // by group
}

type passageKey struct {
	place   int
	hold    hold
	benches bool // whether warm benches are on
	basis   float64
}

// passes reports whether a way leads through a place.
func (r *route) passes(place int) bool {
	return !r.direct && (r.firstPlace == place || r.onPlace == place)
}

// passages are those that were gathered. Two provers may share them.
type passages struct {
	door  sync.Mutex
	known map[passageKey]*passage
}

// passage gathers the ways through a place as it is held, each once. All ways with a step are
// gathered together, since they begin alike.
func (p *prover) passage(key passageKey) *passage {
	p.passages.door.Lock()
	defer p.passages.door.Unlock()
	return p.gathered(key)
}

// gathered is passage, behind the door.
func (p *prover) gathered(key passageKey) *passage {
	known := p.passages.known
	if known[key] == nil {
		all := []hold{key.hold}
		if p.searches && key.hold.steps() && key.basis == float64(p.Fits) {
			all = slices.DeleteFunc(p.allHolds(key.place), func(h hold) bool { return !h.steps() })
		}
		p.gather(key, all)
	}
	return known[key]
}

// gather lives through the ways of every group while the place of a key is held in several
// ways, on as many cores as there are.
func (p *prover) gather(key passageKey, all []hold) {
	for _, h := range all {
		p.passages.known[key.held(h)] = &passage{place: key.place, hold: h, choices: make([][]choice, len(p.groups))}
	}
	var beside *passage
	if key.place >= 0 {
		beside = p.gathered(key.nowhere())
	}
	var wait sync.WaitGroup
	cores := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i, g := range p.groups {
		b := g.batches[0]
		levels := p.levelsOf(b, key, all)
		cores <- struct{}{}
		wait.Go(func() {
			var known []choice
			if beside != nil {
				known = beside.choices[i]
			}
			for h, ways := range p.ways(b, key, all, levels) {
				p.passages.known[key.held(h)].choices[i] = p.undominated(ways, known)
			}
			<-cores
		})
	}
	wait.Wait()
}

// levelsOf lists the ways of a batch at each level that some holds want, by level.
func (p *prover) levelsOf(b *batch, key passageKey, all []hold) [][]*outcome {
	var by [][]*outcome
	want := func(level int) {
		for len(by) <= level {
			by = append(by, nil)
		}
		if level >= 0 && by[level] == nil {
			by[level] = p.along(b, key.place, p.alone(key, level))
		}
	}
	for _, h := range all {
		want(h.level)
		want(h.lower)
	}
	return by
}

// through lists the passages that are open while the places are held in some ways, that of
// no thermostat first.
func (p *prover) through(at holds, basis float64) []*passage {
	key := passageKey{benches: p.hasBenches(at), basis: basis}
	all := []*passage{p.passage(key.nowhere())}
	for _, place := range p.open {
		key.place = place
		all = append(all, p.passage(key.held(at[place])))
	}
	return all
}

// along lists the ways of a batch through a place, -1 for none that has a thermostat.
func (p *prover) along(b *batch, place int, at levels) []*outcome {
	return slices.DeleteFunc(slices.Clone(p.held(b, p.options(b, at))), func(o *outcome) bool {
		if place >= 0 {
			return !o.route.passes(place)
		}
		return slices.ContainsFunc(p.open, o.route.passes)
	})
}

// alone holds the place of a key at a level, all others off but for warm benches.
func (p *prover) alone(key passageKey, level int) levels {
	l := make(levels, len(p.Places))
	if key.benches {
		p.benchesOn(l)
	}
	if key.place >= 0 {
		l[key.place] = level
	}
	return l
}

// held is the key of the same place held in another way.
func (k passageKey) held(h hold) passageKey {
	k.hold = h
	return k
}

// nowhere is the key of the ways through no place with a thermostat.
func (k passageKey) nowhere() passageKey {
	k.place, k.hold = -1, hold{lower: none}
	return k
}

// hasBenches reports whether the warm benches are on.
func (p *prover) hasBenches(at holds) bool {
	for i, h := range at {
		if p.Places[i].Sort == Bench && h.level > 0 {
			return true
		}
	}
	return false
}

// ways turns outcomes, by level, into choices, by hold.
func (p *prover) ways(b *batch, key passageKey, all []hold, levels [][]*outcome) map[hold][]choice {
	choices := map[hold][]choice{}
	way := &flight{prover: p, batch: b, place: key.place, base: p.weeksOf(p.baseline(b))}
	for i := range levels[all[0].level] {
		way.take(levels, i)
		for _, h := range all {
			for _, found := range way.held(h) {
				if p.admissible(found.outcome) {
					takes := p.takesOf
					if h.steps() { // these are not met again
						takes = p.takesIn
					}
					c := p.choiceOf(b, found.outcome, p.alone(key, h.level), takes(found.outcome, key.basis))
					if h.steps() {
						c.place, c.steps = key.place, found.steps
					}
					choices[h] = append(choices[h], c)
				}
				found.shed()
			}
		}
	}
	return choices
}
