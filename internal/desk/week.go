package desk

import (
	"cmp"
	"slices"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/season"
	"eyeup/stock"
	"eyeup/week"
)

// Week is what is due in a week, and what is late.
type Week struct {
	Monday   civil.Date
	Plan     string // whose jobs they are
	Followed bool   // whether the grower has said to follow it

	Otherwise   []string // what can't be held of it as it was decided, or came otherwise
	NotFollowed string   // why a plan that was decided on can't be followed

	Late   []week.JobState
	Due    []week.JobState
	Next   []week.JobState // the weeks after, four jobs at most
	Rounds []week.RoundDue
	Behind int // see Worked
}

// lateFor is how long a job stays on the list after its week, in weeks.
const lateFor = 8

// Week returns what is due in the week of today by the plan that is followed, or by the
// usual one.
func (d *Desk) Week(today civil.Date) (*Week, error) {
	worked, err := d.Season(today)
	if err != nil {
		return nil, err
	}
	plan, followed := worked.PlanFollowed()
	w := &Week{Monday: today.Monday(), Plan: plan.Name, Followed: followed, Behind: worked.Behind, Otherwise: plan.Otherwise, NotFollowed: worked.NotFollowed}
	shelf := d.Shelf()
	done := doneOf(shelf)
	done.without(plan.Growing)
	for _, j := range worked.JobsOf(plan.Name) {
		job := week.JobState{Job: j}
		job.Done = done.take(j)
		switch {
		case job.IsRound() && !j.Week.After(w.Monday):
		case j.Week == w.Monday:
			w.Due = append(w.Due, job)
		case j.Week.After(w.Monday):
			if len(w.Next) < 4 {
				w.Next = append(w.Next, job)
			}
		case j.Week.Before(w.Monday.AddDays(-lateFor * civil.Week)):
		case job.IsTold() && job.Left() > 0:
			w.Late = append(w.Late, job)
		}
	}
	for _, shown := range [][]week.JobState{w.Late, w.Due, w.Next} {
		for i := range shown {
			shown[i].Lots = shelf.forJob(shown[i].Job)
		}
	}
	w.Rounds = shelf.roundsDue(d.Site(), today)
	return w, nil
}

// doneJobs counts what stands in the forms and places that jobs lead to.
type doneJobs struct {
	started, planted map[string]int    // by kind
	handedOn         map[[2]string]int // by kind and place
}

func doneOf(s *Shelf) *doneJobs {
	d := &doneJobs{map[string]int{}, map[string]int{}, map[[2]string]int{}}
	for _, l := range s.Lots {
		for _, st := range l.Standing {
			switch st.Spot.Form {
			case stock.Tray, stock.Pot:
				d.started[l.Kind] += st.Count
				d.handedOn[[2]string{l.Kind, st.Spot.Place}] += st.Count
			case stock.Plant:
				d.started[l.Kind] += st.Count
				d.planted[l.Kind] += st.Count
			}
		}
	}
	return d
}

// without leaves out what was there when the plan was worked out: the plan does not ask for it
// again.
func (d *doneJobs) without(growing []season.Growing) {
	for _, g := range growing {
		d.started[g.Kind] -= min(g.Count, d.started[g.Kind])
		if g.Form == stock.Plant {
			d.planted[g.Kind] -= min(g.Count, d.planted[g.Kind])
			continue
		}
		k := [2]string{g.Kind, g.Place}
		d.handedOn[k] -= min(g.Count, d.handedOn[k])
	}
}

// take returns how many of a job are done, which no later job can claim too.
func (d *doneJobs) take(j week.Job) int {
	var n int
	switch j.What {
	case "start", "sow", "wake":
		n = min(j.Count, d.started[j.Kind])
		d.started[j.Kind] -= n
	case "plant", "plant out":
		n = min(j.Count, d.planted[j.Kind])
		d.planted[j.Kind] -= n
	case "hand on":
		k := [2]string{j.Kind, j.Where}
		n = min(j.Count, d.handedOn[k]+d.planted[j.Kind])
		d.handedOn[k] -= min(n, d.handedOn[k])
	}
	return n
}

// forJob lists the lots of a job's varieties.
func (s *Shelf) forJob(j week.Job) []int {
	var lots []int
	for i := range s.Varieties {
		if v := &s.Varieties[i]; v.Kind == j.Kind && slices.Contains(j.Sorts, v.Name) {
			lots = append(lots, v.Lots...)
		}
	}
	return lots
}

// roundsDue tells for each store where stock waits whether a round is due: four weeks
// after the last one, or after the stock came there.
func (s *Shelf) roundsDue(g *garden.Garden, today civil.Date) []week.RoundDue {
	var all []week.RoundDue
	for _, p := range s.Places {
		place, known := g.Place(p.Name)
		if known && place.Sort != exchange.Store {
			continue
		}
		r := week.RoundDue{Place: p.Name}
		var since civil.Date
		for _, c := range p.Crates {
			for _, h := range c.Holdings {
				if h.Spot.Form == stock.Seed || !known && garden.Grows(h.Spot.Form) {
					continue
				}
				r.Count += h.Count
				if since.IsZero() || h.Since.Before(since) {
					since = h.Since
				}
			}
		}
		if r.Count == 0 {
			continue
		}
		for _, gone := range s.Rounds {
			if gone.Spot.Place == p.Name && gone.On.After(r.Last) {
				r.Last = gone.On
			}
		}
		from := r.Last
		if from.IsZero() {
			from = since
		}
		r.Due = today.Sub(from) >= week.RoundEvery
		all = append(all, r)
	}
	slices.SortStableFunc(all, func(a, b week.RoundDue) int { return cmp.Compare(b2i(b.Due), b2i(a.Due)) })
	return all
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// RoundsDue tells for each store where stock waits whether a round is due.
func (d *Desk) RoundsDue(today civil.Date) []week.RoundDue {
	return d.Shelf().roundsDue(d.Site(), today)
}
