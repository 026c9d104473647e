package season

import "slices"

// burner is what burns as long as anything wants it, for all plants together: the heating of
// a place at one level, or the lamps of one.
type burner struct {
	at    int         // the place
	lamps bool        // its lamps, not its heating
	sums  [][]float64 // kWh up to the begin of a day, by year
	price float64     // of a kWh
	ahead int         // days that it is lit before it is wanted
	years []float64   // room to sort in
}

// burners lists what burns at some levels.
func (m *maker) burners(at levels) []*burner {
	var all []*burner
	for i, p := range m.Places {
		c := m.climateAt(i, at)
		if m.isHeated(i, at) && p.Sort != Bench { // a bench costs by what stands on it
			all = append(all, burnerOf(c, i, func(y *yearDays) []float64 { return y.given }, p.Energy, warming))
		}
		if p.Lit > 0 {
			b := burnerOf(c, i, func(y *yearDays) []float64 { return y.lamps }, m.Prices.Electricity, 0)
			b.lamps = true
			all = append(all, b)
		}
	}
	return all
}

func burnerOf(c *climate, at int, daily func(*yearDays) []float64, price Price, ahead int) *burner {
	b := &burner{at: at, price: price.Times(1), ahead: ahead, years: make([]float64, len(c.years))}
	for i := range c.years {
		days := daily(&c.years[i])
		sums := make([]float64, len(days)+1)
		for d, kWh := range days {
			sums[d+1] = sums[d] + kWh
		}
		b.sums = append(b.sums, sums)
	}
	return b
}

// cost returns what it costs in the middle of the years to burn while it is wanted. More
// days never cost less.
func (b *burner) cost(wanted span) float64 {
	if wanted.from >= wanted.to {
		return 0
	}
	for i, sums := range b.sums {
		b.years[i] = max(0, sums[min(wanted.to, len(sums)-1)]-sums[max(wanted.from-b.ahead, 0)])
	}
	slices.Sort(b.years)
	return b.price * b.years[(len(b.years)-1)/2]
}

// wanted returns the days on which an outcome wants it: of heat, those on which it stands
// there in any year; of lamps, those on which it has leaves there in the middle of the years.
func (b *burner) wanted(o *outcome, end int) span {
	if b.lamps {
		return b.lit(o, end)
	}
	used := span{never, 0}
	for _, f := range o.fates {
		used = used.with(o.option, o.life, f, b.at, end)
	}
	return used
}

func (b *burner) lit(o *outcome, end int) span {
	none := span{never, 0}
	if o.route.direct || o.route.firstPlace != b.at && o.route.onPlace != b.at {
		return none
	}
	var from, to []int
	for _, f := range o.fates {
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
