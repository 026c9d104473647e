package season

// realize turns an assignment into a plan: heated places are heated only while they are
// in use, every lot is walked with its own spread, and all is added up.
func (m *Planner) Realize(name, says string, at Levels, a Assignment) *Plan {
	r := m.begin(name, says, at, a)
	r.use()
	r.set(at)
	r.walk()
	return r.told()
}

// told describes a plan whose lots were walked.
func (r *realized) told() *Plan {
	r.batchPlans()
	r.plan.Decisions = r.decisions()
	r.placePlans()
	r.totals()
	return r.plan
}

// walk leads the middle plant and the lot of every part through the places as set.
func (r *realized) walk() {
	for _, p := range r.parts {
		o := p.option
		o.route = r.as(p.route)
		base := r.planner.baseline(p.batch)
		as := r.planner.liveOnce(p.life, o, base)
		own := *p.outcome
		own.lives, own.later = as.fates(), as.later
		p.outcome, p.fates, p.lot = &own, own.lives, as.individually()
		for year, f := range p.fates {
			p.gains = append(p.gains, weeksOfFlower(f, r.planner.ends[year])-weeksOfFlower(base.fates()[year], r.planner.ends[year]))
		}
	}
}

// as returns a route with its places at the settings of the plan.
func (r *realized) as(way *route) *route {
	if way.direct {
		return way
	}
	set := *way
	set.first = r.planner.climate(way.firstPlace, r.settings[way.firstPlace])
	set.on = r.planner.climate(way.onPlace, r.settings[way.onPlace])
	return &set
}
