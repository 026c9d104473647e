package sources

import (
	"eyeup/internal/desk"
	"eyeup/internal/reckon"
	"eyeup/internal/report"
	"eyeup/internal/stockbook"
	"eyeup/keeping"
	"eyeup/stock"
)

const (
	keepingModel = "Each day a lot loses weight through its skin, in proportion to the vapour-pressure deficit of the store's air. Packing lowers the loss; a small part does not depend on the air. The middle has even odds; the range holds eight times in ten."
	throughModel = "Survival is worked out from a hazard by warmth and wet, updated with the lot's own rounds. Each variety is pooled with its kind (beta-binomial), and good divisions with what is usual (gamma-Poisson)."
	growModel    = "Thermal time, hour by hour, from start to shoots; then growth by three cardinal temperatures after Yan & Hunt 1999, slowed by small pots, short days and poor light. The middle plant is followed through every year of the record, place by place. The middle date has even odds, with one year in ten sooner and one later."

	roundDue = "A round is due four weeks after the last: common practice."
	whichDry = "A crate shows the lot in it that has lost most. Where it was weighed twice, the weighings replace the model."
)

// OfStock says where counts of stock come from.
func OfStock(d *desk.Desk) []Basis {
	return []Basis{{Key: "count", Of: "counts of stock", Made: "All individuals that are left by the book.", Model: foldModel, Records: counted(d), Change: byEntry}}
}

// OfRounds says where the figures on the page of rounds come from.
func OfRounds(d *desk.Desk) []Basis {
	rounds := []Record{{Says: "rounds, entry by entry: see each crate"}}
	return []Basis{
		{Key: "there", Of: "how many there are, and when a round is due", Made: "All individuals that the book has in the crate. Since the round: what came or went after it.", Model: foldModel, Records: counted(d), Assumed: []string{roundDue}, Change: byEntry},
		{Key: "found", Of: "what rounds found", Made: "How many of those looked at were wrinkled, and how many soft or lost, in the last round and the one before.", Records: rounds, Change: byRound},
		ofWeight(d, []Record{{Says: "packings, moves and weighings, entry by entry: see each crate"}, described("the air of each store")}),
		{Key: "tells", Of: "where a round would tell you most", Made: "The lots whose number alive is least certain.", Model: throughModel, Records: rounds, Change: byRound},
	}
}

// ofWeight says where the weight lost in store comes from, without the figures of a lot.
func ofWeight(d *desk.Desk, records []Record) Basis {
	return Basis{Key: "weight", Of: "weight lost", Made: "The share of its weight that the stock has lost since it was packed or moved here, and the share at which skin wrinkles.", Model: keepingModel, Records: records, Assumed: []string{whichDry}, Change: byRound}
}

// OfCrate says where the figures of one crate come from.
func OfCrate(d *desk.Desk, place string, held []desk.Held) []Basis {
	weight := ofWeight(d, nil)
	found := Basis{Key: "found", Of: "what rounds found", Made: "How many of those looked at were wrinkled, and how many soft or lost.", Change: byRound}
	shelf := d.Shelf()
	for _, h := range held {
		l := &shelf.Lots[h.Lot]
		weight.addHeld(l, h)
		if r := h.Round(); r != nil {
			found.Records = append(found.Records, recordOf(l, l.Name()+": last round on", r.On, r.Entry))
		}
	}
	if len(found.Records) == 0 {
		found.Records = []Record{{Says: "this crate was never gone through"}}
	}
	if p, known := d.Site().Place(place); known {
		weight.Records = append(weight.Records, described("the air of "+p.Name))
	} else {
		weight.Assumed = report.AddOnce(weight.Assumed, "The garden does not describe "+place+", so the usual air for the kind is assumed.")
	}
	there := Basis{Key: "there", Of: "how many there are", Made: "All individuals that the book has in the crate.", Model: foldModel, Records: counted(d), Change: byEntry}
	return []Basis{there, found, weight}
}

// addHeld adds the record of stock in a crate, and the figures by which it dries.
func (g *Basis) addHeld(l *stock.Lot, h desk.Held) {
	if h.Pack != "" {
		g.Records = append(g.Records, recordOf(l, l.Name()+": packed in "+h.Pack+", here since", h.Since, h.Packed))
	} else {
		g.Records = append(g.Records, recordOf(l, l.Name()+": here since", h.Since, stock.ID{}))
		g.Assumed = report.AddOnce(g.Assumed, "Where the book does not say what stock is packed in, vermiculite is assumed.")
	}
	g.addStored(keeping.Stock{Kind: l.Kind, Form: string(h.Spot.Form), Pack: h.Pack})
}

// OfLot says where the figures of a lot's future come from: dates, weight and good divisions.
func OfLot(d *desk.Desk, l *stock.Lot, o *stockbook.OutlookAnswer) []Basis {
	all := append(OfStock(d), ofNext(d, l)...)
	weight := ofWeight(d, []Record{described("the air of its store")})
	weight.Assumed = []string{"Where it was weighed twice, the weighings replace the model."}
	for _, s := range l.Standing {
		if reckon.IsDormant(s.Spot.Form) {
			weight.Records = append(weight.Records, recordOf(l, packedWords(s), s.Since, s.Packed))
			weight.addStored(keeping.Stock{Kind: l.Kind, Form: string(s.Spot.Form), Pack: s.Pack})
		}
	}
	good := Basis{Key: "good", Of: "good divisions expected", Made: "Clumps that survive storage, times the good divisions each gives, and the odds that they are enough for what is wanted and in reserve.", Model: throughModel,
		Records: append(counted(d), Record{Says: "rounds and dividings of this variety and its kind", At: at(Rounds)}), Change: byRound}
	if o != nil {
		good.Assumed = append(append(good.Assumed, o.Assumed...), o.Note)
	}
	if k, known := d.Site().Kind(l.Kind); known {
		good.addKind(k, "store.success", "divide.pieces")
	}
	return append(all, weight, good)
}

// ofNext says where the dates of a lot's batches come from.
func ofNext(d *desk.Desk, l *stock.Lot) []Basis {
	records := append(planRecords(d), weatherRecords(d.Site())...)
	start := Basis{Key: "start", Of: "when to start, and how many", Made: "The week in which the plan starts the batch: what gains most flower from the room, work and heat there is.", Records: planRecords(d), Change: byChange}
	up := Basis{Key: "up", Of: "up", Made: "When half of those that come up are up.", Model: growModel, Records: records, Change: byFigures}
	out := Basis{Key: "out", Of: "planted out", Made: "When it is large enough and hardened, the soil is warm enough, and the odds of frost are no more than you accept.", Model: growModel, Records: append(records, described("the risk accepted")), Change: byChange}
	flower := Basis{Key: "flower", Of: "first flower", Made: "When the middle plant shows its first flower or fruit.", Model: growModel, Records: records, Change: byFigures}
	if k, known := d.Site().Kind(l.Kind); known {
		start.addKind(k, "start.weeks", "start.warmth")
		up.addKind(k, "sprout.")
		out.addKind(k, "plant.ready", "plant.harden", "plant.soil", "cold.")
		flower.addKind(k, "flower.early", "flower.mid", "flower.late", "grow.base", "grow.best", "pot.", "day.", "light.", "plant.check")
	}
	return []Basis{start, up, out, flower}
}
