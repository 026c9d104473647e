package sources

import (
	"eyeup/internal/desk"
)

// OfPatch say what the figures of the planting list rest on; c is nil where no list is
// asked for.
func OfPatch(d *desk.Desk, c *desk.Chosen, kinds []string) []Basis {
	wanted := Record{Says: "what each variety is described with: wanted, reserve", At: at(StockByLot)}
	all := []Basis{
		{Key: "ground", Of: "the patch in its fullest week", Made: "The room that all batches take in open ground by the plan, at their spacing.", Records: append(planRecords(d), described("the patch and its spacing")), Change: byGarden},
		{Key: "wanted", Of: "wanted and reserve", Made: "How many are to stand in the patch, and how many are kept back as insurance.", Records: []Record{wanted}, Change: Record{Says: "say it on a lot's page", At: at(StockByLot)}},
		{Key: "hand", Of: "in hand and planted", Made: "What the book counts, packets for seed; planted is what stands in open ground.", Model: foldModel, Records: counted(d), Change: byEntry},
		{Key: "raised", Of: "raised", Made: "What the plan starts of the variety, of all its lots.", Records: planRecords(d), Change: byChange},
		{Key: "over", Of: "over and short", Made: "In hand beyond wanted and reserve, to give away or sell; of seed, what is raised beyond them.", Records: append(counted(d), wanted), Change: byEntry},
		{Key: "beds", Of: "what stands in beds and rows", Made: "What the book has in open ground.", Model: foldModel, Records: counted(d), Change: byEntry},
	}
	if c == nil {
		return all
	}
	return append(all, ofChosen(d, c, kinds)...)
}

// ofChosen say what the planting list that the garden asks for rests on.
func ofChosen(d *desk.Desk, c *desk.Chosen, kinds []string) []Basis {
	brief := Record{Says: "what is wished for the patch, in the garden's description", At: part("patch")}
	count := Basis{Key: "counted", Of: "in hand, and clumps to cut", Made: "The plants that nine cases in ten and one case in ten give, were all clumps cut; and the clumps to cut so that there are enough in nine cases of ten.",
		Model: throughModel, Records: append(counted(d), Record{Says: "rounds and dividings", At: at(Rounds)}), Assumed: c.Assumed, Change: byRound}
	for _, kind := range kinds {
		if k, known := d.Site().Kind(kind); known {
			count.addKind(k, "store.success", "divide.pieces")
		}
	}
	return []Basis{
		{Key: "places", Of: "places, kept back, over and short", Made: "How many places of the patch each variety gets, what is kept back, and what is left over or lacking then.", Model: c.Note,
			Records: []Record{brief, {Says: "plants to count on", At: here("counted")}, described("the patch and its spacing")}, Change: byGarden},
		count,
		{Key: "mix", Of: "the mix you wished", Made: "The share of the places of a kind that go to each colour, flower, height or timing.", Records: []Record{brief}, Change: byGarden},
	}
}
