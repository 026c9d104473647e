package season

import (
	"fmt"
	"math"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/keeping"
	"eyeup/odds"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/stock"
	"eyeup/supply"
)

// packedAfter is how many days after the season's begin stock is packed away: in the
// middle of October, or of April in the south.
var packedAfter = int(culture.Usual("store.packed"))

// cutBefore is how many weeks before the Monday of planting out clumps are cut in spring.
var cutBefore = int(culture.Usual("divide.before"))

// stored computes what the store does to a part until the day on which it is started, or goes into the
// ground where that is all; nil where it never does, or the store's air or the stock's ways are not known.
func (r *realized) stored(p *part, till civil.Date) *Stored {
	if till.IsZero() {
		return nil
	}
	spells := r.planner.spells(p.batch.store, r.planner.day(till))
	if spells == nil {
		return nil
	}
	s := keeping.Stock{Kind: p.Variety.Kind, Form: string(p.Form), Pack: p.Pack, Culture: p.life.Kind}
	through, err := keeping.Survival(s, spells)
	if err != nil {
		return nil
	}
	drying, err := keeping.Loss(s, spells)
	if err != nil {
		return nil
	}
	return &Stored{Through: through, LostPercent: drying.Lost.Times(100), State: string(drying.State)}
}

// spells returns the air of a store from packing to a day; nil where it is not known.
func (m *Planner) spells(at, to int) []keeping.Spell {
	if at < 0 || to <= packedAfter {
		return nil
	}
	air, steady := m.Given.Places[at].Model.(place.Steady)
	if !steady {
		return nil
	}
	temperature, humidity := air.Months()
	for _, h := range humidity {
		if math.IsNaN(float64(h)) {
			return nil
		}
	}
	return keeping.Monthly(temperature, humidity, civil.Span{From: m.Date(packedAfter), To: m.Date(to)})
}

// cutting sets dividing in autumn beside dividing in spring for every lot that is cut.
func (r *realized) cutting() {
	for _, b := range r.planner.batches {
		if b.how != Divided || b.parents == 0 {
			continue
		}
		d := Dividing{Variety: b.Variety.Name, Clumps: b.parents, Pieces: b.want, Choice: "spring"}
		hours := float64(b.parents) * minutes(b.life.Kind, "divide") / 60
		d.Spring = r.cutIn(b, string(stock.Clump), b.parents, hours+float64(b.parents)*minutes(b.life.Kind, "wake")/60)
		d.Autumn = r.cutIn(b, string(stock.Division), b.want, hours)
		d.Why = fmt.Sprintf("eyes show then, and of clumps %s come through, of pieces %s", share(d.Spring.Through), share(d.Autumn.Through))
		if d.Autumn.Through.Middle > d.Spring.Through.Middle {
			d.Choice, d.Why = "autumn", fmt.Sprintf("pieces come through as well (%s against %s), and spring has no time to spare", share(d.Autumn.Through), share(d.Spring.Through))
		}
		r.plan.Dividing = append(r.plan.Dividing, d)
	}
}

func share(a odds.Amount) string {
	if math.IsNaN(a.Middle) {
		return "not known how many"
	}
	return fmt.Sprintf("%.0f in 100", 100*a.Middle)
}

// cutIn computes what keeping so many of a form through the winter comes to.
func (r *realized) cutIn(b *batch, form string, count int, hours float64) CutSeason {
	unknown := odds.Exactly(math.NaN())
	c := CutSeason{Through: unknown, Hours: Hundredth(hours)}
	if spells := r.planner.spells(b.store, r.planner.OutFrom-7*cutBefore); spells != nil {
		s := keeping.Stock{Kind: b.Variety.Kind, Form: form, Pack: b.Pack, Culture: b.life.Kind}
		if through, err := keeping.Survival(s, spells); err == nil {
			c.Through = through
		}
	}
	if packing, err := supply.Pack(count, form, b.Pack == "bare"); err == nil {
		c.Crates, c.Packing = packing.Crates.Middle, math.Round(packing.Litres.Middle)
	}
	return c
}

// minutes returns the work of a step, 0 where it is not known.
func minutes(k *culture.Kind, step string) float64 {
	each, known := k.Work(step)
	if !known {
		return 0
	}
	return each
}

// celsius shows a temperature in a sentence.
func celsius(t float64) string {
	c := quantity.Celsius(t)
	return fmt.Sprintf("%s (%s)", quantity.Metric.FineTemperature(c), quantity.US.Temperature(c))
}
