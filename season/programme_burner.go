package season

import (
	"math"
	"slices"
)

// slot is what may burn in a place: its heating or its lamps.
type slot struct {
	at    int  // the place
	lamps bool // its lamps, not its heating
}

// slots lists what may burn at all: see burners.
func (m *maker) slotsOfPlaces() []slot {
	var all []slot
	for i, p := range m.Places {
		if m.isOpen(i) || p.Sort == Room && p.Costs { // a bench costs by what stands on it
			all = append(all, slot{i, false})
		}
		if p.Lit > 0 {
			all = append(all, slot{i, true})
		}
	}
	return all
}

// burner burns as long as anything wants it, for all plants together.
type burner struct {
	slot
	hold   hold
	sums   [][]float64        // kWh up to the begin of a day, by year, at the higher level
	lower  [][]float64        // and at the lower one; nil where there is no step
	price  float64            // of a kWh
	ahead  int                // days that it is lit before it is wanted
	years  []float64          // room to sort in
	costs  map[uint64]float64 // what is known of cost, see burning
	leasts map[[4]int]float64 // and of least
}

// burners lists what burns, slot by slot, while the places are held in some ways.
func (p *prover) burners(at holds) []*burner {
	var all []*burner
	for _, of := range p.slots {
		all = append(all, p.burner(of, at[of.at]))
	}
	return all
}

// burner returns what burns in a slot while its place is held in a way, reckoning it once.
func (p *prover) burner(of slot, h hold) *burner {
	for _, known := range p.burning {
		if known.slot == of && known.hold == h {
			return known
		}
	}
	b := &burner{slot: of, hold: h, price: p.Places[of.at].Energy.Times(1), ahead: warming, years: make([]float64, len(p.Weather)), costs: map[uint64]float64{}, leasts: map[[4]int]float64{}}
	daily := func(y *yearDays) []float64 { return y.given }
	if of.lamps {
		b.price, b.ahead = p.Prices.Electricity.Times(1), 0
		daily = func(y *yearDays) []float64 { return y.lamps }
	}
	b.sums = sumsOf(p.climate(of.at, p.setting(of.at, h.level)), daily)
	if h.steps() {
		b.lower = sumsOf(p.climate(of.at, p.setting(of.at, h.lower)), daily)
	}
	p.burning = append(p.burning, b)
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

// cost returns what it costs in the middle of the years to burn while it is wanted, with the
// step of level, if there is one, on a day. More days never cost less.
func (b *burner) cost(wanted span, turn int) float64 {
	if wanted.from >= wanted.to {
		return 0
	}
	from, to := max(wanted.from-b.ahead, 0), min(wanted.to, len(b.sums[0])-1)
	key := burning(from, to, turn)
	if cost, known := b.costs[key]; known {
		return cost
	}
	first, second := b.sums, b.lower
	if b.hold.up {
		first, second = second, first
	}
	for i, sums := range b.sums {
		if !b.hold.steps() {
			b.years[i] = max(0, sums[to]-sums[from])
			continue
		}
		day := min(max(turn, from), to)
		b.years[i] = max(0, first[i][day]-first[i][from]) + max(0, second[i][to]-second[i][day])
	}
	slices.Sort(b.years)
	b.costs[key] = b.price * b.years[(len(b.years)-1)/2]
	return b.costs[key]
}

// burning tells apart when a burner is lit, goes out and steps, in a word that is quickly looked up.
func burning(from, to, turn int) uint64 {
	return uint64(uint16(from))<<48 | uint64(uint16(to))<<32 | uint64(uint32(turn))
}

// least and most return what it costs at the best and at the worst of some days of its step.
func (b *burner) least(wanted span, turns []int) float64 {
	if len(turns) == 1 {
		return b.cost(wanted, turns[0])
	}
	key := [4]int{wanted.from, wanted.to, turns[0], turns[len(turns)-1]}
	if cost, known := b.leasts[key]; known {
		return cost
	}
	cost := math.Inf(1)
	for _, turn := range turns {
		cost = min(cost, b.cost(wanted, turn))
	}
	b.leasts[key] = cost
	return cost
}

func (b *burner) most(wanted span, turns []int) float64 {
	cost := 0.0
	for _, turn := range turns {
		cost = max(cost, b.cost(wanted, turn))
	}
	return cost
}

// wanted returns the days on which an outcome wants it: of heat, those on which it stands
// there in any year; of lamps, those on which it has leaves there in the middle of the years.
func (b slot) wanted(o *outcome, end int) span {
	if b.lamps {
		return b.lit(o, end)
	}
	used := span{never, 0}
	for _, f := range o.fates() {
		used = used.with(o.option, o.life, f, b.at, end)
	}
	return used
}

func (b slot) lit(o *outcome, end int) span {
	none := span{never, 0}
	if o.route.direct || o.route.firstPlace != b.at && o.route.onPlace != b.at {
		return none
	}
	var from, to []int
	for _, f := range o.fates() {
		leaves := min(f.framed, f.out, end)
		if o.route.onPlace != b.at {
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
	return span{from[half], to[half]}
}
