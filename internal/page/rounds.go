package page

import (
	"fmt"
	"html/template"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"eyeup/civil"
	"eyeup/internal/desk"
	"eyeup/internal/sources"
	"eyeup/internal/stockbook"
	"eyeup/stock"
	"eyeup/week"
)

// roundsView is every store with its crates.
type roundsView struct {
	Shelf   *desk.Shelf
	Stores  []storeView
	Waiting bool // what the crates have lost is still being worked out
}

// storeView is one store.
type storeView struct {
	desk.PlaceOnShelf
	Due        *week.RoundDue
	Drawn      template.HTML
	Crates     []crateRow // of this page
	All        int        // crates in all
	Page       int
	Pages      int
	CheckFirst []stockbook.OutlookRound // where a round helps most
}

// crateRow is a crate with what its last rounds found.
type crateRow struct {
	desk.CrateOnShelf
	N       int                      // its number in the store, from 0
	Stood   int                      // individuals now
	Now     found                    // by the last rounds
	Before  found                    // by the rounds before those; nothing where there were none
	Then    int                      // of those now there, how many there were when last counted
	Dry     []stockbook.OutlookCrate // weight lost so far, as calculated
	Weighed *desk.Weighed            // by the scales, the most of any lot; nil where it was not weighed twice
}

// found is what rounds found in a crate.
type found struct {
	Last civil.Date
	Seen int // checked
	Bad  int // of those, soft or lost
	Limp int // of those, wrinkled
}

func (f *found) add(g *stock.Round) {
	if g == nil {
		return
	}
	f.Seen += g.Firm + g.Wrinkled + g.Soft + g.Lost
	f.Bad += g.Soft + g.Lost
	f.Limp += g.Wrinkled
	if g.On.After(f.Last) {
		f.Last = g.On
	}
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

// Worst is the share of those checked that were soft or lost.
func (c crateRow) Worst() float64 {
	if c.Now.Seen == 0 {
		return 0
	}
	return float64(c.Now.Bad) / float64(c.Now.Seen)
}

// Driest is the lot of the crate that has lost most of its weight; nil if none is known.
func (c crateRow) Driest() *stockbook.OutlookCrate {
	var most *stockbook.OutlookCrate
	for i := range c.Dry {
		if most == nil || c.Dry[i].Lost.Middle > most.Lost.Middle {
			most = &c.Dry[i]
		}
	}
	return most
}

// Lost is the share of its weight that the crate has lost, weighed if it was weighed twice,
// calculated otherwise. It is not always known.
func (c crateRow) Lost() (share float64, known bool) {
	if c.Weighed != nil {
		return max(0, c.Weighed.Percent/100), true
	}
	if dry := c.Driest(); dry != nil {
		return dry.Lost.Middle / 100, true
	}
	return 0, false
}

// crateRows gathers what stands in each crate, without seed: nobody checks packets.
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

// add counts what stands and what its last rounds found.
func (c *crateRow) add(h desk.Held) {
	c.Stood += h.Count
	c.Now.add(h.Round())
	c.Before.add(h.Before())
	g := h.Round()
	if g != nil && g.Whole {
		c.Then += g.Firm + g.Wrinkled + g.Soft
	} else {
		c.Then += h.Count // a sampled round counts nothing
	}
}

// weigh finds what the crate has lost, calculated and weighed.
func (c *crateRow) weigh(dry map[string][]stockbook.OutlookCrate, scales desk.Scales) {
	c.Dry = dry[c.Crate]
	for _, h := range c.Holdings {
		if w := scales.Weighed(h); w != nil && (c.Weighed == nil || w.Percent > c.Weighed.Percent) {
			c.Weighed = w
		}
	}
}

// rounds shows the stores by crate, shaded by what they have lost in weight, with what the
// last rounds found soft or lost: page, of 140 crates each. crate, with place, leads to one.
func (s *server) rounds(r *request) error {
	if name := strings.TrimSpace(r.FormValue("crate")); name != "" {
		return s.goToCrate(r, r.FormValue("place"), name)
	}
	v := roundsView{Shelf: s.desk.Shelf()}
	outlook, err := s.desk.Outlook(s.today())
	v.Waiting = err == nil && outlook == nil
	if err != nil {
		outlook = nil // without it the page shows less
	}
	due := map[string]week.RoundDue{}
	for _, d := range s.desk.RoundsDue(s.today()) {
		due[d.Place] = d
	}
	for _, p := range v.Shelf.Places {
		if d, is := due[p.Name]; is {
			v.Stores = append(v.Stores, s.storeOf(r, p, d, outlook))
		}
	}
	return s.show(r, http.StatusOK, "rounds", view{Title: "Rounds", Here: "rounds", Main: v, From: sources.OfRounds(s.desk)})
}

// goToCrate leads to a crate of a store by its name.
func (s *server) goToCrate(r *request, place, name string) error {
	p, _ := s.desk.Shelf().Place(place)
	for _, c := range crateRows(p) {
		if strings.EqualFold(c.Crate, name) {
			r.goTo(fmt.Sprintf("/rounds/%s/%d", url.PathEscape(place), c.N))
			return nil
		}
	}
	return notFound(fmt.Sprintf("there is no crate named %q in %s. Look at the drawing of the store for its crates", name, place))
}

// cratesOnPage is how many crates of a store are shown at once.
const cratesOnPage = 140

// storeOf prepares one store to be shown; page says which of its crates.
func (s *server) storeOf(r *request, p desk.PlaceOnShelf, due week.RoundDue, o *stockbook.OutlookAnswer) storeView {
	v := storeView{PlaceOnShelf: p, Due: &due, Crates: crateRows(p)}
	v.All = len(v.Crates)
	v.Page, v.Pages = pageNumber(r, v.All, cratesOnPage)
	v.Crates = v.Crates[(v.Page-1)*cratesOnPage : min(v.All, v.Page*cratesOnPage)]
	names := make([]string, len(v.Crates))
	for i, c := range v.Crates {
		names[i] = c.Crate
	}
	dry, scales := desk.ByCrate(o, p.Name, names...), s.desk.Scales()
	for i := range v.Crates {
		v.Crates[i].weigh(dry, scales)
	}
	v.Drawn = drawCrates(p.Name, v.Crates)
	if o != nil {
		v.CheckFirst = slices.DeleteFunc(slices.Clone(o.Rounds), func(c stockbook.OutlookRound) bool { return c.Place != p.Name })
	}
	return v
}

// notThere says that a crate is not there any more.
func notThere(place string) error {
	return notFound(fmt.Sprintf("nothing is left in that crate of %s. Go back to the rounds and choose another", place))
}
