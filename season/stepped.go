package season

// steppedWay is one way of a batch through a place at each of its levels, and then the next way.
type steppedWay struct {
	columns   *Columns
	batch     *batch
	place     int
	atLevel   []*wayAt // by level; nil where it is not asked for
	otherSafe []*wayAt // with the safe day of another level
	base      []float64
	fates     [][]fate    // by day of a step: where fates are noted, to be used again
	spare     [][][]stage // room for stages, to be used again
}

// turnTo turns to a way at some levels.
func (w *steppedWay) turnTo(levels [][]*outcome, way int) {
	for _, r := range append(w.atLevel, w.otherSafe...) {
		if r != nil && r.stages != nil {
			w.spare = append(w.spare, r.stages)
		}
	}
	w.atLevel, w.otherSafe = w.atLevel[:0], w.otherSafe[:0]
	for _, outcomes := range levels {
		var one *wayAt
		if outcomes != nil {
			one = &wayAt{outcome: outcomes[way]}
		}
		w.atLevel = append(w.atLevel, one)
	}
}

// wayAt is the way at one level.
type wayAt struct {
	*outcome
	stays  []Days    // by year: the days in the place
	stages [][]stage // by day of a step and year: how far it has come by then
}

// steppedOutcome is an outcome with the first and last of the days on which the step leads to it.
type steppedOutcome struct {
	*outcome
	steps [2]int
	split *split // nil where there is no step
}

// release lets go of the fates, whose place is used again. They can be found again.
func (s steppedOutcome) release() {
	if s.split != nil {
		s.lives, s.later.split = nil, s.split
	}
}

// outcomes lists what comes of the way while the place is held so. Where it has left the place
// before the step, or comes after it, in every year, that is what comes of it at one level.
func (w *steppedWay) outcomes(h Hold) []steppedOutcome {
	if !h.Steps() {
		return []steppedOutcome{{outcome: w.atLevel[h.Level].outcome}}
	}
	higher, lower := w.atLevel[h.Level], w.withSafeDayOf(h.Lower, w.atLevel[h.Level].route)
	before, after := higher, lower
	if h.Up {
		before, after = lower, higher
	}
	var all []steppedOutcome
	for i, day := range w.columns.StepDays {
		o, seam := w.stepOn(i, day, before, after, higher)
		if o == nil {
			continue
		}
		if last := len(all) - 1; last >= 0 && all[last].outcome == o && all[last].steps[1] == i-1 {
			all[last].steps[1] = i
			continue
		}
		all = append(all, steppedOutcome{o, [2]int{i, i}, seam})
	}
	return all
}

// withSafeDayOf returns the way at a lower level with the day from which the place is safe for young
// leaves as it is at the higher one.
func (w *steppedWay) withSafeDayOf(level int, higher *route) *wayAt {
	known := w.atLevel[level]
	day := higher.onFrom(known.life)
	if known.route.onFrom(known.life) == day {
		return known
	}
	for _, one := range w.otherSafe {
		if one.route.first == known.route.first && one.route.on == known.route.on && one.route.onFrom(one.life) == day {
			return one
		}
	}
	way, o := *known.route, known.option
	way.safe = higher.safe
	o.route = &way
	w.otherSafe = append(w.otherSafe, &wayAt{outcome: live(known.life, o, w.base, w.columns.planner.ends)})
	return w.otherSafe[len(w.otherSafe)-1]
}

// stepOn is what comes of the way with the step on a day, and its split; nil where the colder level
// rules it out. Its fates stand in the room for that day.
func (w *steppedWay) stepOn(i, day int, before, after, higher *wayAt) (*outcome, *split) {
	w.prepare(before)
	w.prepare(after)
	early, late := 0, 0
	for year := range w.columns.planner.ends {
		switch {
		case before.stays[year].To <= day:
			early++
		case after.stays[year].From >= day:
			late++
		}
	}
	switch len(w.columns.planner.ends) {
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
	fates := w.fatesFor(i)
	for year := range fates {
		switch {
		case before.stays[year].To <= day:
			fates[year] = before.lives[year]
		case after.stays[year].From >= day:
			fates[year] = after.lives[year]
		default:
			s := before.stages[i][year]
			walker{life: higher.life, option: &after.option, year: year}.lead(&s, individual{1, 1}, nil, day, len(after.route.ground.years[year].low))
			fates[year] = s.fate
		}
	}
	return fared(higher.life, o, fates, w.base, w.columns.planner.ends), &split{before.route, after.route, day}
}

// fatesFor is where fates of a step on a day are noted.
func (w *steppedWay) fatesFor(i int) []fate {
	if w.fates == nil {
		w.fates = make([][]fate, len(w.columns.StepDays))
	}
	if w.fates[i] == nil {
		w.fates[i] = make([]fate, len(w.columns.planner.ends))
	}
	return w.fates[i]
}

// stages is room for how far a plant has come by the days of the steps.
func (w *steppedWay) stages() [][]stage {
	if last := len(w.spare) - 1; last >= 0 {
		all := w.spare[last]
		w.spare = w.spare[:last]
		for _, years := range all {
			clear(years)
		}
		return all
	}
	all := make([][]stage, len(w.columns.StepDays))
	for i := range all {
		all[i] = make([]stage, len(w.columns.planner.ends))
	}
	return all
}

// prepare finds the stays of a level, and how far the plant has come by the days of the steps.
func (w *steppedWay) prepare(r *wayAt) {
	if r.stays != nil {
		return
	}
	r.stages = w.stages()
	for year, f := range r.lives {
		stay := Days{Never, 0}.with(r.option, r.life, f, w.place, int(w.columns.planner.Given.Span.Days()))
		r.stays = append(r.stays, stay)
		one, now := walker{life: r.life, option: &r.option, year: year}, r.start
		var s stage
		for i, day := range w.columns.StepDays {
			if day <= stay.From || day >= stay.To {
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
