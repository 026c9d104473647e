package season

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"eyeup/place"
	"eyeup/quantity"
)

// What decisions that can't be followed at all are refused with.
var (
	ErrOtherSeason = errors.New("it was decided for another season; follow a plan of this one")
	errNothingHeld = errors.New("nothing of what was decided can be held any more; follow another plan")
)

// Follow works out a plan again from what was decided in it, against the brief's stock, places
// and weather as they are now. Nothing is looked for: what can't be held any more is left out,
// and listed in the plan's Otherwise. The plan starts what its decisions say, before the brief's
// day too. Nothing changed, it comes out as it was.
//
// The stock of the brief is that of before anything was started: so many of each lot as can
// still be raised, or are raised already, in the form and place in which they wait or waited.
// The plan is the only one of the result.
func Follow(b Brief, d Decisions) (*Result, error) {
	if !b.Given.Span.Holds(d.OutFrom) {
		return nil, ErrOtherSeason
	}
	b.Ports.Solver, b.Ports.Relax, b.Asked.OutFrom = nil, nil, d.OutFrom
	b.Given.Places = slices.Clone(b.Given.Places)
	f := &following{planner: barePlanner(&b), decided: d, lots: map[string]*batch{}}
	f.made = Assignment{short: map[*batch]*lack{}, Left: map[*batch]int{}, Steps: map[int]Step{}}
	f.planner.gather()
	if len(f.planner.batches) > 0 {
		if err := f.planner.ground(); err != nil {
			return nil, err
		}
	}
	f.takeBatches()
	f.settle()
	f.takeWays()
	if len(f.made.Portions) == 0 {
		return nil, errNothingHeld
	}
	p := f.realize()
	return &Result{Plans: []*Plan{p}, FrostOdds: f.planner.FrostOdds(), OutFrom: d.OutFrom, Early: []EarlyPoint{}}, nil
}

// following is a plan that is worked out from decisions.
type following struct {
	planner   *Planner
	decided   Decisions
	made      Assignment
	at        Levels
	days      map[int]Days      // by place: the days of use that are decided
	lots      map[string]*batch // by id
	fit       []Decided         // what the stock still gives
	otherwise []string
}

func (f *following) say(format string, args ...any) {
	f.otherwise = append(f.otherwise, fmt.Sprintf(format, args...))
}

// settle holds the places at the levels that are decided, on the days that are decided.
func (f *following) settle() {
	f.at, f.days = f.planner.benchesOn(make(Levels, len(f.planner.Given.Places))), map[int]Days{}
	for _, h := range f.decided.Places {
		at := f.planner.placeNamed(h.Place)
		switch {
		case at < 0:
			f.say("%s is no place of the garden any more", h.Place)
			continue
		case f.planner.Given.Places[at].Sort == Glass && len(f.planner.Given.Places[at].Levels) < 2:
			f.say("%s has nothing to heat it with any more: it stays as cold as it is", h.Place)
			continue
		case f.planner.Given.Places[at].Sort == Glass:
			f.hold(at, h)
		}
		f.days[at] = Days{f.planner.day(h.From) + Warming, f.planner.day(h.To)}
	}
}

// hold holds a house at a level, with a step where that is decided.
func (f *following) hold(at int, h Held) {
	f.at[at] = f.levelOf(at, h.Level)
	if h.Then == nil {
		return
	}
	then := f.levelOf(at, h.Then.Level)
	f.made.Steps[at] = Step{f.planner.day(h.Then.From), then, false}
	if h.Then.Level.Above(h.Level) {
		f.made.Steps[at] = Step{f.planner.day(h.Then.From), f.at[at], true}
		f.at[at] = then
	}
}

// sameLevel is how far a level that was written down may be off that of the place, in K.
const sameLevel = 0.01

// levelOf returns the number of a place's level; one that it does not have any more is added.
func (f *following) levelOf(at int, level quantity.Temperature) int {
	p := &f.planner.Given.Places[at]
	for i, own := range p.Level {
		if own.IsKnown() && math.Abs(own.Celsius()-level.Celsius()) < sameLevel {
			return i
		}
	}
	p.Levels, p.Level = append(slices.Clip(p.Levels), place.Steadily(level)), append(slices.Clip(p.Level), level)
	return len(p.Level) - 1
}

// takeWays gives all plants that the stock still gives the way that is decided.
func (f *following) takeWays() {
	routes := map[int][]*route{}
	for _, b := range f.planner.batches {
		f.made.Left[b] = b.want
	}
	for _, d := range f.fit {
		b := f.lots[d.batch()]
		if routes[b.store] == nil {
			routes[b.store] = f.planner.routes(b.store, f.at)
		}
		o, why := f.optionOf(b, d, routes[b.store])
		if why != "" {
			f.say("%s: %s; %d were decided so", f.called(d), why, d.Count)
			continue
		}
		f.made.Portions = append(f.made.Portions, Portion{b, &outcome{option: o, life: b.life, later: &later{}}, d.Count})
		f.made.Left[b] -= d.Count
	}
}

