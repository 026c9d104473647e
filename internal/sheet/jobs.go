package sheet

import (
	"fmt"
	"io"
	"strings"

	"eyeup/civil"
)

// WeekJob is one thing to do in a week.
type WeekJob struct {
	Week  civil.Date
	What  string // such as start 34 dahlia
	Where string
	Sorts []string
	Hours float64 // 0 where it is not known
	Why   string
}

// Jobs writes the jobs of one or more weeks with boxes to tick.
func Jobs(w io.Writer, head Head, jobs []WeekJob) (Told, error) {
	l := newList("Jobs", head)
	if len(jobs) == 0 {
		l.words("Nothing is due in these weeks.", bodySize, black)
		return l.finish(w)
	}
	t := l.newTable(
		column{head: "done", width: 9, sort: tick}, column{head: "what", width: 48, bold: true},
		column{head: "where", width: 28}, column{head: "which, or why"}, column{head: "hours", width: 14, sort: number},
	)
	var week civil.Date
	for _, j := range jobs {
		if j.Week != week {
			week = j.Week
			t.group(weekOf(week), hoursOf(jobs, week))
		}
		hours := ""
		if j.Hours > 0 {
			hours = fmt.Sprintf("%.1f", j.Hours)
		}
		which := strings.Join(j.Sorts, ", ")
		if which == "" {
			which = j.Why
		}
		t.row("", j.What, j.Where, which, hours)
	}
	return l.finish(w)
}

func hoursOf(jobs []WeekJob, week civil.Date) string {
	hours := 0.0
	for _, j := range jobs {
		if j.Week == week {
			hours += j.Hours
		}
	}
	return fmt.Sprintf("%.1f hours in all", hours)
}
