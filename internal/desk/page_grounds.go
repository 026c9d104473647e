package desk

import (
	"fmt"
	"slices"

	"eyeup/civil"
	"eyeup/keeping"
	"eyeup/stock"
)

// Grounds say what figures on a page rest on.
type Grounds struct {
	Of      string // the figures
	Records []Record
	Model   string         // how they are reckoned
	Assumed []string       // what is taken for granted
	Figures []FigureAnswer // each with its source
}

// Record is something that was written down or measured.
type Record struct {
	Says string
	On   civil.Date // when; none where that is not said
	At   string     // the page that shows it; empty where none does
}

// recordOf is an entry as a record of a lot, or the lot itself where none is named.
func recordOf(l *stock.Lot, says string, on civil.Date, entry stock.ID) Record {
	if entry.IsZero() {
		return Record{says, on, "/stock/" + string(l.Code)}
	}
	return Record{says, on, fmt.Sprintf("/stock/%s#%s", l.Code, entry)}
}

const keepingModel = "Each day a lot loses weight through its skin in step with how far the store's air is from the air at the skin, less by as much as its packing holds back, and something whatever the air. The middle is even odds; the range holds eight times in ten."

// GroundsOfRounds say what the figures of all stores' rounds rest on.
func GroundsOfRounds() Grounds {
	return Grounds{
		Of:      "weight lost, and what was found",
		Records: []Record{{Says: "rounds, packings and moves, entry by entry: see each crate"}, {Says: "the air of each store, as the garden describes it", At: "/garden"}},
		Model:   keepingModel,
		Assumed: []string{"A crate is shown by the lot in it that has lost most. Where it was weighed twice, the scales count and not the model.", "A round is due four weeks after the last: common practice."},
	}
}

// GroundsOfCrate say what the figures of one crate rest on.
func (d *Desk) GroundsOfCrate(place string, held []Held) Grounds {
	g := Grounds{Of: "weight lost", Model: keepingModel}
	shelf := d.Shelf()
	for _, h := range held {
		l := &shelf.Lots[h.Lot]
		if h.Pack != "" {
			g.Records = append(g.Records, recordOf(l, l.Name()+": packed in "+h.Pack+", here since", h.Since, h.Packed))
		} else {
			g.Records = append(g.Records, recordOf(l, l.Name()+": here since", h.Since, stock.ID{}))
			g.Assumed = addOnce(g.Assumed, "Where the book does not say what stock is packed in, it is taken to be vermiculite.")
		}
		if r := h.Round(); r != nil {
			g.Records = append(g.Records, recordOf(l, l.Name()+": last round on", r.On, r.Entry))
		}
		g.addFigures(keeping.Stock{Kind: l.Kind, Form: string(h.Spot.Form), Pack: h.Pack})
	}
	if p, known := d.Site().Place(place); known {
		g.Records = append(g.Records, Record{Says: "the air of " + p.Name + ", as the garden describes it", At: "/garden"})
	} else {
		g.Assumed = addOnce(g.Assumed, "The garden does not describe "+place+": its air is taken as is usual for the kind.")
	}
	return g
}

// addFigures adds what the reckoning of a stock rests on, once each.
func (g *Grounds) addFigures(s keeping.Stock) {
	for _, f := range figureAnswers(keeping.FiguresOf(s)) {
		g.add(f)
	}
}

func addOnce(all []string, one string) []string {
	if slices.Contains(all, one) {
		return all
	}
	return append(all, one)
}
