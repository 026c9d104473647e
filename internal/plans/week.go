package plans

import (
	"fmt"
	"slices"
	"strings"

	"eyeup/civil"
	"eyeup/internal/report"
	"eyeup/week"
)

// thisWeek says in one line what to do now, and what comes next.
func thisWeek(jobs []week.Job, today civil.Date) string {
	monday := today.Monday()
	var now []string
	var next *week.Job
	for i, j := range jobs {
		switch {
		case j.Week == monday:
			now = append(now, j.String())
		case next == nil && j.Week.After(monday):
			next = &jobs[i]
		}
	}
	line := "nothing is due"
	if len(now) > 0 {
		line = strings.Join(now, "; ")
	}
	line = fmt.Sprintf("This week (%s): %s.", report.ShortDate(monday), line)
	if next != nil {
		line += fmt.Sprintf(" Next: %s, %s.", report.ShortDate(next.Week), next)
	}
	if start := firstStart(jobs, monday); start != nil && start != next {
		line += fmt.Sprintf(" First start: %s, %s.", report.ShortDate(start.Week), start)
	}
	return line
}

// firstStart returns the next job that starts plants; nil for none.
func firstStart(jobs []week.Job, monday civil.Date) *week.Job {
	for i, j := range jobs {
		if j.Week.After(monday) && slices.Contains([]string{"start", "sow", "wake", "plant"}, j.What) {
			return &jobs[i]
		}
	}
	return nil
}
