package season

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eyeup/odds"
	"eyeup/stock"
)

// totals adds up what a plan costs, what it wants and what it gains.
func (r *realized) totals() {
	r.flowers()
	r.fitsYears()
	r.needs()
	r.work()
	r.cost()
	r.wanted()
	r.cutting()
}

// flowers sums up first flower and gain over the dahlias, or over all where there are none.
func (r *realized) flowers() {
	dahlias := slices.DeleteFunc(slices.Clone(r.parts), func(p *part) bool { return p.Variety.Kind != "dahlia" })
	if len(dahlias) == 0 {
		dahlias = r.parts
	}
	var first []int
	for _, p := range dahlias {
		first = append(first, slices.Repeat(p.pickLot(func(f fate) int { return f.flower }), p.Count)...)
	}
	r.plan.FirstFlower = r.planner.when(first)
	r.plan.GainWeeks, r.plan.GainAll = r.gained(dahlias), r.gained(r.parts)
}

// gained returns the weeks of flower gained a plant of some parts, over the years.
func (r *realized) gained(parts []*part) odds.Amount {
	gains := make([]float64, len(r.planner.Given.Weather))
	plants := 0
	for _, p := range parts {
		for year, g := range p.gains {
			gains[year] += float64(p.Count) * g
		}
		plants += p.Count
	}
	for year := range gains {
		gains[year] /= float64(max(plants, 1))
	}
	return odds.AmountOf(gains)
}

// fitsYears counts the years in which every bench suffices in every week, and names the worst of
// the others.
func (r *realized) fitsYears() {
	r.plan.Asked = r.planner.AskedYears()
	for year := range r.planner.Given.Weather {
		worst := r.worstIn(year)
		switch {
		case worst == nil:
			r.plan.FitsYears++
		case r.plan.Worst == nil || worst.ShortM2 > r.plan.Worst.ShortM2:
			r.plan.Worst = worst
		}
	}
	if worst := r.plan.Worst; worst != nil {
		worst.ShortM2 = math.Ceil(worst.ShortM2*100) / 100
	}
}

// worstIn returns where and when a bench is shortest of room in a year; nil where none does.
func (r *realized) worstIn(year int) (worst *Crowded) {
	used := make([]float64, 2*len(r.planner.Given.Places))
	var most [8]taken
	for w := range r.planner.Weeks {
		clear(used)
		for _, p := range r.parts {
			for _, t := range p.takes(p.fates[year], w, r.planner, most[:0]) {
				used[t.bench] += float64(p.Count) * t.area
			}
		}
		for bench, area := range used {
			isGround := bench < len(r.planner.Given.Places) && r.planner.Given.Places[bench].Sort == Ground
			short := area + r.planner.grown(bench, w) - r.planner.roomOf(bench)
			if !isGround && short > 1e-6 && (worst == nil || short > worst.ShortM2) {
				worst = &Crowded{r.planner.Given.Years[year], r.planner.BenchName(bench), r.planner.Date(r.planner.FirstMonday + 7*w), short}
			}
		}
	}
	return worst
}

// work spreads the minutes of every step over the weeks in which, by the middle dates,
// it falls.
func (r *realized) work() {
	minutes := make([]float64, r.planner.Weeks)
	for _, p := range r.parts {
		for w, min := range r.planner.minutesOf(p) {
			minutes[w] += min
		}
	}
	for w, min := range minutes {
		if min == 0 {
			continue
		}
		week := WorkWeek{Week: r.planner.Date(r.planner.FirstMonday + 7*w), Hours: Hundredth(min / 60), Own: r.planner.Given.HoursPerWeek}
		r.plan.Work = append(r.plan.Work, week)
		r.plan.Cost.WorkHours += week.Hours
		if week.Hours > r.planner.Given.HoursPerWeek {
			r.plan.Shortfalls = append(r.plan.Shortfalls, Shortfall{
				Of: "hands", Wanted: week.Hours, There: r.planner.Given.HoursPerWeek, Short: Hundredth(week.Hours - r.planner.Given.HoursPerWeek), Week: week.Week,
				Cure: "ask for help, or begin some the week before",
			})
			r.plan.Cost.Work += r.planner.Given.Prices.Hand.Times(week.Hours - r.planner.Given.HoursPerWeek)
		}
	}
}

// minutesOf returns the minutes of work of a part, by week.
func (m *Planner) minutesOf(p *part) []float64 {
	minutes := make([]float64, m.Weeks)
	add := func(step string, day, count float64) {
		each, known := p.life.Work(step)
		week := (int(day) - m.FirstMonday) / 7
		if known && !math.IsInf(day, 0) && week >= 0 && week < m.Weeks {
			minutes[week] += each * count
		}
	}
	count, out := float64(p.Count), middle(p.pick(func(f fate) int { return f.out }))
	add("plant", out, count)
	if p.route.direct {
		return minutes
	}
	switch {
	case p.how == Divided: // its clumps are woken in trays, cut, and the pieces potted
		clumps, cut := float64(p.parents)*count/float64(p.batch.want), middle(p.pick(func(f fate) int { return f.eyed }))
		add("wake", float64(p.start), clumps)
		add("divide", cut, clumps)
		add("start", cut, count)
	case p.life.inTray:
		add("wake", float64(p.start), count)
		add("start", middle(p.pick(func(f fate) int { return f.up })), count)
	default:
		add("start", float64(p.start), count)
	}
	if p.route.framePlace < 0 { // carried out and in
		add("harden", out-float64(p.life.harden), count)
	} else {
		add("hand_on", middle(p.pick(func(f fate) int { return f.framed })), count)
	}
	if p.route.isPottedUp(p.fates) {
		add("pot_up", middle(p.pick(func(f fate) int { return f.potted })), count)
	}
	if p.life.prick > 0 {
		add("prick", middle(p.pick(func(f fate) int { return f.up }))+float64(p.life.prick), count)
	}
	if p.route.firstPlace != p.route.onPlace {
		add("hand_on", middle(p.pick(func(f fate) int { return f.handOn })), count)
	}
	return minutes
}

