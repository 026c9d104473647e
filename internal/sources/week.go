package sources

import (
	"eyeup/internal/desk"
	"eyeup/internal/report"
	"eyeup/week"
)

// OfWeek say what the jobs of a week rest on.
func OfWeek(d *desk.Desk, w *desk.Week) []Basis {
	records := append(planRecords(d), Record{Says: "what stands in pots, trays and the ground, by the book", At: at(Stock)})
	all := []Basis{
		{Key: "jobs", Of: "how many, and in which week", Made: "Those that the plan takes this step with in the week, by the middle dates over the years, less those of which the book tells that it is done.", Model: growModel, Records: records,
			Assumed: []string{"A job counts as done as far as the book tells. That something was hardened it can't tell, so that is never called late."}, Change: byChange},
		{Key: "round", Of: "rounds", Made: "When the store was last gone through, and how many stand there.", Records: []Record{{Says: "rounds gone", At: at(Rounds)}}, Assumed: []string{roundDue}, Change: byRound},
		{Key: "late", Of: "later than was told", Made: "The day on which half of what the plan raises had come so far, held against the dates that the plan told when it was chosen.", Records: append(planRecords(d), counted(d)...), Change: byEntry},
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
