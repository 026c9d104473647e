package prove

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"eyeup/season"
)

// proofOf describes a proof. Money is rounded away from what would flatter the plan.
func (p *prover) proofOf(one *provedPlan, settings string) *season.Proof {
	p.weight = one.weight
	cost := p.costOf(one.best)
	apart := math.Max(0, cost-one.bound)
	proof := &season.Proof{Cost: season.Hundredth(cost), Bound: season.Hundredth(cost), WeekWorth: one.weight, Settings: settings}
	if apart >= 0.005 {
		proof.Bound = math.Floor(one.bound*100) / 100
		proof.Money = math.Ceil((proof.Cost-proof.Bound)*100-1e-6) / 100
	}
	if scale := p.scale(one.best); scale > 0 {
		proof.Gap = apart / scale
	}
	proof.Says = p.says(proof)
	if proof.Stopped = one.stopped && settings != season.ItsOwn; proof.Stopped {
		proof.Says += "; more time would bring that nearer"
	}
	if one.best.left > 0 {
		proof.Says += fmt.Sprintf("; the %d plants that it leaves out count for more here than any money", one.best.left)
	}
	return proof
}

// says words a proof in the grower's words.
func (p *prover) says(f *season.Proof) string {
	among := map[string]string{
		season.AllSettings: "no plan on these figures is", season.Unheated: "no plan without added heat is", season.ItsOwn: "no plan that heats and lights as this one does is",
	}[f.Settings]
	better := "better"
	if f.Money > 0 {
		better = fmt.Sprintf("more than %s better", p.problem.amount(f.Money))
	}
	held := ""
	if f.Settings == season.AllSettings {
		held = fmt.Sprintf(", each heated place held at one level while it is in use, or with one step on any second Monday and switched on and off within %d days of when one level does best", nearDays)
	}
	return fmt.Sprintf("%s %s, where a week of a plant in flower counts %s%s", among, better, p.problem.amount(f.WeekWorth), held)
}

func (b *problem) amount(money float64) string {
	return strings.TrimSpace(fmt.Sprintf("%.2f %s", money, b.planner.Given.Prices.Currency))
}

// assignmentOf gives the groups of a plan back to their batches.
func (p *prover) assignmentOf(f *solution) season.Assignment {
	steps := map[int]season.Step{}
	for i, of := range p.problem.columns.HeaterKeys {
		if h := f.at[of.Place]; h.Steps() && !of.Lamps {
			steps[of.Place] = season.Step{Day: f.stepDay[i], Level: h.Lower, Up: h.Up}
		}
	}
	a := season.NewAssignment(f.gain, steps)
	if f.counts == nil {
		a.Portions, a.Left = f.made.Portions, f.made.Left
		return a
	}
	for g, group := range p.problem.groups {
		a.Add(group, f.sub.choices[g], f.counts[g])
	}
	return a
}

// points lists the plans on the price of early, each with a name of its own.
func (p *prover) points(other *prover, curve []*provedPlan, earliest *provedPlan) ([]season.EarlyPoint, error) {
	all := make([]season.EarlyPoint, len(curve))
	err := inTwo(p, other, len(curve), func(by *prover, i int) (err error) {
		all[i] = by.pointOfPlan(curve[i])
		all[i].Limits, err = by.limitsOf(curve[i])
		return err
	})
	if err != nil {
		return nil, err
	}
	names := p.namesOf(all)
	for i, one := range curve {
		name, says := names[i], fmt.Sprintf("The best that was found where a week of a plant in flower counts %s.", p.problem.amount(one.weight))
		if one == earliest {
			name, says = season.AsEarly, season.Says(season.AsEarly)
		}
		all[i].Plan, all[i].Decisions = name, p.problem.planner.Decide(name, says, one.best.at.Levels(), p.assignmentOf(one.best))
	}
	return all, nil
}

// namesOf names points by what they gain and cost, in as round figures as tell them apart.
func (p *prover) namesOf(all []season.EarlyPoint) []string {
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

// pointOfPlan says what a plan on the price of early costs and gains.
func (p *prover) pointOfPlan(one *provedPlan) season.EarlyPoint {
	f := one.best
	point := season.EarlyPoint{
		Levels: []string{}, HeatCost: season.Hundredth(f.heat), TotalCost: season.Hundredth(f.money()),
		GainWeeks: season.Hundredth(f.gain / float64(max(f.plants+f.left, 1))), LeftOut: f.left, Proof: p.proofOf(one, season.AllSettings),
	}
	for i, of := range p.problem.columns.HeaterKeys {
		if f.used[i].From != season.Never && !of.Lamps && p.problem.planner.Given.Places[of.Place].Sort == season.Glass {
			held := p.heldIn(f, i)
			point.Levels = append(point.Levels, words(held))
			point.Held = append(point.Held, held)
		}
	}
	for i, place := range p.problem.planner.Given.Places {
		if used := p.problem.planner.UsedBy(i, p.assignmentOf(f)); place.Sort == season.Bench && used.From != season.Never {
			point.Levels = append(point.Levels, fmt.Sprintf("%s %.1f °C", place.Name, place.Level[1].Celsius()))
			point.Held = append(point.Held, season.Held{Place: place.Name, Level: place.Level[1], From: p.problem.planner.Date(max(used.From-season.Warming, 0)), To: p.problem.planner.Date(used.To)})
		}
	}
	return point
}

// heldIn says how a plan holds the place of a heater.
func (p *prover) heldIn(f *solution, heater int) season.Held {
	at, used := p.problem.columns.HeaterKeys[heater].Place, f.used[heater]
	place, h := p.problem.planner.Given.Places[at], f.at[at]
	held := season.Held{Place: place.Name, Level: place.Level[h.Level], From: p.problem.planner.Date(max(used.From-season.Warming, 0)), To: p.problem.planner.Date(used.To)}
	if h.Steps() {
		held.Then = &season.LevelStep{From: p.problem.planner.Date(f.stepDay[heater]), Level: place.Level[h.Lower]}
		if h.Up {
			held.Level, held.Then.Level = held.Then.Level, held.Level
		}
	}
	return held
}

func words(h season.Held) string {
	if h.Then == nil {
		return fmt.Sprintf("%s %.1f °C", h.Place, h.Level.Celsius())
	}
	return fmt.Sprintf("%s %.1f °C, then %.1f °C", h.Place, h.Level.Celsius(), h.Then.Level.Celsius())
}
