package paper

import (
	"eyeup/internal/report"
	"eyeup/internal/sheet"
)

// written makes the answer for something put on paper.
func written(what string, count int, of string, told sheet.Told) *report.WrittenAnswer {
	a := &report.WrittenAnswer{What: what, Count: count, Of: of, Pages: told.Pages, LeftOut: told.LeftOut, Notices: []string{}}
	if told.Small {
		a.Notices = append(a.Notices, "The labels are too small for all of colour, kind, place and date; name, code and square code are whole.")
	}
	return a
}
