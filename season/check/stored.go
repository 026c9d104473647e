package check

import (
	"math"

	"eyeup/culture"
	"eyeup/keeping"
	"eyeup/odds"
	"eyeup/place"
	"eyeup/season"
	"eyeup/stock"
)

// putAway is the day of the season on which stock is put away for the winter.
var putAway = int(culture.Usual("store.packed"))

// winter returns the air of a store, month by month, from when stock is put away up to a day of the
// season, that day among them; nil where it is not known, or the stock does not wait.
func (c *replay) winter(store, to int) []keeping.Spell {
	if store < 0 || to <= putAway || to == never {
		return nil
	}
	air, is := c.brief.Given.Places[store].Model.(place.Steady)
	if !is {
		return nil
	}
	celsius, humidity := air.Months()
	for _, h := range humidity {
		if math.IsNaN(float64(h)) {
			return nil
		}
	}
	days := map[int]float64{}
	for day := putAway; day <= to; day++ {
		days[int(c.calendar.date(day).Month())-1]++
	}
	var all []keeping.Spell
	for month := range 12 {
		if days[month] > 0 {
			all = append(all, keeping.Spell{Days: days[month], Temperature: celsius[month], Humidity: humidity[month]})
		}
	}
	return all
}

// comesThrough returns the share of so many of a form that survive the store up to a day; not known
// where its air or the ways of the stock are not.
func (c *replay) comesThrough(h stock.Holding, form string, kind *culture.Kind, to int) odds.Amount {
	winter := c.winter(c.placeNamed(h.Place), to)
	if winter == nil {
		return odds.Exactly(math.NaN())
	}
	share, err := keeping.Survival(keeping.Stock{Kind: h.Variety.Kind, Form: form, Pack: h.Pack, Culture: kind}, winter)
	if err != nil {
		return odds.Exactly(math.NaN())
	}
	return share
}

// stored holds what the store does to every batch until it is started, or planted where that is all.
func (c *replay) stored() {
	for _, b := range c.batches {
		want := c.storedTill(b, c.begins(b))
		exactly(&c.Report, "stored", b.plan.ID, want != nil, b.plan.Stored != nil)
		if got := b.plan.Stored; want != nil && got != nil {
			c.spread("come through the store", b.plan.ID, want.Through, got.Through, exact, 0)
			c.spread("weight lost in store", b.plan.ID, want.LostPercent, got.LostPercent, exact, 0)
			exactly(&c.Report, "state in store", b.plan.ID, want.State, got.State)
		}
	}
}

// begins is the day on which a batch is started, or by the middle of the years planted or sown where
// it goes straight into the ground; never where that does not come.
func (c *replay) begins(b *batch) int {
	if !b.direct {
		return b.start
	}
	if planted := c.calendar.dateAt(b.middle(out), 0.5); !planted.IsZero() {
		return c.calendar.day(planted)
	}
	return never
}

// storedTill is what the store does to a batch up to a day; nil where that is not known.
func (c *replay) storedTill(b *batch, day int) *season.Stored {
	through := c.comesThrough(b.holding, string(b.holding.Form), b.kind, day)
	if b.route.store < 0 || math.IsNaN(through.Middle) {
		return nil
	}
	lost, err := keeping.Loss(keeping.Stock{Kind: b.plan.Kind, Form: b.plan.Form, Pack: b.holding.Pack, Culture: b.kind}, c.winter(b.route.store, day))
	if err != nil {
		return nil
	}
	return &season.Stored{Through: through, LostPercent: lost.Lost.Times(100), State: string(lost.State)}
}
