package check

import (
	"fmt"
	"math"
	"slices"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/stock"
	"eyeup/supply"
)

// litre is the rounding of mix and packing.
const litre = 0.51

// mix is what the plan calls it.
const mix = "potting mix"

// before is how many days before its first use a thing is to be there.
var before = int(culture.Usual("get.before"))

// wants adds up what is to get, by what the plan calls it, in the order met.
type wants struct {
	needs []season.Need
}

func (w *wants) add(n season.Need) {
	at := slices.IndexFunc(w.needs, func(o season.Need) bool { return o.What == n.What })
	if at < 0 {
		w.needs = append(w.needs, n)
		return
	}
	a := &w.needs[at].Amount
	a.Low, a.Middle, a.High = a.Low+n.Amount.Low, a.Middle+n.Amount.Middle, a.High+n.Amount.High
}

// toGet adds up the mix, the containers, the seed and the packing, and holds each to the plan's.
func (c *replay) toGet() {
	w, begins := &wants{}, never
	for _, b := range c.batches {
		if !b.inBed() {
			begins = min(begins, b.start)
		}
	}
	for _, b := range c.batches {
		first, last := b.firstAndLast()
		exactly(&c.Report, "container", b.plan.ID, last, b.plan.Container)
		exactly(&c.Report, "first container", b.plan.ID, first, b.plan.BeginsIn)
		if !b.inBed() {
			c.pots(w, b, c.calendar.date(max(begins-before, 0)))
		}
	}
	c.price(w)
	c.seed(w)
	c.packing(w)
	for _, want := range w.needs {
		at := slices.IndexFunc(c.plan.ToGet, func(n season.Need) bool { return n.What == want.What })
		if at < 0 {
			c.add("to get", want.What, want.Amount.Middle, "none")
			continue
		}
		got := c.plan.ToGet[at]
		slack := 0.0
		if want.Unit == "L" {
			slack = litre
		}
		c.spread("amount", want.What, want.Amount, got.Amount, 0, slack)
		c.within("cost", want.What, want.Cost, got.Cost, cent)
		exactly(&c.Report, "unit", want.What, want.Unit, got.Unit)
		exactly(&c.Report, "to get by", want.What, want.By, got.By)
	}
	exactly(&c.Report, "things to get", "plan", len(w.needs), len(c.plan.ToGet))
}

// pots adds the containers of a batch, those it is started in and those it is potted on
// into, and the mix that fills them, which are to be there by a day.
func (c *replay) pots(w *wants, b *batch, by civil.Date) {
	form := map[season.How]string{season.Divided: string(stock.Division), season.FromCuttings: string(stock.Cutting), season.Whole: string(b.holding.Form)}[season.How(b.plan.How)]
	if b.holding.Form == stock.Seed {
		form = ""
	}
	fill := func(k supply.Container, mixed func(count int) (supply.Need, error)) {
		count := int(math.Ceil(float64(b.count) / float64(max(k.Cells, 1))))
		w.add(season.Need{What: k.Name, Amount: odds.Exactly(float64(count)), Unit: "each", By: by})
		need, err := mixed(count)
		if err != nil {
			exactly(&c.Report, "unpriced", b.plan.ID, true, slices.Contains(c.plan.Cost.Unpriced, err.Error()))
			return
		}
		w.add(season.Need{What: mix, Amount: need.Litres, Unit: "L", By: by})
	}
	passed := b.containers()
	fill(passed[0], func(n int) (supply.Need, error) { return passed[0].Mix(n, form) })
	for i, k := range passed[1:] {
		fill(k, func(n int) (supply.Need, error) { return k.PotUp(passed[i].ID, n) })
	}
}

// containers lists the trays and pots that a batch passes.
func (b *batch) containers() []supply.Container {
	var all []supply.Container
	if first, err := supply.ContainerNamed(b.kind.StartIn); err == nil && first.ID != b.pot.ID && (b.small == nil || b.kind.Life == culture.Sow) {
		all = append(all, first)
	}
	if b.small != nil {
		all = append(all, b.small.Container)
	}
	if b.small == nil || b.potsUp() {
		all = append(all, b.pot)
	}
	return all
}

// firstAndLast are the container that a batch begins in, and that in which it stands until it
// is planted out; empty for what stands in none.
func (b *batch) firstAndLast() (first, last string) {
	if b.direct || b.forGood && b.route.first == b.route.on {
		return "", ""
	}
	all := b.containers()
	return all[0].ID, all[len(all)-1].ID
}

// price puts the price to the mix and the containers.
func (c *replay) price(w *wants) {
	prices := map[string]season.Price{mix: c.brief.Given.Prices.MixLitre}
	for _, k := range supply.Containers() {
		prices[k.Name] = c.brief.Given.Prices.Pots[k.ID]
	}
	for i, n := range w.needs {
		price := prices[n.What]
		w.needs[i].Cost = price.Times(n.Amount.Middle)
		exactly(&c.Report, "unpriced", n.What, !price.Known, slices.Contains(c.plan.Cost.Unpriced, n.What))
	}
}

// sureOfSeed is how sure one is to be of enough seedlings.
var sureOfSeed = quantity.Share(culture.Usual("sow.sure"))

// seed adds the seeds to sow for what is wanted, at the germination of good seed.
func (c *replay) seed(w *wants) {
	for _, h := range c.brief.Given.Stock {
		n, err := needsOf(c.brief, h.Variety, h.Form, season.Whole)
		if err != nil || h.Form != stock.Seed || !c.plans(h) {
			continue
		}
		warmth, known := n.kind.Figure("start.warmth")
		if !known {
			continue
		}
		comes, known := n.kind.Germination(warmth.Value)
		if !known {
			comes = quantity.Share(1 - n.kind.Sprout.Never)
		}
		told, err := supply.Told(comes)
		if err != nil {
			continue
		}
		if sown, err := supply.Sow(h.Plant+h.Reserve, told, sureOfSeed); err == nil {
			what := fmt.Sprintf("good seed of %s (%s)", h.Variety.Name, h.Variety.Kind)
			w.add(season.Need{What: what, Amount: odds.Exactly(float64(sown.Seeds)), Unit: "seeds", By: c.sownFrom(h)})
		}
	}
}

// sownFrom is when the seed of a holding is to be there: before the first of it is sown.
func (c *replay) sownFrom(h stock.Holding) civil.Date {
	first := c.calendar.day(c.plan.PlantOutFrom)
	for _, b := range c.batches {
		if nameOf(b.holding) == nameOf(h) {
			first = min(first, c.begins(b))
		}
	}
	return c.calendar.date(max(first-before, 0))
}

// plans reports whether the plan does not say that it leaves a holding alone.
func (c *replay) plans(h stock.Holding) bool {
	return !slices.ContainsFunc(c.plan.NotCovered, func(n season.NotCovered) bool {
		return n.Kind == h.Variety.Kind && n.Variety == h.Variety.Name && n.Form == string(h.Form) && n.Place == h.Place
	})
}

// inBed reports whether a batch is raised without pots: straight into the ground, or as
// corms under cover for good.
func (b *batch) inBed() bool {
	return b.direct || b.forGood && b.kind.Life == culture.Soak
}
