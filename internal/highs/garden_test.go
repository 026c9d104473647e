package highs

import (
	"math"
	"math/rand/v2"

	"eyeup/solve"
)

// garden is an invented season in the shape that the season's programmes have: batches of
// whole units, each of which starts in some week by one of two routes through three places,
// benches that hold so much a week, hours of one's own and hours hired, and a worth that
// falls with every week of waiting. Batches want more bench than there is.
func garden(seed uint64, batches, weeks int) *solve.Programme {
	r := rand.New(rand.NewPCG(seed, 40))
	p := &solve.Programme{}
	const places, stay = 3, 9
	room := make([][]solve.Term, places*(weeks+stay))
	hours := make([][]solve.Term, weeks)
	for range batches {
		units := float64(2 + r.IntN(40))
		area, work, worth, early := 0.05+0.2*r.Float64(), 0.1+0.3*r.Float64(), 4+8*r.Float64(), r.IntN(8)
		var choice []solve.Term
		for week := range weeks {
			for route := range 2 {
				late := math.Max(0, float64(early-week)) * 0.7
				cost := 1.5 + 0.8*float64(route) + late - worth*math.Exp(-0.06*float64(week)) + 0.1*r.Float64()
				y := p.Column(solve.Column{Cost: cost, High: units, Whole: true})
				choice = append(choice, solve.Term{Column: y, Factor: 1})
				hours[week] = append(hours[week], solve.Term{Column: y, Factor: work * (1 + 0.4*float64(route))})
				for t := range stay {
					place := min(t/3+route, places-1)
					at := place*(weeks+stay) + week + t
					room[at] = append(room[at], solve.Term{Column: y, Factor: area * (1 + 0.15*float64(t))})
				}
			}
		}
		n := p.Column(solve.Column{Cost: 0.5, High: units, Whole: true})
		p.Row(solve.Row{Name: "units", Low: units, High: units, Terms: append(choice, solve.Term{Column: n, Factor: 1})})
	}
	size := float64(batches) / 40
	for at, terms := range room {
		if terms != nil {
			p.Row(solve.Row{Name: "room", Low: math.Inf(-1), High: size * []float64{16, 22, 30}[at/(weeks+stay)], Terms: terms})
		}
	}
	for _, terms := range hours {
		e := p.Column(solve.Column{Name: "hired", Cost: 9, High: math.Inf(1)})
		p.Row(solve.Row{Name: "hours", Low: math.Inf(-1), High: size * 20, Terms: append(terms, solve.Term{Column: e, Factor: -1})})
	}
	return p
}
