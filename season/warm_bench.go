package season

import "eyeup/odds"

// A warm bench warms what stands on it: the mats under empty trays are off, so that its
// electricity goes by the share of it that is taken.

// benchKWh returns the electricity that a plant of an outcome takes on the warm bench it
// begins on, in one year; 0 where it begins on none.
func (m *Planner) benchKWh(o *outcome, year int) float64 {
	at := o.route.firstPlace
	if o.route.around < 0 {
		return 0
	}
	kWh, bench := 0.0, o.route.first
	for day := o.start; day < len(bench.years[year].given); day++ {
		place, area := o.stands(o.fates()[year], day)
		if place != at {
			break
		}
		kWh += bench.on(year, day).given[day] * area / float64(m.Given.Places[at].Room)
	}
	return kWh
}

// benchMoney returns what that costs in the middle of the years.
func (m *Planner) benchMoney(o *outcome) float64 {
	if o.route.around < 0 {
		return 0
	}
	years := make([]float64, len(o.fates()))
	for year := range years {
		years[year] = m.benchKWh(o, year)
	}
	return m.Given.Places[o.route.firstPlace].Energy.Times(odds.Sorted(years).At(0.5))
}

// shareTaken returns the share of a warm bench that all parts take on a day of a year.
func (r *realized) shareTaken(at, year, day int) float64 {
	taken := 0.0
	for _, p := range r.parts {
		if p.route.around < 0 || p.route.firstPlace != at || day >= p.fates[year].handOn {
			continue
		}
		if place, area := p.stands(p.fates[year], day); place == at {
			taken += float64(p.Count) * area
		}
	}
	return taken / float64(r.planner.Given.Places[at].Room)
}

// benchHeat sums up a warm bench, by the share of it that is taken.
func (r *realized) benchHeat(at int, s *heatSums) {
	for year, y := range r.planner.climate(at, r.settings[at]).years {
		weekly := make([]float64, r.planner.Weeks)
		total := 0.0
		for day := r.used[at].From; day < min(r.used[at].To, len(y.given)); day++ {
			kWh := y.given[day] * r.shareTaken(at, year, day)
			total += kWh
			if week := (day - r.planner.FirstMonday) / 7; day >= r.planner.FirstMonday && week < r.planner.Weeks {
				weekly[week] += kWh
			}
		}
		s.asked[year], s.given[year] = total, total
		for week := range weekly {
			s.weekly[week][year] = weekly[week]
		}
	}
}
