package desk

import "eyeup/week"

// GroundsOfWeek say what the jobs of a week rest on.
func (d *Desk) GroundsOfWeek(w *Week) []Grounds {
	records := append(d.planRecords(), Record{Says: "what stands in pots, trays and the ground, by the book", At: "/stock"})
	all := []Grounds{
		{Key: "jobs", Of: "how many, and in which week", Made: "Those that the plan takes this step with in the week, by the middle dates over the years, less those of which the book tells that it is done.", Model: growModel, Records: records,
			Assumed: []string{"A job counts as done as far as the book tells. That something was hardened it can't tell, so that is never called late."}, Change: byChange},
		{Key: "round", Of: "rounds", Made: "When the store was last gone through, and how many stand there.", Records: []Record{{Says: "rounds gone", At: "/rounds"}}, Assumed: []string{roundDue}, Change: byRound},
		{Key: "late", Of: "later than was told", Made: "The day on which half of what the plan raises had come so far, held against the dates that the plan told when it was chosen.", Records: append(d.planRecords(), d.counted()...), Change: byEntry},
	}
	for _, kind := range kindsOfJobs(w) {
		if k, known := d.Site().kind(kind); known {
			g := Grounds{Key: GroundsKey("minutes", kind), Of: "how long it takes: " + kind, Made: "Minutes for one, times how many are left.", Records: d.planRecords(), Change: byFigures}
			g.addKind(k, "work.")
			all = append(all, g)
		}
	}
	return all
}

func kindsOfJobs(w *Week) []string {
	var kinds []string
	for _, jobs := range [][]week.JobState{w.Late, w.Due} {
		for _, j := range jobs {
			kinds = addOnce(kinds, j.Kind)
		}
	}
	return kinds
}
