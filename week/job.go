package week

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eyeup/civil"
)

// Job is something to do in one week.
type Job struct {
	Week    civil.Date `json:"week" jsonschema_description:"its Monday"`
	What    string     `json:"what"`
	Kind    string     `json:"kind"`
	Count   int        `json:"count"`
	Where   string     `json:"where"`
	Sorts   []string   `json:"sorts" jsonschema_description:"the varieties"`
	Minutes float64    `json:"minutes" jsonschema_description:"0 if unknown"`
	Why     string     `json:"why"`
}

// String returns the job as one line.
func (j Job) String() string {
	sorts := ""
	if len(j.Sorts) == 1 {
		sorts = " " + j.Sorts[0]
	}
	line := j.What
	if j.Count > 0 {
		line += fmt.Sprintf(" %d %s%s", j.Count, j.Kind, sorts)
	}
	if j.Where != "" {
		line += " (" + j.Where + ")"
	}
	return line
}

// list collects jobs and merges equal ones of one week.
type list struct {
	jobs  []*Job
	index map[key]*Job
}

type key struct {
	week              civil.Date
	what, kind, where string
}

// add adds count of a variety to a job; each is the minutes for one.
func (l *list) add(day civil.Date, what, kind, where, sort string, count int, each float64, why string) {
	if day.IsZero() {
		return
	}
	k := key{day.Monday(), what, kind, where}
	j := l.index[k]
	if j == nil {
		j = &Job{Week: k.week, What: what, Kind: kind, Where: where, Why: why, Sorts: []string{}}
		l.index[k] = j
		l.jobs = append(l.jobs, j)
	}
	j.Count += count
	j.Minutes += each * float64(count)
	if sort != "" && !slices.Contains(j.Sorts, sort) {
		j.Sorts = append(j.Sorts, sort)
	}
}

// sorted returns the jobs in order of their weeks.
func (l *list) sorted() []Job {
	all := make([]Job, len(l.jobs))
	for i, j := range l.jobs {
		all[i] = *j
		all[i].Minutes = math.Round(j.Minutes)
	}
	slices.SortStableFunc(all, func(a, b Job) int {
		return cmp.Or(int(a.Week.Sub(b.Week)), cmp.Compare(a.What, b.What), cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Where, b.Where))
	})
	return all
}
