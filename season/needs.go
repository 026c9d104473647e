package season

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/stock"
	"eyeup/supply"
)

// needs lists what to get: mix, containers and seed for spring, packing for autumn.
func (r *realized) needs() {
	r.potting()
	r.seed()
	r.packing()
}

// before is how many days before its first use a thing is to be there.
var before = int(culture.Usual("get.before"))

// potting lists the mix and the containers of all that is raised in them.
func (r *realized) potting() {
	pots := map[string]int{}
	litres := odds.Amount{}
	first := Never
	add := func(n supply.Need, err error) {
		if err != nil {
			r.plan.Cost.Unpriced = append(r.plan.Cost.Unpriced, err.Error())
			return
		}
		litres = odds.Amount{Low: litres.Low + n.Litres.Low, Middle: litres.Middle + n.Litres.Middle, High: litres.High + n.Litres.High}
	}
	for _, p := range r.parts {
		if !p.isPotted() {
			continue
		}
		first = min(first, p.start)
		for id, n := range fill(p.containers(), p.Count, p.body(), add) {
			pots[id] += n
		}
	}
	if first == Never {
		return
	}
	by := r.planner.Date(max(first-before, 0))
	r.unpriced(r.planner.Given.Prices.MixLitre, "potting mix")
	r.plan.ToGet = append(r.plan.ToGet, Need{
		What: "potting mix", Amount: rounded(litres), Unit: "L", By: by, Cost: Hundredth(r.planner.Given.Prices.MixLitre.Times(litres.Middle)),
	})
	for _, id := range slices.Sorted(maps.Keys(pots)) {
		price := r.planner.Given.Prices.Pots[id]
		c, err := supply.ContainerNamed(id)
		if err != nil {
			continue
		}
		r.unpriced(price, c.Name)
		r.plan.ToGet = append(r.plan.ToGet, Need{
			What: c.Name, Amount: odds.Exactly(float64(pots[id])), Unit: "each", By: by, Cost: Hundredth(price.Times(float64(pots[id]))),
		})
	}
}

// sureOfSeed is how sure one wants to be of enough seedlings.
var sureOfSeed = quantity.Share(culture.Usual("sow.sure"))

// seed lists how many seeds to sow for the plants that are wanted, at the germination
// of good seed at its usual warmth.
func (r *realized) seed() {
	for _, b := range r.planner.batches {
		if b.Form != stock.Seed {
			continue
		}
		warmth, known := b.life.Figure("start.warmth")
		if !known {
			continue
		}
		germination, known := b.life.Germination(warmth.Value)
		if !known {
			germination = quantity.Share(1 - b.life.Sprout.Never)
		}
		told, err := supply.Told(germination)
		if err != nil {
			continue
		}
		sown, err := supply.Sow(b.want, told, sureOfSeed)
		if err != nil {
			continue
		}
		r.plan.ToGet = append(r.plan.ToGet, Need{
			What: fmt.Sprintf("good seed of %s (%s)", b.Variety.Name, b.Variety.Kind), Amount: odds.Exactly(float64(sown.Seeds)), Unit: "seeds",
			By: r.planner.Date(max(r.firstStart(b)-before, 0)),
		})
	}
}

// firstStart returns the day on which the first of a batch is started or sown, the middle one of the
// years where that is in the open.
func (r *realized) firstStart(b *batch) int {
	first := r.planner.OutFrom
	for _, p := range r.parts {
		if p.batch != b {
			continue
		}
		if sown := r.planner.dateOf(middle(p.pick(func(f fate) int { return f.out }))); !p.route.direct {
			first = min(first, p.start)
		} else if !sown.IsZero() {
			first = min(first, r.planner.day(sown))
		}
	}
	return first
}

// packing lists what it takes to put away in autumn what is lifted: as many clumps as
// stand in the patch, and those in reserve.
func (r *realized) packing() {
	clumps := 0
	for _, p := range r.parts {
		if p.life.Life == culture.Store {
			clumps += int(math.Floor(float64(p.Count) * (1 - p.life.never)))
		}
	}
	away, err := supply.Pack(clumps, string(stock.Clump), false)
	if err != nil || clumps == 0 {
		return
	}
	by := r.planner.Date(slices.Min(r.planner.ends))
	r.plan.ToGet = append(r.plan.ToGet, Need{What: "vermiculite or other packing", Amount: rounded(away.Litres), Unit: "L", By: by})
	r.crates(away.Crates.Middle, by)
}

// crates notes where the stores hold fewer crates than autumn asks for.
func (r *realized) crates(want float64, by civil.Date) {
	there := 0
	for _, p := range r.planner.Given.Places {
		if p.Sort == Store {
			there += p.Crates
		}
	}
	if there == 0 || want <= float64(there) {
		return
	}
	r.plan.Shortfalls = append(r.plan.Shortfalls, Shortfall{
		Of: "crates", Wanted: want, There: float64(there), Short: want - float64(there), Week: by,
		Cure: "divide in autumn and keep fewer, give some away, or find room",
	})
}

func rounded(a odds.Amount) odds.Amount {
	return odds.Amount{Low: math.Round(a.Low), Middle: math.Round(a.Middle), High: math.Round(a.High)}
}

func (r *realized) unpriced(p Price, what string) {
	if !p.Known {
		r.plan.Cost.Unpriced = append(r.plan.Cost.Unpriced, what)
	}
}
