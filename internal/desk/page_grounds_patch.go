package desk

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
	brief := Record{Says: "what is wished for the patch, in the garden's description", At: "/garden?part=patch#garden/patch"}
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
