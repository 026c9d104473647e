package season

import "eyeup/odds"

// heatSums is what a heated place took, year by year, while it was in use.
type heatSums struct {
	asked, given, short []float64   // kWh, kWh, hours
	weekly              [][]float64 // kWh given, by week and year
	worst, coldest      float64
	freezing, belowFive int
}

// chilly is the air, °C, below which the years are counted in the answer.
const chilly = 5

func (m *Planner) weekSum(daily []float64, week, from, to int) float64 {
	a := max(m.FirstMonday+7*week, from)
	b := min(m.FirstMonday+7*week+7, to)
	if a >= b {
		return 0
	}
	return sum(daily[a:b])
}

func (s *heatSums) answer() *PlaceHeat {
	return &PlaceHeat{
		AskedKWh: odds.AmountOf(s.asked), GivenKWh: odds.AmountOf(s.given), HoursShort: odds.AmountOf(s.short),
		WorstShortK: s.worst, YearsFreezing: s.freezing, YearsBelowFive: s.belowFive, ColdestC: s.coldest,
	}
}

func sum(x []float64) float64 {
	total := 0.0
	for _, v := range x {
		total += v
	}
	return total
}
