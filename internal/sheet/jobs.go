package sheet

import (
	"fmt"
	"strings"

	"eyeup/civil"
)

// WeekJob is one job of a week.
type WeekJob struct {
	Week  civil.Date
	What  string // such as start 34 dahlia
	Where string
	Sorts []string
	Hours float64 // 0 if unknown
	Why   string
}

// Jobs are the jobs of one or more weeks with boxes to tick.
func Jobs(head Head, jobs []WeekJob) *Listing {
	li := &Listing{Head: head, Title: "Jobs", Empty: "Nothing is due in these weeks.", Columns: []Column{
		Column{Head: "done", Width: 9, Sort: Tick}, Column{Head: "what", Width: 48, Bold: true},
		Column{Head: "where", Width: 28}, Column{Head: "which, or why"}, Column{Head: "hours", Width: 14, Sort: Number},
	}}
	var week civil.Date
	for _, j := range jobs {
		if j.Week != week {
			week = j.Week
			li.addWeek(week, hoursOf(jobs, week))
		}
		hours := ""
		if j.Hours > 0 {
			hours = fmt.Sprintf("%.1f", j.Hours)
		}
		which := strings.Join(j.Sorts, ", ")
		if which == "" {
			which = j.Why
		}
		li.add("", j.What, j.Where, which, hours)
	}
	return li
}

func hoursOf(jobs []WeekJob, week civil.Date) string {
	hours := 0.0
	for _, j := range jobs {
		if j.Week == week {
			hours += j.Hours
		}
	}
	if hours == 0 { // not known of any
		return ""
	}
	return fmt.Sprintf("%.1f hours in all", hours)
}
