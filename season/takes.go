package season

import (
	"maps"
	"math"
	"slices"
	"sync"

	"eyeup/supply"
)

// takesOf returns the room under cover that a plant takes, in the order of the rows: what it
// takes at most in the share of years that is the basis.
func (m *Planner) takesOf(o *outcome, basis float64) []Take {
	if o.route.direct {
		return nil
	}
	return m.recall.takes.get(weighed{o, basis}, func() []Take { return m.takesIn(o, basis) })
}

func (m *Planner) takesIn(o *outcome, basis float64) []Take {
	rows := spareRows.Get().(*rowsByYear)
	defer spareRows.Put(rows)
	rows.clear(m.HoursRow(0), len(o.fates()))
	var room [16]int
	for year, f := range o.fates() {
		changes := o.changes(f, int(m.Given.Span.Days()), room[:0])
		for i, day := range changes[:len(changes)-1] {
			place, area := o.stands(f, day)
			if place < 0 || place == o.route.groundPlace {
				break
			}
			lit := m.Given.Places[place].Lit > 0 && f.up != Never && day > f.up+o.dark(place)
			for week := m.WeekOn(day); week <= m.WeekOn(changes[i+1]-1); week++ {
				rows.note(m.BenchRow(place, week), year, area)
				if lit {
					rows.note(m.BenchRow(m.Lamps(place), week), year, area)
				}
			}
		}
	}
	return rows.takes(basis)
}

// rowsByYear is what a plant takes at most of each row in each year.
type rowsByYear struct {
	ends  []int32 // by row: where its years end among the areas; 0: it takes none
	areas []float64
	years int
}

// spareRows are rows by year to be used again.
var spareRows = sync.Pool{New: func() any { return &rowsByYear{} }}

func (r *rowsByYear) clear(rows, years int) {
	r.ends, r.areas, r.years = append(r.ends[:0], make([]int32, rows)...), r.areas[:0], years
}

func (r *rowsByYear) note(row, year int, area float64) {
	if r.ends[row] == 0 {
		r.areas = append(r.areas, make([]float64, r.years)...)
		r.ends[row] = int32(len(r.areas))
	}
	at := int(r.ends[row]) - r.years + year
	r.areas[at] = max(r.areas[at], area)
}

// takes is what it takes at most in a share of the years, in the order of the rows. It sorts
// the areas.
func (r *rowsByYear) takes(basis float64) []Take {
	all := make([]Take, 0, len(r.areas)/max(r.years, 1))
	at := max(0, int(math.Ceil(basis*float64(r.years)))-1)
	for row, end := range r.ends {
		if end == 0 {
			continue
		}
		areas := r.areas[int(end)-r.years : end]
		slices.Sort(areas)
		if areas[at] > 0 {
			all = append(all, Take{row, areas[at]})
		}
	}
	return all
}

// moneyFor returns the mix and the containers that one plant of an outcome takes, as shares
// of full trays.
func (m *Planner) moneyFor(b *batch, o *outcome) float64 {
	if !(&part{Portion: Portion{batch: b, outcome: o}, life: b.life}).isPotted() {
		return 0
	}
	passed := b.life.containers(o.route, o.route.isPottedUp(o.fates()))
	plants := 1
	for _, id := range passed {
		if c, err := supply.ContainerNamed(id); err == nil {
			plants *= max(c.Cells, 1)
		}
	}
	litres := 0.0
	pots := fill(passed, plants, b.body(), func(n supply.Need, err error) {
		if err == nil {
			litres += n.Litres.Middle
		}
	})
	money := m.Given.Prices.MixLitre.Times(litres)
	for _, id := range slices.Sorted(maps.Keys(pots)) {
		money += m.Given.Prices.Pots[id].Times(float64(pots[id]))
	}
	return money / float64(plants)
}

// hoursFor returns the hours of work that one plant of an outcome takes, by week.
func (m *Planner) hoursFor(b *batch, o *outcome) []Take {
	one := Portion{batch: b, outcome: o, Count: 1}
	minutes := m.minutesOf(&part{Portion: one, life: b.life, fates: o.fates()})
	var all []Take
	for week, min := range minutes {
		if min > 0 {
			all = append(all, Take{m.HoursRow(week), min / 60})
		}
	}
	return all
}
