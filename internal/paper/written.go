package paper

import (
	"eyeup/internal/report"
	"eyeup/internal/sheet"
)

// written makes the answer for something that was printed.
func written(what string, count int, of string, told sheet.Told) *report.WrittenAnswer {
	a := &report.WrittenAnswer{What: what, Count: count, Of: of, Pages: told.Pages, LeftOut: told.LeftOut, Notices: []string{}}
	if told.Small {
		a.Notices = append(a.Notices, "The labels are too small to show colour, kind, place and date in full; name, code and square code are complete.")
	}
	return a
}
