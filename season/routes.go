package season

import (
	"cmp"
	"slices"

	"eyeup/culture"
	"eyeup/place"
)

// levels is the setting of every place, by its index; a constant level is run for the
// whole span while routes are compared.
type Levels []int

// setting returns the setting of a place at one of its levels.
func (m *Planner) setting(at int, level int) place.Setting {
	if level >= len(m.Given.Places[at].Levels) {
		return place.Off()
	}
	return m.Given.Places[at].Levels[level]
}

// routes returns the ways through the places at the given levels for stock that waits in
// store (an index, -1 for seed): from each warm room on to each place with light, from each
// warm bench on to the cool benches of its house, the lit shelf from first to last, glass from first to last, and straight into the ground.
func (m *Planner) routes(store int, at Levels) []*route {
	ground := m.placeOf(Ground)
	base := route{
		storePlace: store, groundPlace: ground, ground: m.climate(ground, place.Off()), firstPlace: -1, onPlace: -1, framePlace: -1, around: -1,
	}
	if store >= 0 {
		base.store = m.climateAt(store, at)
	}
	var all []*route
	frames := m.hardening()
	via := func(first, on int) {
		r := base
		r.firstPlace, r.first = first, m.climateAt(first, at)
		r.onPlace, r.on = on, m.climateAt(on, at)
		r.warm, r.around = m.Given.Places[first].Sort == Room || m.Given.Places[first].Sort == Bench, m.houseOf(first)
		r.heated = m.isHeated(first, at) || m.isHeated(on, at)
		r.name = m.Given.Places[first].Name
		if on != first {
			r.name += ", then " + m.Given.Places[on].Name
		} else if m.Given.Places[first].Lit > 0 {
			r.name += ", under lamps"
		}
		r.night = max(m.heldAt(first, at), m.heldAt(on, at))
		r.safe = m.safeDays(r.on)
		all = append(all, &r)
		for _, frame := range frames {
			if frame != on {
				all = append(all, m.hardenedIn(frame, &r))
			}
		}
	}
	for i, p := range m.Given.Places {
		switch p.Sort {
		case Room:
			for j, q := range m.Given.Places {
				if q.Sort == Glass || q.Sort == Frame || (i == j && p.Lit > 0) {
					via(i, j)
				}
			}
		case Bench:
			if at[i] > 0 && p.Room > 0 {
				via(i, m.houseOf(i))
			}
		case Glass, Frame:
			via(i, i)
		}
	}
	direct := base
	direct.name, direct.direct = "straight into the ground", true
	direct.first, direct.on = base.ground, base.ground
	if base.store != nil {
		direct.first = base.store
	}
	return append(all, &direct)
}

// mostFrames is how many frames are offered for hardening; more would double the ways again.
const mostFrames = 2

// hardening returns the places in which plants may harden before they are planted out: the
// frames with most room.
func (m *Planner) hardening() []int {
	var frames []int
	for i, p := range m.Given.Places {
		if p.Sort == Frame {
			frames = append(frames, i)
		}
	}
	slices.SortStableFunc(frames, func(a, b int) int { return cmp.Compare(m.Given.Places[b].Room, m.Given.Places[a].Room) })
	return frames[:min(len(frames), mostFrames)]
}

// hardenedIn is a route on which plants harden in a frame.
func (m *Planner) hardenedIn(frame int, r *route) *route {
	h := *r
	h.framePlace, h.frame = frame, m.climate(frame, place.Off())
	h.name += ", hardened in " + m.Given.Places[frame].Name
	h.frostFree = map[float64]int{}
	for _, b := range m.batches {
		if _, known := h.frostFree[b.life.kill]; !known {
			h.frostFree[b.life.kill] = m.safeFrom(h.frame, b.life.kill)
		}
	}
	return &h
}

// goes reports whether plants of a life may go by a route at all: cuttings want warmth from
// the first, a warm room is too warm for corms, and a frame that is not yet safe when the
// open ground is serves nobody.
func (l *life) goes(r *route, out int) bool {
	switch {
	case r.direct:
		return true
	case l.upAfter > 0 && !r.warm, l.Life == culture.Soak && r.warm:
		return false
	case r.framePlace >= 0:
		return l.harden > 0 && r.frostFree[l.kill] <= out
	}
	return true
}

// isHeated reports whether a place is held warm for the season's sake.
func (m *Planner) isHeated(at int, l Levels) bool {
	return (m.Given.Places[at].Sort == Glass || m.Given.Places[at].Sort == Bench) && l[at] > 0 || m.Given.Places[at].Sort == Room && m.Given.Places[at].Costs
}

// heldAt returns the level at which a heated place is held, and cold where none is.
func (m *Planner) heldAt(at int, l Levels) float64 {
	if m.Given.Places[at].Sort != Glass || l[at] == 0 {
		return unheld
	}
	return m.Given.Places[at].Level[l[at]].Celsius()
}

// unheld stands for the level of a place that is not heated.
const unheld = -1000.0

// safeDays finds, for the harm limit of every kind, the first day from which a place is
// safe for young leaves: no colder night follows before midsummer in all but the accepted
// share of years.
func (m *Planner) safeDays(c *climate) map[float64]int {
	safe := map[float64]int{}
	for _, b := range m.batches {
		if _, known := safe[b.life.harm]; known {
			continue
		}
		safe[b.life.harm] = m.safeFrom(c, b.life.harm-slack)
	}
	return safe
}

// risked returns the day after which, in all but the accepted share of years, nothing of
// the given last days comes.
func (m *Planner) risked(last []int) int {
	days := sortedCopy(last)
	allowed := int(float64(m.Asked.FrostRisk) * float64(len(days)))
	return days[len(days)-1-allowed]
}
