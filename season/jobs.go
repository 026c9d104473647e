package season

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eyeup/civil"
)

// Job is something to do in one week.
type Job struct {
	Week    civil.Date `json:"week"`
	What    string     `json:"what" jsonschema_description:"start, hand on, harden, plant out or sow"`
	Kind    string     `json:"kind"`
	Count   int        `json:"count"`
	Where   string     `json:"where"`
	Sorts   []string   `json:"sorts" jsonschema_description:"the varieties"`
	Minutes float64    `json:"minutes"`
}

// String says the job in a line.
func (j Job) String() string {
	sorts := ""
	if len(j.Sorts) == 1 {
		sorts = " " + j.Sorts[0]
	}
	return fmt.Sprintf("%s %d %s%s (%s)", j.What, j.Count, j.Kind, sorts, j.Where)
}

// jobs lists what a plan asks for, week by week, by the middle dates.
func (r *realized) jobs() {
	type key struct {
		day               int
		what, kind, where string
	}
	all := map[key]*Job{}
	add := func(p *part, what, step string, day float64, where string) {
		if math.IsInf(day, 0) {
			return
		}
		monday := r.monday(int(day)) - 7
		if r.isMonday(int(day)) {
			monday = int(day)
		}
		k := key{monday, what, p.Variety.Kind, where}
		if all[k] == nil {
			all[k] = &Job{Week: r.date(monday), What: what, Kind: p.Variety.Kind, Where: where}
		}
		each, _ := p.life.Work(step)
		all[k].Count += p.count
		all[k].Minutes += each * float64(p.count)
		if !slices.Contains(all[k].Sorts, p.Variety.Name) {
			all[k].Sorts = append(all[k].Sorts, p.Variety.Name)
		}
	}
	for _, p := range r.parts {
		out := middle(p.pick(func(f fate) int { return f.out }))
		ground := r.Places[r.placeOf(Ground)].Name
		if p.route.direct {
			add(p, "plant", "plant", out, ground)
			continue
		}
		start := "start"
		if p.batch.store < 0 {
			start = "sow"
		}
		add(p, start, "start", float64(p.start), r.Places[p.route.firstPlace].Name)
		if p.route.firstPlace != p.route.onPlace {
			add(p, "hand on", "hand_on", middle(p.pick(func(f fate) int { return f.handOn })), r.Places[p.route.onPlace].Name)
		}
		add(p, "harden", "harden", out-float64(p.life.harden), r.Places[p.route.onPlace].Name)
		add(p, "plant out", "plant", out, ground)
	}
	for _, j := range all {
		j.Minutes = math.Round(j.Minutes)
		r.plan.Jobs = append(r.plan.Jobs, *j)
	}
	slices.SortFunc(r.plan.Jobs, func(a, b Job) int {
		return cmp.Or(cmp.Compare(a.Week.String(), b.Week.String()), cmp.Compare(a.What, b.What), cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Where, b.Where))
	})
}

func (m *maker) isMonday(day int) bool { return (day-m.firstMonday)%7 == 0 }
