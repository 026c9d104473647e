package season

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"eyeup/supply"
)

// explain says, step by step, where the dates of a part come from, in the year whose
// first flower is the middle one.
func (r *realized) explain(p *part) []string {
	year := r.middleYear(p)
	f := p.fates[year]
	steps := []string{fmt.Sprintf("The year shown is %d, the middle one of %d by first flower.", r.planner.Given.Years[year], len(r.planner.Given.Years))}
	steps = append(steps, r.explainWaking(p, year)...)
	steps = append(steps, r.explainMoves(p, f)...)
	steps = append(steps, r.explainGrowth(p, year)...)
	base := r.planner.baseline(p.batch).fates()[year]
	steps = append(steps, fmt.Sprintf("Baseline: planted straight into the ground it goes in on %s and flowers on %s; so %.1f weeks are gained in this year, %.1f in the middle one.",
		r.planner.said(base.out), r.planner.said(base.flower), p.gains[year], middleOf(p.gains)))
	return append(steps, r.explainOthers(p)...)
}

func (r *realized) middleYear(p *part) int {
	order := make([]int, len(p.fates))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(p.fates[a].flower, p.fates[b].flower) })
	return order[(len(order)-1)/2]
}

func middleOf(x []float64) float64 {
	s := slices.Sorted(slices.Values(x))
	return s[(len(s)-1)/2]
}

// said writes a day, or that it does not come.
func (m *Planner) said(day int) string {
	if day == Never {
		return "never"
	}
	d := m.Date(day)
	return fmt.Sprintf("%d %s", d.Day(), d.Month())
}

func (r *realized) explainWaking(p *part, year int) []string {
	f, l := p.fates[year], p.life
	var steps []string
	if p.route.store != nil {
		warmth := 0.0
		for day := max(l.rest, 0); day < p.start; day++ {
			warmth += p.route.store.years[year].sprout[l.kind][day]
		}
		steps = append(steps, fmt.Sprintf("Waits in %s; from the end of deep rest on %s to its start it counts %.0f of %.0f °C·d there.",
			r.planner.Given.Places[p.route.storePlace].Name, r.planner.said(l.rest), warmth, l.sprout))
	}
	if p.route.direct {
		return append(steps, fmt.Sprintf("Goes into the ground on the first Monday whose soil has been at %s for a week: %s.", celsius(l.soilDormant), r.planner.said(f.out)))
	}
	if l.upAfter > 0 {
		return append(steps, fmt.Sprintf("Mothers start on %s; first shoots and rooting take %d days: rooted on %s.", r.planner.said(p.start), l.upAfter, r.planner.said(f.up)))
	}
	at := p.route.first.years[year]
	days := max(1, min(f.up, len(at.root)-1)-p.start)
	return append(steps,
		fmt.Sprintf("Started on %s %s, which gives %.1f °C·d above %s a day.", r.planner.said(p.start), r.planner.inPlace(p.route.firstPlace),
			sum(at.sprout[l.kind][p.start:p.start+days])/float64(days), celsius(l.Sprout.Base.Celsius())),
		fmt.Sprintf("Half are up at %.0f °C·d: %s. Eyes show at %.0f %% of it: %s.", l.sprout, r.planner.said(f.up), 100*l.eyed, r.planner.said(f.eyed)))
}

// inPlace says where something stands.
func (m *Planner) inPlace(at int) string {
	if m.Given.Places[at].Sort == Bench {
		return "on the " + m.Given.Places[at].Name
	}
	return "in " + m.Given.Places[at].Name
}

