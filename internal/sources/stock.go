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
	keepingModel = "Each day a lot loses weight through its skin in step with how far the store's air is from the air at the skin (its vapour-pressure deficit), less by as much as its packing holds back, and something whatever the air. The middle is even odds; the range holds eight times in ten."
	throughModel = "What comes through is a hazard by warmth and wet, with the lot's own rounds folded in, each variety pulled towards its kind (beta-binomial); good divisions are pulled in the same way towards what is usual (gamma-Poisson)."
	growModel    = "Sums of warmth, hour by hour, from start to shoots; then growth by three cardinal temperatures after Yan & Hunt 1999, held back by small pots, short days and poor light. The middle plant is led so through every year of the record, place by place. The middle date is even odds, with one year in ten sooner and one later."

	roundDue = "A round is due four weeks after the last: common practice."
	whichDry = "A crate is shown by the lot in it that has lost most. Where it was weighed twice, the scales count and not the model."
)

// OfStock say what counts of stock rest on.
func OfStock(d *desk.Desk) []Basis {
	return []Basis{{Key: "count", Of: "counts of stock", Made: "All individuals of which the book knows that they are left.", Model: foldModel, Records: counted(d), Change: byEntry}}
}

// OfRounds say what the figures of all stores' rounds rest on.
func OfRounds(d *desk.Desk) []Basis {
	rounds := []Record{{Says: "rounds, entry by entry: see each crate"}}
	return []Basis{
		{Key: "there", Of: "how many there are, and when a round is due", Made: "All individuals that the book has in the crate; since the round: what came or went after it.", Model: foldModel, Records: counted(d), Assumed: []string{roundDue}, Change: byEntry},
		{Key: "found", Of: "what rounds found", Made: "Of those looked at in the last round, and in the round before, how many were wrinkled, and how many soft or lost.", Records: rounds, Change: byRound},
		ofWeight(d, []Record{{Says: "packings, moves and weighings, entry by entry: see each crate"}, described("the air of each store")}),
		{Key: "tells", Of: "where a round would tell most", Made: "The lots of which it is least sure how many are alive.", Model: throughModel, Records: rounds, Change: byRound},
	}
}

// ofWeight say what the weight lost in store rests on, but for the figures of a lot.
func ofWeight(d *desk.Desk, records []Record) Basis {
	return Basis{Key: "weight", Of: "weight lost", Made: "The share of its weight that the stock has lost since it was packed or came here, and from when skin wrinkles.", Model: keepingModel, Records: records, Assumed: []string{whichDry}, Change: byRound}
}

// OfCrate say what the figures of one crate rest on.
func OfCrate(d *desk.Desk, place string, held []desk.Held) []Basis {
	weight := ofWeight(d, nil)
	found := Basis{Key: "found", Of: "what rounds found", Made: "Of those looked at, how many were wrinkled, and how many soft or lost.", Change: byRound}
	shelf := d.Shelf()
	for _, h := range held {
		l := &shelf.Lots[h.Lot]
		weight.addHeld(l, h)
		if r := h.Round(); r != nil {
			found.Records = append(found.Records, recordOf(l, l.Name()+": last round on", r.On, r.Entry))
		}
	}
	if len(found.Records) == 0 {
		found.Records = []Record{{Says: "no round was gone here yet"}}
	}
	if p, known := d.Site().Place(place); known {
		weight.Records = append(weight.Records, described("the air of "+p.Name))
	} else {
		weight.Assumed = report.AddOnce(weight.Assumed, "The garden does not describe "+place+": its air is taken as is usual for the kind.")
	}
	there := Basis{Key: "there", Of: "how many there are", Made: "All individuals that the book has in the crate.", Model: foldModel, Records: counted(d), Change: byEntry}
	return []Basis{there, found, weight}
}

// addHeld adds the record of what stands in store, and the figures by which it dries.
func (g *Basis) addHeld(l *stock.Lot, h desk.Held) {
	if h.Pack != "" {
		g.Records = append(g.Records, recordOf(l, l.Name()+": packed in "+h.Pack+", here since", h.Since, h.Packed))
	} else {
		g.Records = append(g.Records, recordOf(l, l.Name()+": here since", h.Since, stock.ID{}))
		g.Assumed = report.AddOnce(g.Assumed, "Where the book does not say what stock is packed in, it is taken to be vermiculite.")
	}
	g.addStored(keeping.Stock{Kind: l.Kind, Form: string(h.Spot.Form), Pack: h.Pack})
}

// OfLot say what is told of a lot's time to come, figure by figure.
func OfLot(d *desk.Desk, l *stock.Lot, o *stockbook.OutlookAnswer) []Basis {
	all := append(OfStock(d), ofNext(d, l)...)
	weight := ofWeight(d, []Record{described("the air of its store")})
	weight.Assumed = []string{"Where it was weighed twice, the scales count and not the model."}
	for _, s := range l.Standing {
		if reckon.IsDormant(s.Spot.Form) {
			weight.Records = append(weight.Records, recordOf(l, packedWords(s), s.Since, s.Packed))
			weight.addStored(keeping.Stock{Kind: l.Kind, Form: string(s.Spot.Form), Pack: s.Pack})
		}
	}
	good := Basis{Key: "good", Of: "good divisions to count on", Made: "Clumps that come through, times the good divisions each gives; and the odds that they suffice for what is wanted and kept in reserve.", Model: throughModel,
		Records: append(counted(d), Record{Says: "rounds and dividings of this variety and its kind", At: at(Rounds)}), Change: byRound}
	if o != nil {
		good.Assumed = append(append(good.Assumed, o.Assumed...), o.Note)
	}
	if k, known := d.Site().Kind(l.Kind); known {
		good.addKind(k, "store.success", "divide.pieces")
	}
	return append(all, weight, good)
}

// ofNext say what the dates of a lot's batches rest on.
func ofNext(d *desk.Desk, l *stock.Lot) []Basis {
	records := append(planRecords(d), weatherRecords(d.Site())...)
	start := Basis{Key: "start", Of: "when to start, and how many", Made: "The week in which the plan starts the batch: what gains most of the room, hands and heat there are.", Records: planRecords(d), Change: byChange}
	up := Basis{Key: "up", Of: "up", Made: "When half of those that come up are up.", Model: growModel, Records: records, Change: byFigures}
	out := Basis{Key: "out", Of: "planted out", Made: "When it is fit for planting out, hardened, the soil warm enough, and frost no likelier than you accept.", Model: growModel, Records: append(records, described("the risk accepted")), Change: byChange}
	flower := Basis{Key: "flower", Of: "first flower", Made: "When the middle plant shows its first flower or fruit.", Model: growModel, Records: records, Change: byFigures}
	if k, known := d.Site().Kind(l.Kind); known {
		start.addKind(k, "start.weeks", "start.warmth")
		up.addKind(k, "sprout.")
		out.addKind(k, "plant.ready", "plant.harden", "plant.soil", "cold.")
		flower.addKind(k, "flower.early", "flower.mid", "flower.late", "grow.base", "grow.best", "pot.", "day.", "light.", "plant.check")
	}
	return []Basis{start, up, out, flower}
}
