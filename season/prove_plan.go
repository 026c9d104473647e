package season

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
)

// Proof says how good a plan is at best and at worst. Its money is in units of the plan's
// currency.
type Proof struct {
	Gap       float64 `json:"gap" jsonschema_description:"money a better plan could save at most, as a share of the plan's money and the worth of its flowers"`
	Money     float64 `json:"money" jsonschema_description:"no plan on these figures is better by more"`
	Bound     float64 `json:"bound" jsonschema_description:"no plan's money less the worth of its weeks of flower is less"`
	Cost      float64 `json:"cost" jsonschema_description:"the plan's money less the worth of its weeks of flower, in the figures it was weighed by"`
	WeekWorth float64 `json:"week_worth" jsonschema_description:"what a week of one plant in flower counts for"`
	Settings  string  `json:"settings" jsonschema:"enum=all,enum=unheated,enum=its own" jsonschema_description:"among which settings of heat and lamps no plan is better"`
	Stopped   bool    `json:"stopped,omitempty" jsonschema_description:"it was not looked for long enough to come as near as is aimed at"`
	Says      string  `json:"says"`
}

// The settings among which a plan is held to be best.
const (
	AllSettings = "all"
	Unheated    = "unheated"
	ItsOwn      = "its own"
)

// proofOf tells a proof. Money is rounded away from what would flatter the plan.
func (p *prover) proofOf(one *provedPlan, settings string) *Proof {
	p.weight = one.weight
	cost := p.costOf(one.best)
	apart := math.Max(0, cost-one.bound)
	proof := &Proof{Cost: hundredth(cost), Bound: hundredth(cost), WeekWorth: one.weight, Settings: settings}
	if apart >= 0.005 {
		proof.Bound = math.Floor(one.bound*100) / 100
		proof.Money = math.Ceil((proof.Cost-proof.Bound)*100-1e-6) / 100
	}
	if scale := p.scale(one.best); scale > 0 {
		proof.Gap = apart / scale
	}
	proof.Says = p.says(proof)
	if proof.Stopped = one.stopped && settings != ItsOwn; proof.Stopped {
		proof.Says += "; more time would bring that nearer"
	}
	if one.best.left > 0 {
		proof.Says += fmt.Sprintf("; the %d plants that it leaves out count for more here than any money", one.best.left)
	}
	return proof
}

// says tells a proof in the grower's words.
func (p *prover) says(f *Proof) string {
	among := map[string]string{
		AllSettings: "no plan on these figures is", Unheated: "no plan without added heat is", ItsOwn: "no plan that heats and lights as this one does is",
	}[f.Settings]
	better := "better"
	if f.Money > 0 {
		better = fmt.Sprintf("more than %s better", p.problem.planner.amount(f.Money))
	}
	held := ""
	if f.Settings == AllSettings {
		held = fmt.Sprintf(", each heated place held at one level while it is in use, or with one step on any second Monday and lit and put out within %d days of when one level does best", nearDays)
	}
	return fmt.Sprintf("%s %s, where a week of a plant in flower counts %s%s", among, better, p.problem.planner.amount(f.WeekWorth), held)
}

func (m *planner) amount(money float64) string {
	return strings.TrimSpace(fmt.Sprintf("%.2f %s", money, m.Given.Prices.Currency))
}

// assignmentOf parts the groups of a plan among their batches again: choice by choice, the
// earliest first, batch by batch.
func (p *prover) assignmentOf(f *solution) assignment {
	a := assignment{portions: f.portions, short: map[*batch]*lack{}, left: map[*batch]int{}, value: f.gain, steps: map[int]step{}}
	for i, of := range p.problem.columns.heaterKeys {
		if h := f.at[of.place]; h.steps() && !of.lamps {
			a.steps[of.place] = step{f.stepDay[i], h.lower, h.up}
		}
	}
	if f.counts == nil {
		a.left = f.noWay
		return a
	}
	for g, group := range p.problem.groups {
		a.portions = append(a.portions, group.part(f.sub.choices[g], f.counts[g], a.left)...)
	}
	return a
}

