package season

import (
	"math"
	"slices"
)

// heaterKey is what may be switched on in a place: its heating or its lamps.
type HeaterKey struct {
	Place int  // the place
	Lamps bool // its lamps, not its heating
}

// heaterKeys lists what may be switched on at all: see heaters.
func (m *Planner) heaterKeys() []HeaterKey {
	var all []HeaterKey
	for i, p := range m.Given.Places {
		if m.IsOpen(i) || p.Sort == Room && p.Costs { // a bench costs by what stands on it
			all = append(all, HeaterKey{i, false})
		}
		if p.Lit > 0 {
			all = append(all, HeaterKey{i, true})
		}
	}
	return all
}

// heater is on as long as anything wants it, for all plants together.
type Heater struct {
	HeaterKey
	Hold   Hold
	upper  [][]float64        // kWh up to the begin of a day, by year, at the higher level
	lower  [][]float64        // and at the lower one; nil where there is no step
	price  float64            // of a kWh
	Ahead  int                // days that it is on before it is wanted
	years  []float64          // room to sort in
	costs  map[uint64]float64 // what is known of cost, see burning
	leasts map[[4]int]float64 // and of least
}

// heater returns a heater while its place is held in a way.
func (c *Columns) Heater(of HeaterKey, h Hold) *Heater {
	g := c.planner.Given
	b := &Heater{HeaterKey: of, Hold: h, price: g.Places[of.Place].Energy.Times(1), Ahead: Warming, years: make([]float64, len(g.Weather)), costs: map[uint64]float64{}, leasts: map[[4]int]float64{}}
	daily := func(y *yearDays) []float64 { return y.given }
	if of.Lamps {
		b.price, b.Ahead = g.Prices.Electricity.Times(1), 0
		daily = func(y *yearDays) []float64 { return y.lamps }
	}
	b.upper = sumsOf(c.planner.climate(of.Place, c.planner.setting(of.Place, h.Level)), daily)
	if h.Steps() {
		b.lower = sumsOf(c.planner.climate(of.Place, c.planner.setting(of.Place, h.Lower)), daily)
	}
	return b
}

func sumsOf(c *climate, daily func(*yearDays) []float64) [][]float64 {
	var all [][]float64
	for i := range c.years {
		days := daily(&c.years[i])
		sums := make([]float64, len(days)+1)
		for d, kWh := range days {
			sums[d+1] = sums[d] + kWh
		}
		all = append(all, sums)
	}
	return all
}

// cost returns what it costs in the middle of the years to run while it is wanted, with the
// step of level, if there is one, on a day. More days never cost less.
func (b *Heater) Cost(wanted Days, step int) float64 {
	if wanted.From >= wanted.To {
		return 0
	}
	from, to := max(wanted.From-b.Ahead, 0), min(wanted.To, len(b.upper[0])-1)
	key := costKey(from, to, step)
	if cost, known := b.costs[key]; known {
		return cost
	}
	first, second := b.upper, b.lower
	if b.Hold.Up {
		first, second = second, first
	}
	for i, sums := range b.upper {
		if !b.Hold.Steps() {
			b.years[i] = max(0, sums[to]-sums[from])
			continue
		}
		day := min(max(step, from), to)
		b.years[i] = max(0, first[i][day]-first[i][from]) + max(0, second[i][to]-second[i][day])
	}
	slices.Sort(b.years)
	b.costs[key] = b.price * b.years[(len(b.years)-1)/2]
	return b.costs[key]
}

// costKey distinguishes when a heater goes on, goes off and steps, in a word that is quickly looked up.
func costKey(from, to, step int) uint64 {
	return uint64(uint16(from))<<48 | uint64(uint16(to))<<32 | uint64(uint32(step))
}

// least and most return what it costs at the best and at the worst of some days of its step.
func (b *Heater) LeastCost(wanted Days, stepDays []int) float64 {
	if len(stepDays) == 1 {
		return b.Cost(wanted, stepDays[0])
	}
	key := [4]int{wanted.From, wanted.To, stepDays[0], stepDays[len(stepDays)-1]}
	if cost, known := b.leasts[key]; known {
		return cost
	}
	cost := math.Inf(1)
	for _, step := range stepDays {
		cost = min(cost, b.Cost(wanted, step))
	}
	b.leasts[key] = cost
	return cost
}

func (b *Heater) MostCost(wanted Days, stepDays []int) float64 {
	cost := 0.0
	for _, step := range stepDays {
		cost = max(cost, b.Cost(wanted, step))
	}
	return cost
}

// wanted returns the days on which an outcome wants it: of heat, those on which it stands
// there in any year; of lamps, those on which it has leaves there in the middle of the years.
func (b HeaterKey) wanted(o *outcome, end int) Days {
	if b.Lamps {
		return b.litDays(o, end)
	}
	used := Days{Never, 0}
	for _, f := range o.fates() {
		used = used.with(o.option, o.life, f, b.Place, end)
	}
	return used
}

func (b HeaterKey) litDays(o *outcome, end int) Days {
	none := Days{Never, 0}
	if o.route.direct || o.route.firstPlace != b.Place && o.route.onPlace != b.Place {
		return none
	}
	var from, to []int
	for _, f := range o.fates() {
		leaves := min(f.framed, f.out, end)
		if o.route.onPlace != b.Place {
			leaves = min(f.handOn, leaves)
		}
		from, to = append(from, f.up), append(to, leaves)
	}
	slices.Sort(from)
	slices.Sort(to)
	half := (len(from) - 1) / 2
	if from[half] >= to[half] {
		return none
	}
	return Days{from[half], to[half]}
}