func (r *realized) explainMoves(p *part, f fate) []string {
	if p.route.direct {
		return nil
	}
	l := p.life
	var steps []string
	if p.route.firstPlace != p.route.onPlace {
		step := fmt.Sprintf("Handed on to %s on %s: the first Monday after half are up", r.planner.Given.Places[p.route.onPlace].Name, r.planner.said(f.handOn))
		if p.route.around < 0 {
			step += fmt.Sprintf(", and not before %s, after which it seldom falls below %s there", r.planner.said(p.route.onFrom(l)), celsius(l.harm))
		}
		steps = append(steps, step+".")
	}
	if f.stretched > 0 {
		steps = append(steps, fmt.Sprintf("Stretched on %s: it stands warmer than its light serves. It asks for %.0f mol/m² a day at %s, and for more the warmer it stands (assumption).",
			counted(f.stretched, "day"), l.LightFor(stretchedAt), celsius(stretchedAt)))
	}
	if p.route.stays {
		return append(steps, "It stays there and flowers under cover.")
	}
	if p.route.framePlace >= 0 {
		steps = append(steps, fmt.Sprintf("Moved to %s on %s to harden for %d days: the first Monday after it is ready (%s), not before %s, from when killing frost seldom comes into it. Planting out then checks it for %.0f days, not %.0f.",
			r.planner.Given.Places[p.route.framePlace].Name, r.planner.said(f.framed), l.harden, r.planner.said(f.ready), r.planner.said(p.frameFrom(l)), orElse(l.Transplant.Framed, l.Transplant.Days), l.Transplant.Days))
	} else {
		steps = append(steps, fmt.Sprintf("Fit to be planted out %d days after it is ready, for hardening: ready on %s.", l.harden, r.planner.said(f.ready)))
	}
	return append(steps,
		fmt.Sprintf("Planted out on %s: the first Monday not before %s (the odds of frost), with soil at %s for a week.", r.planner.said(f.out), r.planner.said(p.outFrom), celsius(l.soilLeafy)))
}

// stretchedAt is the warmth, °C, for which the light asked is stated.
const stretchedAt = 18.0

// counted writes a number with its noun.
func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

func (r *realized) explainGrowth(p *part, year int) []string {
	f, l := p.fates[year], p.life
	if math.IsInf(l.flower, 1) {
		return []string{"It is not raised for its flower."}
	}
	lines := []string{fmt.Sprintf("First flower takes %.0f days at the best temperature (%s) from up; that is reached on %s.", l.flower, celsius(l.Grow.Best.Celsius()), r.planner.said(f.flower))}
	if p.route.pot != nil {
		lines = append(lines, r.explainPot(p, f))
	} else if !p.route.direct && !math.IsInf(l.potLimit, 1) {
		lines = append(lines, fmt.Sprintf("Its pot (%s) holds it back from %.0f %% of the way on, which is why an earlier start gains less and less.", nameOfContainer(l.container), 100*l.potLimit))
	}
	if f.died != Never {
		lines = append(lines, fmt.Sprintf("Cold kills it on %s.", r.planner.said(f.died)))
	}
	return append(lines, fmt.Sprintf("The first autumn freeze ends its flowering on %s.", r.planner.said(r.planner.ends[year])))
}

// explainPot says when a plant is potted up out of a small pot, and why.
func (r *realized) explainPot(p *part, f fate) string {
	pot, l := p.route.pot, p.life
	says := fmt.Sprintf("It begins in a %s, which holds it back from %.0f %% of the way on", nameOfContainer(pot.container), 100*pot.limit/l.flower)
	if f.potted == Never {
		return says + "; that comes too late before planting out for potting it up."
	}
	return says + fmt.Sprintf("; potted up on the Monday after, %s, into a %s, which does from %.0f %% on.", r.planner.said(f.potted), nameOfContainer(l.container), 100*l.potLimit)
}

// nameOfContainer is what the trade calls a container.
func nameOfContainer(id string) string {
	c, err := supply.ContainerNamed(id)
	if err != nil {
		return id
	}
	name, _, _ := strings.Cut(c.Name, " (")
	return name
}

// explainOthers names the best of the ways not taken.
func (r *realized) explainOthers(p *part) []string {
	var others []string
	for _, o := range byGain(r.planner.options(p.batch, r.at)) {
		if len(others) == 3 {
			break
		}
		if r.planner.admissible(o) && (o.route.name != p.route.name || o.start != p.start) {
			others = append(others, fmt.Sprintf("%s from %s (%+.1f weeks)", o.route.name, r.planner.said(o.start), o.gain))
		}
	}
	if len(others) == 0 {
		return nil
	}
	return []string{"Other ways, were there room and no other plan: " + strings.Join(others, "; ") + "."}
}