// part gives the batches of a group their plants. What is over is left out.
func (g *group) part(all []*choice, counts []int, left map[*batch]int) []portion {
	order := make([]int, len(all))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		return cmp.Or(cmp.Compare(all[i].start, all[j].start), cmp.Compare(all[i].route.name, all[j].route.name))
	})
	rest := slices.Clone(counts)
	var portions []portion
	for _, b := range g.batches {
		want := b.want
		for _, i := range order {
			if n := min(want, rest[i]); n > 0 {
				portions = append(portions, portion{b, all[i].outcome, n})
				rest[i], want = rest[i]-n, want-n
			}
		}
		if want > 0 {
			left[b] = want
		}
	}
	return portions
}

// points tells the plans on the price of early, each with a name of its own.
func (p *prover) points(mate *prover, curve []*provedPlan, earliest *provedPlan) ([]EarlyPoint, error) {
	all := make([]EarlyPoint, len(curve))
	err := inTwo(p, mate, len(curve), func(by *prover, i int) (err error) {
		all[i] = by.pointOfPlan(curve[i])
		all[i].Limits, err = by.limitsOf(curve[i])
		return err
	})
	if err != nil {
		return nil, err
	}
	names := p.namesOf(all)
	for i, one := range curve {
		name, says := names[i], fmt.Sprintf("The best that was found where a week of a plant in flower counts %s.", p.problem.planner.amount(one.weight))
		if one == earliest {
			name, says = AsEarly, earlySays
		}
		all[i].Plan, all[i].Decisions = name, p.problem.planner.decide(name, says, one.best.at.levels(), p.assignmentOf(one.best))
	}
	return all, nil
}

// namesOf names points by what they gain and cost, in as round figures as tell them apart.
func (p *prover) namesOf(all []EarlyPoint) []string {
	names := make([]string, len(all))
	for digits := range 3 {
		before := slices.Clone(names)
		for i, e := range all {
			if digits == 0 || i > 0 && before[i] == before[i-1] || i+1 < len(all) && before[i] == before[i+1] {
				names[i] = strings.TrimSpace(fmt.Sprintf("about %.*f weeks for %.*f %s", max(1, digits), e.GainWeeks, digits, e.TotalCost, p.problem.planner.Given.Prices.Currency))
			}
		}
	}
	return names
}

// pointOfPlan tells what a plan on the price of early costs and gains.
func (p *prover) pointOfPlan(one *provedPlan) EarlyPoint {
	f := one.best
	point := EarlyPoint{
		Levels: []string{}, HeatCost: hundredth(f.heat), TotalCost: hundredth(f.money()),
		GainWeeks: hundredth(f.gain / float64(max(f.plants+f.left, 1))), LeftOut: f.left, Proof: p.proofOf(one, AllSettings),
	}
	for i, of := range p.problem.columns.heaterKeys {
		if f.used[i].from != never && !of.lamps && p.problem.planner.Given.Places[of.place].Sort == Glass {
			held := p.heldIn(f, i)
			point.Levels = append(point.Levels, held.words())
			point.Held = append(point.Held, held)
		}
	}
	for i, place := range p.problem.planner.Given.Places {
		if used := p.problem.planner.usedBy(i, p.assignmentOf(f)); place.Sort == Bench && used.from != never {
			point.Levels = append(point.Levels, fmt.Sprintf("%s %.1f °C", place.Name, place.Level[1].Celsius()))
			point.Held = append(point.Held, Held{Place: place.Name, Level: place.Level[1], From: p.problem.planner.date(max(used.from-warming, 0)), To: p.problem.planner.date(used.to)})
		}
	}
	return point
}

// heldIn tells how a plan holds the place of a heater.
func (p *prover) heldIn(f *solution, heater int) Held {
	at, used := p.problem.columns.heaterKeys[heater].place, f.used[heater]
	place, h := p.problem.planner.Given.Places[at], f.at[at]
	held := Held{Place: place.Name, Level: place.Level[h.level], From: p.problem.planner.date(max(used.from-warming, 0)), To: p.problem.planner.date(used.to)}
	if h.steps() {
		held.Then = &LevelStep{p.problem.planner.date(f.stepDay[heater]), place.Level[h.lower]}
		if h.up {
			held.Level, held.Then.Level = held.Then.Level, held.Level
		}
	}
	return held
}

func (h Held) words() string {
	if h.Then == nil {
		return fmt.Sprintf("%s %.1f °C", h.Place, h.Level.Celsius())
	}
	return fmt.Sprintf("%s %.1f °C, then %.1f °C", h.Place, h.Level.Celsius(), h.Then.Level.Celsius())
}
