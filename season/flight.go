package season

// flight is one way of a batch through a place at each of its levels, and then the next way.
type flight struct {
	*prover
	batch *batch
	place int
	rungs []*rung // by level; nil where it is not asked for
	other []*rung // with the safe day of another level
	base  []float64
	rooms [][]fate    // by day of a step: where fates are noted, to be used again
	spare [][][]stage // room for stages, to be used again
}

// take turns to a way at some levels.
func (w *flight) take(levels [][]*outcome, way int) {
	for _, r := range append(w.rungs, w.other...) {
		if r != nil && r.stages != nil {
			w.spare = append(w.spare, r.stages)
		}
	}
	w.rungs, w.other = w.rungs[:0], w.other[:0]
	for _, outcomes := range levels {
		var one *rung
		if outcomes != nil {
			one = &rung{outcome: outcomes[way]}
		}
		w.rungs = append(w.rungs, one)
	}
}

// rung is the way at one level.
type rung struct {
	*outcome
	stays  []span    // by year: the days in the place
	stages [][]stage // by day of a step and year: how far it has come by then
}

// onSteps is an outcome with the first and last of the days on which the step leads to it.
type onSteps struct {
	*outcome
	steps [2]int
	seam  *seam // nil where there is no step
}

// shed lets go of the fates, whose place is used again. They can be found again.
func (s onSteps) shed() {
	if s.seam != nil {
		s.lives, s.later.seam = nil, s.seam
	}
}

// held lists what comes of the way while the place is held so. Where it has left the place
// before the step, or comes after it, in every year, that is what comes of it at one level.
func (w *flight) held(h hold) []onSteps {
	if !h.steps() {
		return []onSteps{{outcome: w.rungs[h.level].outcome}}
	}
	higher, lower := w.rungs[h.level], w.as(h.lower, w.rungs[h.level].route)
	before, after := higher, lower
	if h.up {
		before, after = lower, higher
	}
	var all []onSteps
	for i, day := range w.stepDays {
		o, seam := w.on(i, day, before, after, higher)
		if o == nil {
			continue
		}
		if last := len(all) - 1; last >= 0 && all[last].outcome == o && all[last].steps[1] == i-1 {
			all[last].steps[1] = i
			continue
		}
		all = append(all, onSteps{o, [2]int{i, i}, seam})
	}
	return all
}

// as returns the way at a lower level with the day from which the place is safe for young
// leaves as it is at the higher one.
func (w *flight) as(level int, higher *route) *rung {
	known := w.rungs[level]
	day := higher.onFrom(known.life)
	if known.route.onFrom(known.life) == day {
		return known
	}
	for _, one := range w.other {
		if one.route.first == known.route.first && one.route.on == known.route.on && one.route.onFrom(one.life) == day {
			return one
		}
	}
	way, o := *known.route, known.option
	way.safe = higher.safe
	o.route = &way
	w.other = append(w.other, &rung{outcome: live(known.life, o, w.base, w.ends)})
	return w.other[len(w.other)-1]
}

// on is what comes of the way with the step on a day, and its seam; nil where the colder level
// rules it out. Its fates stand in the room for that day.
func (w *flight) on(i, day int, before, after, higher *rung) (*outcome, *seam) {
	w.ready(before)
	w.ready(after)
	early, late := 0, 0
	for year := range w.ends {
		switch {
		case before.stays[year].to <= day:
			early++
		case after.stays[year].from >= day:
			late++
		}
	}
	switch len(w.ends) {
	case early:
		return before.outcome, nil
	case late:
		return after.outcome, nil
	}
	way, o := *higher.route, higher.option
	way.night, o.route = min(before.route.night, after.route.night), &way
	if way.around >= 0 {
		way.first = splice(before.route.first, after.route.first, day)
	}
	if higher.life.isTooCold(&o) {
		return nil, nil
	}
	fates := w.room(i)
	for year := range fates {
		switch {
		case before.stays[year].to <= day:
			fates[year] = before.lives[year]
		case after.stays[year].from >= day:
			fates[year] = after.lives[year]
		default:
			s := before.stages[i][year]
			walker{life: higher.life, option: &after.option, year: year}.lead(&s, individual{1, 1}, nil, day, len(after.route.ground.years[year].low))
			fates[year] = s.fate
		}
	}
	return fared(higher.life, o, fates, w.base, w.ends), &seam{before.route, after.route, day}
}

// room is where fates of a step on a day are noted.
func (w *flight) room(i int) []fate {
	if w.rooms == nil {
		w.rooms = make([][]fate, len(w.stepDays))
	}
	if w.rooms[i] == nil {
		w.rooms[i] = make([]fate, len(w.ends))
	}
	return w.rooms[i]
}

// stages is room for how far a plant has come by the days of the steps.
func (w *flight) stages() [][]stage {
	if last := len(w.spare) - 1; last >= 0 {
		all := w.spare[last]
		w.spare = w.spare[:last]
		for _, years := range all {
			clear(years)
		}
		return all
	}
	all := make([][]stage, len(w.stepDays))
	for i := range all {
		all[i] = make([]stage, len(w.ends))
	}
	return all
}

// ready finds the stays of a rung, and how far the plant has come by the days of the steps.
func (w *flight) ready(r *rung) {
	if r.stays != nil {
		return
	}
	r.stages = w.stages()
	for year, f := range r.lives {
		stay := span{never, 0}.with(r.option, r.life, f, w.place, int(w.Span.Days()))
		r.stays = append(r.stays, stay)
		one, now := walker{life: r.life, option: &r.option, year: year}, r.start
		var s stage
		for i, day := range w.stepDays {
			if day <= stay.from || day >= stay.to {
				continue
			}
			if now == r.start {
				s = one.begin(individual{1, 1}, nil)
			}
			one.lead(&s, individual{1, 1}, nil, now, day)
			r.stages[i][year], now = s, day
		}
	}
}
