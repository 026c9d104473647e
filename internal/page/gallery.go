package page

import (
	"html/template"
	"net/http"
	"time"

	"eyeup/civil"
	"eyeup/internal/desk"
	"eyeup/internal/reckon"
	"eyeup/internal/sources"
	"eyeup/internal/stockbook"
	"eyeup/odds"
	"eyeup/season"
	"eyeup/stock"
	"eyeup/week"
)

// galleryView holds each part of the pages with made-up data. It is served for tests and for
// the invented garden only.
type galleryView struct {
	Wrote, Undone done
	Jobs          []jobView
	Inputs        []input
	Colours       []string
	Names         []string
	Crates        template.HTML
	Frost         template.HTML
	Bench         template.HTML
	Behind        int
}

// gallery shows each part of the pages by itself.
func (s *server) gallery(r *request) error {
	return s.show(r, http.StatusOK, "gallery", view{Title: "Gallery of page parts", Main: madeUp(r.display, s.desk.FrostCurve()), From: madeUpSources()})
}

// madeUp holds what no garden has but the parts must be able to show. The curve is that of
// the invented garden, whose weather is made up.
func madeUp(t display, curve desk.FrostCurve) galleryView {
	monday := civil.MustOn(2027, time.April, 12)
	born := []stock.Born{{Code: "MRMM5"}, {Code: "PT877"}}
	job := week.Job{Week: monday, What: "start", Kind: "dahlia", Count: 40, Where: "warm room", Sorts: []string{"Pale Heron", "Brass Lantern"}, Minutes: 95, Why: "the start of the plan"}
	lot := stock.Lot{Code: "MRMM5", Kind: "dahlia", Variety: stock.Variety{Name: longName, Kind: "dahlia", Colour: "#f4efe4"}, Standing: []stock.Standing{{Count: 14}}}
	return galleryView{
		Wrote:   done{Says: "divided", Born: born, Notes: []string{"labels due for reprint: MRMM5"}},
		Undone:  done{Says: "put right", Undone: true},
		Jobs:    []jobView{{week.JobState{Job: job, Done: 12}, []stock.Lot{lot}, "started"}, {week.JobState{Job: week.Job{Week: monday, What: "look for mites", Where: "warm room"}}, nil, ""}},
		Inputs:  madeUpInputs(),
		Colours: []string{"#f4efe4", "#1d1d1b", "#b3261e", "#3f4fa3", ""},
		Names:   []string{"Sol", longName, "夕焼け", `"quoted" & <odd>`},
		Crates:  drawCrates("cellar", madeUpCrates()),
		Frost:   drawFrost(curve, &reckon.FrostAnswer{After: &reckon.FreezeAfter{Day: civil.MonthDay{Month: time.May, Day: 20}}}, t),
		Bench:   drawBench(madeUpBench(monday), t),
		Behind:  2,
	}
}

const longName = "Old Colonel Featherstonehaugh of the Lower Meadow Cottage II"

func madeUpInputs() []input {
	return []input{
		{field: field{Name: "firm", Label: "firm", Type: tally, Help: "each one felt"}, Value: "12", Less: "firm-1", More: "firm+1", Ten: "firm+10"},
		{field: field{Name: "form", Label: "in a", Type: choice, Choices: []string{"pot", "tray"}}, Value: "tray"},
		{field: field{Name: "whole", Label: "every one was checked", Type: yes}, On: true},
		{field: field{Name: "weight", Label: "weight", Type: measure, Help: "such as 4.2 kg"}},
	}
}

func madeUpCrates() []crateRow {
	rows := make([]crateRow, 9)
	for i := range rows {
		rows[i] = crateRow{CrateOnShelf: desk.CrateOnShelf{Crate: string(rune('1' + i))}, N: i, Stood: 10 + i, Now: found{Seen: 10 * (i % 3), Bad: i}, Dry: []stockbook.OutlookCrate{{Lost: odds.Exactly(float64(i))}}}
	}
	return rows
}

// madeUpBench is a bench that is too small in some weeks.
func madeUpBench(monday civil.Date) *season.PlacePlan {
	p := &season.PlacePlan{Place: "glass", Sort: "glass"}
	for i := range 16 {
		p.Weeks = append(p.Weeks, season.PlaceWeek{Week: monday.AddDays(civil.Days(i) * civil.Week), UsedM2: float64(i%9) * 2, RoomM2: 14})
	}
	return p
}

// madeUpSources are the sources of the made-up job.
func madeUpSources() []sources.Basis {
	minutes := reckon.FigureAnswer{Meaning: "dahlia, potting, sowing or boxing one", Low: 1, Value: 3, High: 6, Unit: "min", Sure: "assumption", Source: "assumption: made up for this page"}
	record := []sources.Record{{Says: "the made-up plan"}}
	change := sources.Record{Says: "how the garden is described", At: sources.Where{Page: sources.Described}}
	return []sources.Basis{
		{Key: "jobs", Of: "how many, and in which week", Made: "Forty of the plan, less the twelve that are done.", Model: "Nothing is calculated here.", Records: record, Assumed: []string{"All of it is made up."}, Change: change},
		{Key: "minutes-dahlia", Of: "how long it takes: dahlia", Made: "Minutes for one, times how many are left.", Records: record, Figures: []reckon.FigureAnswer{minutes}, Change: change},
	}
}
