package plans

import (
	"fmt"
	"io"
	"strings"
	"time"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/report"
	"eyeup/week"
)

// CalendarOf writes the jobs of a plan to w as an iCalendar file, each a week long. An empty plan means
// the plan that is followed, or the usual one. now is the time the file is written at.
func CalendarOf(g *garden.Garden, followed *Followed, plan string, today civil.Date, now time.Time, w io.Writer) (*report.WrittenAnswer, error) {
	worked, p, err := Planned(g, followed, plan, today)
	if err != nil {
		return nil, err
	}
	c := exchange.Calendar{Garden: g.Name, Season: g.Season.PlantYear, Written: now}
	for _, j := range worked.JobsOf(p.Name) {
		c.Entries = append(c.Entries, entryOf(j))
	}
	if err := exchange.WriteCalendar(w, c); err != nil {
		return nil, err
	}
	a := &report.WrittenAnswer{What: "calendar", Count: len(c.Entries), Of: "entries", LeftOut: []string{}, Notices: []string{}}
	if worked.Weather.MadeUp {
		a.Notices = append(a.Notices, "The weather is made up, so every date here is made up too.")
	}
	return a, nil
}

// entryOf makes the calendar entry of a job. Its key is the job, the kind and the place. Week and count
// are left out, so that an entry keeps its key when the plan changes them.
func entryOf(j week.Job) exchange.CalendarEntry {
	what := j.What
	if j.Count > 0 {
		what += fmt.Sprintf(" %d %s", j.Count, j.Kind)
	}
	if j.Where != "" {
		what += ": " + j.Where
	}
	var more []string
	if len(j.Sorts) > 0 {
		more = append(more, strings.Join(j.Sorts, ", ")+".")
	}
	if j.Minutes > 0 {
		more = append(more, fmt.Sprintf("About %.1f hours.", j.Minutes/60))
	}
	if j.Why != "" {
		more = append(more, report.Capital(j.Why)+".")
	}
	return exchange.CalendarEntry{
		Key: strings.Join([]string{j.What, j.Kind, j.Where}, "\x00"), What: report.Capital(what), More: strings.Join(more, "\n"),
		Days: civil.Span{From: j.Week, To: j.Week.AddDays(civil.Week - 1)},
	}
}
