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

// Basis says where one figure on a page comes from, or several figures of one sort.
type Basis struct {
	Key     string // the page links a figure to its Basis by this key
	Of      string // the figure's name
	Made    string // how the figure is defined
	Model   string // how it is worked out, with the model's source; empty where it is only counted
	Records []Record
	Assumed []string              // assumptions
	Figures []reckon.FigureAnswer // figures of the model, each with its source
	Change  Record                // where it can be changed; the zero value where it can't be
}

// Record is something that was written down or measured, or a page that shows it.
type Record struct {
	Says string
	On   civil.Date // its date; zero for none
	At   Where      // the page that shows it; the zero value for none
}

// Key joins the parts of a Basis's key: what the figure is, and of which place or kind. The key is
// escaped, so that it can stand in a web address.
func Key(parts ...string) string {
	escaped := make([]string, len(parts))
	for i, p := range parts {
		escaped[i] = url.PathEscape(p)
	}
	return strings.Join(escaped, "-")
}

// Where the inputs of a figure can be changed.
var (
	byEntry   = Record{Says: "write an entry, or undo one, on the lot's page", At: at(StockByLot)}
	byRound   = Record{Says: "go through the store, or weigh: what you find replaces what the model says", At: at(Rounds)}
	byChange  = Record{Says: "try another level, risk, price or count and see what the plans become", At: at(Change)}
	byGarden  = Record{Says: "how the garden is described", At: at(Described)}
	byFigures = Record{Says: "replace it with your own figure: under figures of your own, in the garden's description", At: part("figures")}
)

// counted is the record that counts of stock come from: the log.
func counted(d *desk.Desk) []Record {
	says := "every entry, with who wrote it"
	if kept := d.Kept(); kept != "" {
		says += ", in " + kept
	}
	return []Record{{Says: says, At: at(Log)}}
}

// foldModel says how the book counts stock.
const foldModel = "Entries are added up in the order in which things happened. A round of all sets the count to what was found. A packet of seed counts as one."

// recordOf is an entry in the life of a lot as a record; for the zero entry, the lot itself.
func recordOf(l *stock.Lot, says string, on civil.Date, entry stock.ID) Record {
	return Record{says, on, Where{Page: Lot, Code: l.Code, Entry: entry}}
}

// planRecords name the plan, and the entry by which it is followed.
func planRecords(d *desk.Desk) []Record {
	last := d.LastDecided()
	if last == nil {
		return []Record{{Says: "the season's usual plan; you follow none yet", At: at(Season)}}
	}
	return []Record{{Says: "the plan you follow, by your entry of", On: last.On, At: at(Season)}}
}

// described is a part of the garden's description as a record.
func described(what string) Record {
	return Record{Says: what + ", in the garden's description", At: at(Described)}
}

// addStored adds the figures by which stock in store dries, each once.
func (g *Basis) addStored(s keeping.Stock) {
	for _, f := range reckon.FigureAnswers(keeping.FiguresOf(s)) {
		g.add(f)
	}
}

// addPlace adds the figures of a covered place.
func (g *Basis) addPlace(garden *garden.Garden, name string) {
	p, known := garden.Place(name)
	if !known { // a warm bench is a place of the plan, not of the garden
		return
	}
	house, covered := p.Model.(place.Covered)
	if !covered {
		return
	}
	g.addUsed((&reckon.Heating{Covered: &house}).Figures())
}

// addUsed adds figures of a place, without the usual air changes: the garden's own description replaces
// those.
func (g *Basis) addUsed(figures []reckon.FigureAnswer) {
	for _, f := range figures {
		if !strings.HasSuffix(f.Key, ".changes") {
			g.add(f)
		}
	}
}

// addKind adds figures of a kind, with the kind's name before their meaning.
func (g *Basis) addKind(k *culture.Kind, keys ...string) {
	for _, f := range reckon.FiguresOf(k, keys) {
		f.Key, f.Meaning = k.Name+" "+f.Key, k.Name+", "+f.Meaning
		g.add(f)
	}
}

// add adds a figure, unless it was added before.
func (g *Basis) add(f reckon.FigureAnswer) {
	if !slices.ContainsFunc(g.Figures, func(has reckon.FigureAnswer) bool { return has.Key == f.Key }) {
		g.Figures = append(g.Figures, f)
	}
}
