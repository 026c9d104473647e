package desk

import "eyeup/season"

const (
	oddsModel = "The share of the record's springs with a freeze, at or below 0 °C (32 °F), later than the day; the range is where the true odds lie four times in five, as far as so many springs can tell (Jeffreys)."
	datesAre  = "Quantiles over the years of the record (type 8 of Hyndman & Fan 1996). A year in which too many days are missing is left out; a year without a freeze counts."
)

// GroundsOfFrost say what the odds and dates of frost rest on.
func (d *Desk) GroundsOfFrost(a *FrostAnswer) []Grounds {
	records, assumed := d.Site().weatherRecords(), []string{a.Note, noForecast}
	return []Grounds{
		{Key: "odds", Of: "the odds of one more freeze", Made: "In how many springs of the record it froze later than the day.", Model: oddsModel, Records: records, Assumed: assumed, Change: byGarden},
		{Key: "dates", Of: "frost dates", Made: "The last freeze of each spring and the first of each autumn, and the days between.", Model: datesAre, Records: records, Assumed: assumed, Change: byGarden},
		{Key: "planting", Of: "plant out after", Made: "The first day after which a freeze comes in no more of the springs than the risk.", Model: datesAre, Records: records, Assumed: assumed, Change: byGarden},
		{Key: "year", Of: "the typical year", Made: "Means of each month's daily lows and highs, year by year; the coldest of all; and how many days are at or below freezing, in the mean of the years. Days without a low or a high are left out.", Records: records, Assumed: []string{noForecast}, Change: byGarden},
	}
}

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
	for _, jobs := range [][]WeekJob{w.Late, w.Due} {
		for _, j := range jobs {
			kinds = addOnce(kinds, j.Kind)
		}
	}
	return kinds
}

// GroundsOfPatch say what the figures of the planting list rest on; c is nil where no list is
// asked for.
func (d *Desk) GroundsOfPatch(c *Chosen, kinds []string) []Grounds {
	wanted := Record{Says: "what each variety is described with: wanted, reserve", At: "/stock?by=lot"}
	all := []Grounds{
		{Key: "ground", Of: "the patch in its fullest week", Made: "The room that all batches take in open ground by the plan, at their spacing.", Records: append(d.planRecords(), described("the patch and its spacing")), Change: byGarden},
		{Key: "wanted", Of: "wanted and reserve", Made: "How many are to stand in the patch, and how many are kept back as insurance.", Records: []Record{wanted}, Change: Record{Says: "say it on a lot's page", At: "/stock?by=lot"}},
		{Key: "hand", Of: "in hand and planted", Made: "What the book counts, packets for seed; planted is what stands in open ground.", Model: foldModel, Records: d.counted(), Change: byEntry},
		{Key: "raised", Of: "raised", Made: "What the plan starts of the variety, of all its lots.", Records: d.planRecords(), Change: byChange},
		{Key: "over", Of: "over and short", Made: "In hand beyond wanted and reserve, to give away or sell; of seed, what is raised beyond them.", Records: append(d.counted(), wanted), Change: byEntry},
		{Key: "beds", Of: "what stands in beds and rows", Made: "What the book has in open ground.", Model: foldModel, Records: d.counted(), Change: byEntry},
	}
	if c == nil {
		return all
	}
	return append(all, d.groundsOfChosen(c, kinds)...)
}

// groundsOfChosen say what the planting list that the garden asks for rests on.
func (d *Desk) groundsOfChosen(c *Chosen, kinds []string) []Grounds {
	brief := Record{Says: "what is wished for the patch, [patch] in the garden's description", At: "/garden"}
	count := Grounds{Key: "counted", Of: "in hand, and clumps to cut", Made: "The plants that nine cases in ten and one case in ten give, were all clumps cut; and the clumps to cut so that there are enough in nine cases of ten.",
		Model: throughModel, Records: append(d.counted(), Record{Says: "rounds and dividings", At: "/rounds"}), Assumed: c.Assumed, Change: byRound}
	for _, kind := range kinds {
		if k, known := d.Site().kind(kind); known {
			count.addKind(k, "store.success", "divide.pieces")
		}
	}
	return []Grounds{
		{Key: "places", Of: "places, kept back, over and short", Made: "How many places of the patch each variety gets, what is kept back, and what is left over or lacking then.", Model: c.Note,
			Records: []Record{brief, {Says: "plants to count on", At: "#why-counted"}, described("the patch and its spacing")}, Change: byGarden},
		count,
		{Key: "mix", Of: "the mix you wished", Made: "The share of the places of a kind that go to each colour, flower, height or timing.", Records: []Record{brief}, Change: byGarden},
	}
}

// groundsOfBatches say, kind by kind, which figures the dates and benches of batches rest on.
func (d *Desk) groundsOfBatches(plan *season.Plan, assumed []season.Assumption) []Grounds {
	var kinds []string
	for _, b := range plan.Batches {
		kinds = addOnce(kinds, b.Kind)
	}
	var all []Grounds
	for _, kind := range kinds {
		k, known := d.Site().kind(kind)
		if !known {
			continue
		}
		g := Grounds{Key: GroundsKey("kind", kind), Of: kind, Made: "The figures of the kind that its dates and its bench rest on most.",
			Records: []Record{{Says: "what is known of the kind, with every source: eyeup reckon culture --why " + kind}}, Change: byFigures}
		for _, a := range assumed {
			if a.Kind == kind {
				g.Assumed = append(g.Assumed, a.What+" ("+a.Sure+")")
			}
		}
		g.addKind(k, "start.weeks", "sprout.base", "sprout.sum", "sprout.never", "flower.early", "flower.mid", "flower.late", "plant.harden", "plant.check", "bench.tight", "bench.spaced")
		all = append(all, g)
	}
	return all
}
