package sources

import (
	"eyeup/internal/desk"
	"eyeup/internal/report"
	"eyeup/week"
)

// OfWeek says where the figures of a week's jobs come from.
func OfWeek(d *desk.Desk, w *desk.Week) []Basis {
	records := append(planRecords(d), Record{Says: "what the book has in pots, trays and the ground", At: at(Stock)})
	all := []Basis{
		{Key: "jobs", Of: "how many, and in which week", Made: "How many the plan does this step with in the week, by middle dates, less those for which the book says that it is done.", Model: growModel, Records: records,
			Assumed: []string{"A job counts as done when the book says so. The book has no entry for hardening, so hardening is never called late."}, Change: byChange},
		{Key: "round", Of: "rounds", Made: "When the store was last gone through, and how many stand there.", Records: []Record{{Says: "rounds", At: at(Rounds)}}, Assumed: []string{roundDue}, Change: byRound},
		{Key: "late", Of: "later than promised", Made: "The day on which half of what the plan raises had got so far, compared with the dates that the plan promised when you chose it.", Records: append(planRecords(d), counted(d)...), Change: byEntry},
	}
	for _, kind := range kindsOfJobs(w) {
		if k, known := d.Site().Kind(kind); known {
			g := Basis{Key: Key("minutes", kind), Of: "how long it takes: " + kind, Made: "Minutes for one, times how many are left.", Records: planRecords(d), Change: byFigures}
			g.addKind(k, "work.")
			all = append(all, g)
		}
	}
	return all
}

func kindsOfJobs(w *desk.Week) []string {
	var kinds []string
	for _, jobs := range [][]week.JobState{w.Late, w.Due} {
		for _, j := range jobs {
			kinds = report.AddOnce(kinds, j.Kind)
		}
	}
	return kinds
}
