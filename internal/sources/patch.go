package sources

import (
	"eyeup/internal/desk"
)

// OfPatch says where the figures of the planting list come from. c is nil where the garden asks for no
// list.
func OfPatch(d *desk.Desk, c *desk.Chosen, kinds []string) []Basis {
	wanted := Record{Says: "each variety's description: wanted, reserve", At: at(StockByLot)}
	all := []Basis{
		{Key: "ground", Of: "the patch in its fullest week", Made: "The room that all batches of the plan take in open ground, at their spacing.", Records: append(planRecords(d), described("the patch and its spacing")), Change: byGarden},
		{Key: "wanted", Of: "wanted and reserve", Made: "How many you want in the patch, and how many you keep as insurance.", Records: []Record{wanted}, Change: Record{Says: "change it on a lot's page", At: at(StockByLot)}},
		{Key: "hand", Of: "in hand and planted", Made: "What the book counts; of seed it counts packets. Planted is what is in open ground.", Model: foldModel, Records: counted(d), Change: byEntry},
		{Key: "raised", Of: "raised", Made: "How many the plan starts of the variety, over all its lots.", Records: planRecords(d), Change: byChange},
		{Key: "over", Of: "over and short", Made: "What is in hand, less wanted and reserve: to give away or sell. Of seed, what is raised, less wanted and reserve.", Records: append(counted(d), wanted), Change: byEntry},
		{Key: "beds", Of: "what stands in beds and rows", Made: "What the book has in open ground.", Model: foldModel, Records: counted(d), Change: byEntry},
	}
	if c == nil {
		return all
	}
	return append(all, ofChosen(d, c, kinds)...)
}

// ofChosen says where the planting list that the garden asks for comes from.
func ofChosen(d *desk.Desk, c *desk.Chosen, kinds []string) []Basis {
	brief := Record{Says: "your wishes for the patch, in the garden's description", At: part("patch")}
	count := Basis{Key: "counted", Of: "in hand, and clumps to cut", Made: "How many plants you get in nine cases of ten, and in one case of ten, if all clumps are divided. Clumps to cut: as many as it takes to have enough plants in nine cases of ten.",
		Model: throughModel, Records: append(counted(d), Record{Says: "rounds and dividings", At: at(Rounds)}), Assumed: c.Assumed, Change: byRound}
	for _, kind := range kinds {
		if k, known := d.Site().Kind(kind); known {
			count.addKind(k, "store.success", "divide.pieces")
		}
	}
	return []Basis{
		{Key: "places", Of: "places, kept back, over and short", Made: "How many places in the patch each variety gets, how many plants are kept in reserve, and how many are then left over or missing.", Model: c.Note,
			Records: []Record{brief, {Says: "plants expected", At: here("counted")}, described("the patch and its spacing")}, Change: byGarden},
		count,
		{Key: "mix", Of: "the mix you wished", Made: "The share of a kind's places that goes to each colour, flower, height or timing.", Records: []Record{brief}, Change: byGarden},
	}
}
