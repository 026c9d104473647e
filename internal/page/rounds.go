package page

import (
	"fmt"
	"html"
	"html/template"
	"net/http"
	"net/url"
	"slices"
	"strconv"

	"eyeup/civil"
	"eyeup/internal/desk"
	"eyeup/stock"
)

// roundsView is every store with its crates.
type roundsView struct {
	Shelf  *desk.Shelf
	Stores []storeView
}

// storeView is one store.
type storeView struct {
	desk.PlaceOnShelf
	Due    *desk.RoundDue
	Drawn  template.HTML
	Crates []crateRow // of this page
	All    int        // crates in all
	Page   int
	Pages  int
	Tells  []desk.OutlookRound // where a round would tell most
}

// crateRow is a crate with what its last rounds found.
type crateRow struct {
	desk.CrateOnShelf
	N     int // its number on this page, from 0
	Stood int // individuals now
	Seen  int // looked at in the last rounds
	Bad   int // of those, soft or lost
	Limp  int // of those, wrinkled
	Last  civil.Date
	Then  int                 // of those now there, how many there were when last counted
	Dry   []desk.OutlookCrate // weight lost so far
}

// Name names the crate or what stands outside of one.
func (c crateRow) Name() string {
	switch {
	case c.Crate != "":
		return "crate " + c.Crate
	case c.Bed != "":
		return "bed " + c.Bed
	}
	return "not in a crate"
}

// Since is how many came or went since the last rounds counted them.
func (c crateRow) Since() int { return c.Stood - c.Then }

// Worst is the share of those looked at that were soft or lost.
func (c crateRow) Worst() float64 {
	if c.Seen == 0 {
		return 0
	}
	return float64(c.Bad) / float64(c.Seen)
}

// crateRows gathers what stands in each crate, seed apart: nobody goes through packets.
func crateRows(p desk.PlaceOnShelf) []crateRow {
	var rows []crateRow
	for _, c := range p.Crates {
		c.Holdings = slices.DeleteFunc(slices.Clone(c.Holdings), func(h desk.Held) bool { return h.Spot.Form == stock.Seed })
		if len(c.Holdings) == 0 {
			continue
		}
		row := crateRow{CrateOnShelf: c, N: len(rows)}
		for _, h := range c.Holdings {
			row.add(h)
		}
		rows = append(rows, row)
	}
	return rows
}

// add counts what stands and what its last round found.
func (c *crateRow) add(h desk.Held) {
	c.Stood += h.Count
	g := h.Round
	if g == nil {
		c.Then += h.Count
		return
	}
	c.Seen += g.Firm + g.Wrinkled + g.Soft + g.Lost
	c.Bad += g.Soft + g.Lost
	c.Limp += g.Wrinkled
	if g.Whole {
		c.Then += g.Firm + g.Wrinkled + g.Soft
	} else {
		c.Then += h.Count // a sampled round counts nothing
	}
	if g.On.After(c.Last) {
		c.Last = g.On
	}
}

// rounds shows the stores by crate, shaded by what the last rounds found lost.
func (s *server) rounds(r *request) error {
	v := roundsView{Shelf: s.desk.Shelf()}
	outlook, err := s.desk.Outlook(s.today())
	if err != nil {
		outlook = nil // without it the page tells less
	}
	due := map[string]desk.RoundDue{}
	for _, d := range s.desk.RoundsDue(s.today()) {
		due[d.Place] = d
	}
	for _, p := range v.Shelf.Places {
		d, is := due[p.Name]
		if !is {
			continue
		}
		v.Stores = append(v.Stores, storeOf(r, p, d, outlook))
	}
	return s.show(r, http.StatusOK, "rounds", view{Title: "Rounds", Here: "rounds", Main: v})
}

// cratesOnPage is how many crates of a store are shown at once.
const cratesOnPage = 140