// optionOf finds the way of a decision, or says why there is none any more.
func (f *following) optionOf(b *batch, d Decided, all []*route) (option, string) {
	if d.Way.IsDirect() {
		return f.planner.direct(b.life, all[len(all)-1]), ""
	}
	for _, name := range []string{d.Way.First, d.Way.On} {
		if f.planner.placeNamed(name) < 0 {
			return option{}, name + " is no place of the garden any more"
		}
	}
	at := slices.IndexFunc(all, func(r *route) bool {
		return !r.direct && r.framePlace < 0 && r.firstPlace == f.planner.placeNamed(d.Way.First) && r.onPlace == f.planner.placeNamed(d.Way.On)
	})
	if at < 0 {
		return option{}, fmt.Sprintf("nothing goes from %s on to %s any more", d.Way.First, d.Way.On)
	}
	o := option{route: f.wayOf(b, d, all[at]), start: f.planner.day(d.Start), outFrom: f.planner.day(d.OutFrom), firstMonday: f.planner.FirstMonday}
	if !f.planner.Given.Span.Holds(d.Start) || !f.planner.Given.Span.Holds(d.OutFrom) || !o.isMonday(o.start) {
		return option{}, fmt.Sprintf("%v is no Monday of this season, or %v no day of it", d.Start, d.OutFrom)
	}
	return o, ""
}

// wayOf is a route with the frame and the small pot that are decided, as far as they are there.
func (f *following) wayOf(b *batch, d Decided, r *route) *route {
	if d.Way.Frame != "" {
		frame := f.planner.placeNamed(d.Way.Frame)
		if frame < 0 || f.planner.Given.Places[frame].Sort != Frame {
			f.say("%s: %s is no frame of the garden any more; they are carried out and in", f.called(d), d.Way.Frame)
		} else {
			r = f.planner.hardenedIn(frame, r)
		}
	}
	if d.Way.ForGood {
		r = r.forGood()
	}
	if d.Way.Pot != "" {
		pot := f.planner.smallPot(b.life)
		if pot == nil {
			f.say("%s: the garden has no small pots any more; they begin in the larger ones", f.called(d))
			return r
		}
		r = r.pottedUp(pot)
	}
	return r
}

// odd is the share of stays that may reach beyond the days of heat: odd years, in which plants
// come or go otherwise than in all others.
const odd = 0.02

// realize leads the lots through the places as they are held. Where plants would stand longer in
// a heated place than was decided, it is heated for longer; where none stand, not at all.
func (f *following) realize() *Plan {
	r := f.led()
	for range mostFits {
		if !f.fitDays(r) {
			break
		}
		r = f.led()
	}
	r.plan.Held, r.plan.Otherwise, r.plan.NotCovered = true, f.otherwise, f.notCovered()
	return r.told()
}

// mostFits is how often days of heat are fitted to the stays: a place that is warm for longer
// changes the stays a little.
const mostFits = 2

// led is the plan with its lots led through the places as they are held now.
func (f *following) led() *realized {
	r := f.planner.begin(f.decided.Plan, f.decided.Says, f.at, f.made)
	r.days = f.days
	r.use()
	r.set(f.at)
	r.walk()
	return r
}

// fitDays fits the days of heat to the stays of the plants, and reports whether any were changed.
func (f *following) fitDays(r *realized) bool {
	changed := false
	for i := range r.planner.Given.Places {
		days, decided := f.days[i]
		if !r.isSet(i) {
			continue
		}
		stays, outside, used := 0, 0, Days{Never, 0}
		for _, p := range r.parts {
			for _, fate := range p.fates {
				one := (Days{Never, 0}).with(p.option, p.life, fate, i, int(r.planner.Given.Span.Days()))
				if one.From == Never {
					continue
				}
				stays++
				used = Days{min(used.From, one.From), max(used.To, one.To)}
				if one.From < days.From || one.To > days.To {
					outside++
				}
			}
		}
		if decided && stays > 0 && float64(outside) <= odd*float64(stays) {
			continue
		}
		changed = f.fitPlace(r, i, stays, used) || changed
	}
	return changed
}

// fitPlace fits the days of one heated place.
func (f *following) fitPlace(r *realized, at, stays int, used Days) bool {
	days, decided := f.days[at]
	switch {
	case stays == 0:
		f.say("nothing stands in %s any more: it is not heated", f.planner.Given.Places[at].Name)
		f.at[at] = 0
		if f.planner.Given.Places[at].Sort != Glass {
			used = Days{Never, 0}
		}
	case decided:
		used = Days{min(used.From, days.From), max(used.To, days.To)}
		f.say("%s is heated from %s to %s, not from %s to %s as was decided: plants stand there", f.planner.Given.Places[at].Name,
			f.planner.shortDay(used.From-Warming), f.planner.shortDay(used.To), f.planner.shortDay(days.From-Warming), f.planner.shortDay(days.To))
	case days == used:
		return false
	}
	f.days[at] = used
	return true
}

func (m *Planner) shortDay(day int) string { return m.Date(day).Short() }

// called names what is decided, as messages do.
func (f *following) called(d Decided) string {
	if d.Code == "" {
		return d.Variety
	}
	return fmt.Sprintf("%s (%s)", d.Variety, d.Code)
}
