package sources

import (
	"net/url"
	"slices"
	"strings"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/internal/desk"
	"eyeup/internal/garden"
	"eyeup/internal/reckon"
	"eyeup/keeping"
	"eyeup/place"
	"eyeup/stock"
)

// Basis say what one figure on a page rests on, or figures of one sort.
type Basis struct {
	Key     string // by which the page links them
	Of      string // the figure
	Made    string // what it is made of
	Model   string // how it is reckoned, with the model's source; empty where it is only counted
	Records []Record
	Assumed []string              // what is taken for granted
	Figures []reckon.FigureAnswer // each with its source
	Change  Record                // where it can be changed; says nothing where it can't be
}

// Record is something that was written down or measured, or a page that shows it.
type Record struct {
	Says string
	On   civil.Date // when; none where that is not said
	At   Where      // the page that shows it; the zero value where none does
}

// Key puts a key of grounds together: of what they are, and of which place or kind.
// It can stand in an address.
func Key(parts ...string) string {
	escaped := make([]string, len(parts))
	for i, p := range parts {
		escaped[i] = url.PathEscape(p)
	}
	return strings.Join(escaped, "-")
}

// Where what figures rest on can be changed.
var (
	byEntry   = Record{Says: "write an entry, or undo one, on the lot's page", At: at(StockByLot)}
	byRound   = Record{Says: "go through the store, or weigh: it then counts before the model", At: at(Rounds)}
	byChange  = Record{Says: "another level, risk, price or count, to see what comes of it", At: at(Change)}
	byGarden  = Record{Says: "how the garden is described", At: at(Described)}
	byFigures = Record{Says: "your own figure of a kind in the place of this: under figures of your own, in the garden's description", At: part("figures")}
)

// counted is the record that counts of stock rest on.
func counted(d *desk.Desk) []Record {
	says := "every entry, with who wrote it"
	if kept := d.Kept(); kept != "" {
		says += ", in " + kept
	}
	return []Record{{Says: says, At: at(Log)}}
}

// How counts of stock come about.
const foldModel = "Entries are folded in the order in which things happened. A whole round sets the count to what was found; a packet of seed counts as one."

// recordOf is an entry as a record of a lot, or the lot itself where none is named.
func recordOf(l *stock.Lot, says string, on civil.Date, entry stock.ID) Record {
	return Record{says, on, Where{Page: Lot, Code: l.Code, Entry: entry}}
}

// planRecords name the plan and the entry by which it is followed.
func planRecords(d *desk.Desk) []Record {
	last := d.LastDecided()
	if last == nil {
		return []Record{{Says: "the season's usual plan; none is followed yet", At: at(Season)}}
	}
	return []Record{{Says: "the plan followed, by the entry of", On: last.On, At: at(Season)}}
}

// described is a record of what the garden's description says.
func described(what string) Record {
	return Record{Says: what + ", in the garden's description", At: at(Described)}
}

// addStored adds the figures by which a stock in store dries, once each.
func (g *Basis) addStored(s keeping.Stock) {
	for _, f := range reckon.FigureAnswers(keeping.FiguresOf(s)) {
		g.add(f)
	}
}

// addPlace adds the figures of a covered place.
func (g *Basis) addPlace(garden *garden.Garden, name string) {
	p, known := garden.Place(name)
	if !known { // a warm bench is a place of the plan alone
		return
	}
	house, covered := p.Model.(place.Covered)
	if !covered {
		return
	}
	g.addUsed((&reckon.Heating{Covered: &house}).Figures())
}

// addUsed adds figures of a place, but for the usual changes of air: those of the garden's own
// description count.
func (g *Basis) addUsed(figures []reckon.FigureAnswer) {
	for _, f := range figures {
		if !strings.HasSuffix(f.Key, ".changes") {
			g.add(f)
		}
	}
}

// addKind adds figures of a kind, the kind's name before their meaning.
func (g *Basis) addKind(k *culture.Kind, keys ...string) {
	for _, f := range reckon.FiguresOf(k, keys) {
		f.Key, f.Meaning = k.Name+" "+f.Key, k.Name+", "+f.Meaning
		g.add(f)
	}
}

// add adds a figure once.
func (g *Basis) add(f reckon.FigureAnswer) {
	if !slices.ContainsFunc(g.Figures, func(has reckon.FigureAnswer) bool { return has.Key == f.Key }) {
		g.Figures = append(g.Figures, f)
	}
}