// cost adds up the money. Every amount is rounded to the minor unit before it is added,
// so that the total can be added again from its parts.
func (r *realized) cost() {
	c := &r.plan.Cost
	c.Currency = r.planner.Given.Prices.Currency
	var light float64
	for i, p := range r.planner.Given.Places {
		if h := r.heats[i]; h != nil {
			r.unpriced(p.Energy, "heat of "+p.Name)
			spread := odds.AmountOf(h.given).Times(p.Energy.Amount)
			c.HeatSpread = odds.Amount{Low: c.HeatSpread.Low + spread.Low, Middle: c.HeatSpread.Middle + spread.Middle, High: c.HeatSpread.High + spread.High}
		}
		light += r.lamplight(i)
	}
	c.HeatSpread = odds.Amount{Low: Hundredth(c.HeatSpread.Low), Middle: Hundredth(c.HeatSpread.Middle), High: Hundredth(c.HeatSpread.High)}
	c.Heat, c.Work = c.HeatSpread.Middle, Hundredth(c.Work)
	c.Light = Hundredth(r.planner.Given.Prices.Electricity.Times(light))
	if light > 0 {
		r.unpriced(r.planner.Given.Prices.Electricity, "electricity")
	}
	for _, n := range r.plan.ToGet {
		c.Mix += n.Cost
	}
	c.Mix = Hundredth(c.Mix)
	c.Total = Hundredth(c.Heat + c.Light + c.Mix + c.Work)
	c.WorkHours = Hundredth(c.WorkHours)
	pots := 0
	for _, p := range r.parts {
		if p.isPotted() {
			pots += p.Count
		}
	}
	if pots > 0 {
		c.PerPot = Hundredth(c.Total / float64(pots))
	}
}

// lamplight returns the electricity of a place's lamps on the days when something under
// them is up, by the middle of the years, in kWh.
func (r *realized) lamplight(at int) float64 {
	if r.planner.Given.Places[at].Lit <= 0 {
		return 0
	}
	years := make([]float64, len(r.planner.Given.Weather))
	c := r.planner.climate(at, r.settings[at])
	for year := range years {
		from, to := Never, 0
		for _, p := range r.parts {
			f := p.fates[year]
			if p.route.direct {
				continue
			}
			leaves := min(f.framed, f.out, int(r.planner.Given.Span.Days()))
			if p.route.firstPlace == at && p.route.onPlace != at {
				leaves = min(f.handOn, leaves)
			}
			if (p.route.firstPlace == at || p.route.onPlace == at) && f.up < leaves {
				from, to = min(from, f.up), max(to, leaves)
			}
		}
		if from < to {
			years[year] = sum(c.years[year].lamps[from:to])
		}
	}
	return odds.Sorted(years).At(0.5)
}

// wanted notes where fewer plants are to be counted on than are wanted.
func (r *realized) wanted() {
	for _, h := range r.ofLots() {
		want := h.Plant + h.Reserve
		if want == 0 {
			continue
		}
		sure, wayless := 0.0, false
		for _, b := range r.planner.batches {
			if b.Code == h.Code && (b.Code != "" || b.Line == h.Line) && b.Variety.Name == h.Variety.Name && b.Variety.Kind == h.Variety.Kind {
				sure += float64(b.want-r.left[b]) * (1 - b.life.never)
				wayless = wayless || r.left[b] > 0
			}
		}
		short := want - int(math.Floor(sure+0.5))
		if short <= 0 {
			continue
		}
		cure := fmt.Sprintf("get %d more", short)
		if wayless {
			cure = "no place here is warm enough for it in time: keep it under glass, or leave it out"
		}
		r.plan.Shortfalls = append(r.plan.Shortfalls, Shortfall{
			Of: "stock", Variety: h.Variety.Name, Wanted: float64(want), There: float64(want - short), Short: float64(short), Week: r.planner.Date(r.planner.monday(r.planner.newYear)),
			Cure: cure,
		})
	}
	slices.SortStableFunc(r.plan.Shortfalls, func(a, b Shortfall) int {
		return cmp.Or(cmp.Compare(a.Week.String(), b.Week.String()), cmp.Compare(a.Of, b.Of), cmp.Compare(a.Place, b.Place), cmp.Compare(a.Variety, b.Variety))
	})
}

// ofLots is the stock that the season covers, with what is wanted of a lot that waits in several
// places added up.
func (r *realized) ofLots() []stock.Holding {
	at := map[string]int{}
	var all []stock.Holding
	for _, h := range r.planner.Given.Stock {
		if r.isLeft(h) {
			continue
		}
		i, known := at[h.Code]
		if h.Code == "" || !known {
			at[h.Code] = len(all)
			all = append(all, h)
			continue
		}
		all[i].Plant, all[i].Reserve = all[i].Plant+h.Plant, all[i].Reserve+h.Reserve
	}
	return all
}

func (r *realized) isLeft(h stock.Holding) bool {
	return slices.ContainsFunc(r.planner.left, func(n NotCovered) bool {
		n.Why = ""
		return n == notCovered(h, "")
	})
}
