package season

import (
	"math"
	"slices"

	"eyeup/odds"
)

// placePlans says how each place fares over the weeks.
func (r *realized) placePlans() {
	fill := r.fill()
	r.heats = make([]*heatSums, len(r.planner.Given.Places))
	for i, p := range r.planner.Given.Places {
		plan := PlacePlan{Place: p.Name, Sort: string(p.Sort)}
		if r.isSet(i) {
			r.heats[i] = r.heat(i)
			plan.Heat = r.heats[i].answer()
			r.setOf(&plan, i)
		}
		for w := range r.planner.Weeks {
			week := PlaceWeek{Week: r.planner.Date(r.planner.FirstMonday + 7*w), UsedM2: Hundredth(fill[i][w]), RoomM2: Hundredth(float64(p.Room))}
			if r.heats[i] != nil && p.Energy.Known {
				cost := odds.AmountOf(r.heats[i].weekly[w]).Times(p.Energy.Amount)
				week.Cost = &odds.Amount{Low: Hundredth(cost.Low), Middle: Hundredth(cost.Middle), High: Hundredth(cost.High)}
			}
			plan.Weeks = append(plan.Weeks, week)
		}
		r.plan.Places = append(r.plan.Places, plan)
		r.overfull(i, fill[i])
	}
}

// setOf says how a place is held while it is in use. A room has no thermostat to set.
func (r *realized) setOf(plan *PlacePlan, at int) {
	plan.HeatedFrom, plan.HeatedTo = r.planner.Date(r.used[at].From-Warming), r.planner.Date(r.used[at].To)
	if r.planner.Given.Places[at].Sort == Bench {
		plan.Level = r.planner.Given.Places[at].Level[1]
	}
	if r.planner.Given.Places[at].Sort != Glass {
		return
	}
	steps := r.settings[at].Steps
	plan.Setting, plan.Level = r.settings[at].String(), steps[0].Level
	if len(steps) == 3 {
		plan.Then = &LevelStep{steps[1].From, steps[1].Level}
	}
}

// isSet reports whether a place is heated in this plan for the season's sake.
func (r *realized) isSet(at int) bool {
	switch r.planner.Given.Places[at].Sort {
	case Glass:
		return len(r.settings[at].Steps) > 0
	case Bench:
		return r.used[at].From != Never
	case Room:
		return r.planner.Given.Places[at].Costs && r.used[at].From != Never
	}
	return false
}

// fill adds up the room that all parts take, by place and week, on the plan's basis.
func (r *realized) fill() [][]float64 {
	fill := make([][]float64, len(r.planner.Given.Places))
	for i := range fill {
		fill[i] = make([]float64, r.planner.Weeks)
		for w := range fill[i] {
			fill[i][w] = r.planner.grown(i, w)
		}
	}
	for _, p := range r.parts {
		for bench, need := range p.room(float64(r.planner.Asked.Fits), r.planner.Weeks, r.planner) {
			if bench >= len(r.planner.Given.Places) {
				continue
			}
			for w, area := range need {
				if r.planner.Given.Places[bench].Sort != Ground || r.planner.FirstMonday+7*w <= slices.Max(r.planner.ends) {
					fill[bench][w] += float64(p.Count) * area * p.bedShare(r.planner.Given.Places[bench].Sort)
				}
			}
		}
	}
	return fill
}

// bedShare is the share of a batch that takes room in a place of a sort: in the patch the
// reserve takes none.
func (b *batch) bedShare(s Sort) float64 {
	if s == Ground {
		return b.bed
	}
	return 1
}

// overfull notes the first week in which a place is short of room: for the patch, which plans
// do not hold to, it is an answer and not an error.
func (r *realized) overfull(at int, used []float64) {
	room := float64(r.planner.Given.Places[at].Room)
	if room <= 0 {
		return
	}
	peak := slices.Max(used)
	if peak <= room+0.005 {
		return
	}
	first := slices.IndexFunc(used, func(u float64) bool { return u > room+0.005 })
	cure := "plant fewer, or closer"
	if r.planner.Given.Places[at].Sort != Ground {
		cure = "start some later, or by another way"
	}
	r.plan.Shortfalls = append(r.plan.Shortfalls, Shortfall{
		Of: "room", Place: r.planner.Given.Places[at].Name, Wanted: Hundredth(peak), There: room, Short: Hundredth(peak - room),
		Week: r.planner.Date(r.planner.FirstMonday + 7*first), Cure: cure,
	})
}

// heat sums up a heated place while it is in use.
func (r *realized) heat(at int) *heatSums {
	c, used := r.planner.climate(at, r.settings[at]), r.used[at]
	s := &heatSums{coldest: math.Inf(1), weekly: make([][]float64, r.planner.Weeks)}
	for _, y := range c.years {
		to := min(used.To, len(y.low))
		on := max(used.From-Warming, 0)
		s.asked = append(s.asked, sum(y.asked[on:to]))
		s.given = append(s.given, sum(y.given[on:to]))
		s.short = append(s.short, sum(y.short[used.From:to]))
		s.worst = max(s.worst, slices.Max(y.worst[used.From:to]))
		low := slices.Min(y.low[used.From:to])
		s.coldest = min(s.coldest, low)
		if low < 0 {
			s.freezing++
		}
		if low < chilly {
			s.belowFive++
		}
		for w := range s.weekly {
			s.weekly[w] = append(s.weekly[w], r.planner.weekSum(y.given, w, on, to))
		}
	}
	if r.planner.Given.Places[at].Sort == Bench {
		r.benchHeat(at, s)
	}
	return s
}