// storeOf makes one store ready to be shown: page tells which of its crates.
func storeOf(r *request, p desk.PlaceOnShelf, due desk.RoundDue, o *desk.OutlookAnswer) storeView {
	v := storeView{PlaceOnShelf: p, Due: &due, Crates: crateRows(p)}
	v.All = len(v.Crates)
	v.Page, v.Pages = pageNumber(r, v.All, cratesOnPage)
	v.Crates = v.Crates[(v.Page-1)*cratesOnPage : min(v.All, v.Page*cratesOnPage)]
	v.Drawn = drawCrates(p.Name, v.Crates)
	if o != nil {
		dry := map[string][]desk.OutlookCrate{}
		for _, c := range o.Crates {
			if c.Place == p.Name {
				dry[c.Crate] = append(dry[c.Crate], c)
			}
		}
		for i := range v.Crates {
			v.Crates[i].Dry = dry[v.Crates[i].Crate]
		}
		v.Tells = slices.DeleteFunc(slices.Clone(o.Rounds), func(c desk.OutlookRound) bool { return c.Place != p.Name })
	}
	return v
}

// Driest is the lot of the crate that has lost most of its weight; nil where none is known.
func (c crateRow) Driest() *desk.OutlookCrate {
	var most *desk.OutlookCrate
	for i := range c.Dry {
		if most == nil || c.Dry[i].Lost.Middle > most.Lost.Middle {
			most = &c.Dry[i]
		}
	}
	return most
}

// crateView is one crate, to be gone through.
type crateView struct {
	Place string
	crateRow
	Shelf *desk.Shelf
	Of    int
	Next  int // the crate after it; below nothing: none
	Past  []stock.Round
}

// crate shows one crate of a store: what stands in it, and a round to write of each.
func (s *server) crate(r *request) error {
	shelf := s.desk.Shelf()
	p, _ := shelf.Place(r.PathValue("place"))
	rows := crateRows(p)
	n, err := strconv.Atoi(r.PathValue("n"))
	if err != nil || n < 0 || n >= len(rows) {
		return notFound(fmt.Sprintf("nothing stands in that crate of %s any more", r.PathValue("place")))
	}
	v := crateView{Place: p.Name, crateRow: rows[n], Shelf: shelf, Of: len(rows), Next: n + 1}
	if v.Next == len(rows) {
		v.Next = -1
	}
	for i := len(shelf.Rounds) - 1; i >= 0; i-- {
		if g := shelf.Rounds[i]; g.Spot.Place == p.Name && g.Spot.Crate == v.Crate && g.Spot.Bed == v.Bed {
			v.Past = append(v.Past, g)
		}
	}
	return s.show(r, http.StatusOK, "crate", view{Title: upper(p.Name) + ", " + v.Name(), Here: "rounds", Main: v})
}

// drawCrates draws a store's crates as they stand, each a link, darker the more of what
// was looked at was soft or lost.
func drawCrates(place string, crates []crateRow) template.HTML {
	const across, wide, tall, gap = 7, 49.0, 50.0, 3.0
	rows := (len(crates) + across - 1) / across
	d := begin("drawn crates", "group", upper(place)+" by crate", float64(rows)*(tall+gap)+2)
	for i, c := range crates {
		x, y := 1+float64(i%across)*(wide+gap), 1+float64(i/across)*(tall+gap)
		name := c.Crate
		if name == "" {
			name = "–"
		}
		says := fmt.Sprintf("%s: %d", c.Name(), c.Stood)
		class := "crate"
		if c.Seen > 0 {
			says += fmt.Sprintf("; of %d looked at %d soft or lost", c.Seen, c.Bad)
			class = "crate seen"
		}
		fmt.Fprintf(d, `<a href="/rounds/%s/%d"><title>%s</title><rect class="%s" x="%.0f" y="%.0f" width="%.0f" height="%.0f"/>`,
			html.EscapeString(url.PathEscape(place)), c.N, html.EscapeString(says), class, x, y, wide, tall)
		if c.Worst() > 0 {
			fmt.Fprintf(d, `<rect class="lost" x="%.0f" y="%.1f" width="%.0f" height="%.1f"/>`, x, y+tall*(1-c.Worst()), wide, tall*c.Worst())
		}
		d.words(x+4, y+15, "strong", name)
		d.words(x+wide-4, y+tall-6, "end", strconv.Itoa(c.Stood))
		d.WriteString("</a>")
	}
	return d.end()
}
