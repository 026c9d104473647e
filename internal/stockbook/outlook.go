package stockbook

import (
	"fmt"
	"io"
	"math"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/report"
	"eyeup/keeping"
	"eyeup/odds"
	"eyeup/outlook"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/stock"
)

// OutlookAnswer is the stock to expect at a date.
type OutlookAnswer struct {
	Today     civil.Date       `json:"today"`
	At        civil.Date       `json:"at"`
	Varieties []OutlookVariety `json:"varieties"`
	Crates    []OutlookCrate   `json:"crates" jsonschema:"description=driest first"`
	Rounds    []OutlookRound   `json:"rounds" jsonschema:"description=where a round is most worth doing, best first"`
	Assumed   []string         `json:"assumed" jsonschema:"description=what was assumed because the book does not say"`
	Note      string           `json:"note"`
}

// OutlookVariety is the stock to expect of one variety.
type OutlookVariety struct {
	Variety   string      `json:"variety"`
	Kind      string      `json:"kind"`
	Clumps    int         `json:"clumps" jsonschema:"description=in store today; soft ones are left out"`
	Others    int         `json:"others" jsonschema:"description=divisions and corms in store today"`
	Elsewhere int         `json:"elsewhere" jsonschema:"description=in pots, trays and beds today"`
	Through   odds.Amount `json:"come_through" jsonschema:"description=alive at the date"`
	Pieces    odds.Amount `json:"good_per_clump"`
	Divided   int         `json:"clumps_divided_here" jsonschema:"description=how many clumps the figure is based on"`
	Good      odds.Amount `json:"good" jsonschema:"description=good divisions and corms at the date if all clumps are cut"`
	Wanted    int         `json:"wanted" jsonschema:"description=to plant and in reserve"`
	Enough    *float64    `json:"enough" jsonschema:"oneof_type=number;null" jsonschema_description:"odds that there are as many as wanted"`
	Why       string      `json:"why,omitempty" jsonschema:"description=why nothing can be predicted"`
}

// OutlookCrate is the weight that one lot in one crate has lost so far.
type OutlookCrate struct {
	Code     string      `json:"code"`
	Variety  string      `json:"variety"`
	Place    string      `json:"place"`
	Crate    string      `json:"crate,omitempty"`
	Form     stock.Form  `json:"form"`
	Count    int         `json:"count"`
	Pack     string      `json:"pack,omitempty"`
	Since    civil.Date  `json:"since"`
	Lost     odds.Amount `json:"weight_lost_percent"`
	State    string      `json:"state"`
	Wrinkles civil.When  `json:"wrinkles" jsonschema:"description=when skin begins to wrinkle; null: not for years"`
	ToDo     string      `json:"to_do"`
}

// OutlookRound is a lot in a crate whose check would tell most.
type OutlookRound struct {
	Code    string      `json:"code"`
	Variety string      `json:"variety"`
	Place   string      `json:"place"`
	Crate   string      `json:"crate,omitempty"`
	Count   int         `json:"count"`
	Last    civil.Date  `json:"last" jsonschema:"description=date of the last round there; null: never"`
	Alive   odds.Amount `json:"alive"`
}

const outlookNote = "Survival is computed from the air of the store and from this book's own rounds; each variety is pulled towards its kind. " +
	"Good divisions are computed from what clumps gave here, pulled towards what is usual. Nobody has published measurements of how dahlias dry or rot in store: " +
	"these figures are assumptions that agree with common practice, until your own rounds and divisions replace them."

// Outlook predicts the stock at a date. A date before today is computed as if it were today.
func (s *Book) Outlook(today, at civil.Date) (*OutlookAnswer, error) {
	stores, kinds, err := s.stores()
	if err != nil {
		return nil, err
	}
	var o *outlook.Answer
	past := at.Before(today)
	if past {
		today = at
	}
	var copied []byte // computed on a copy, so that others can write meanwhile
	s.Read(func(b *stock.Book) { copied = b.Snapshot() })
	b, err := stock.Restore(copied)
	if err == nil {
		o, err = outlook.Reckon(outlook.Question{Book: b, Today: today, At: at, Stores: stores, Kinds: kinds})
	}
	if err != nil {
		return nil, err
	}
	a := &OutlookAnswer{Today: today, At: o.At, Varieties: []OutlookVariety{}, Crates: []OutlookCrate{}, Rounds: []OutlookRound{}, Assumed: append([]string{}, o.Assumed...), Note: outlookNote}
	if past {
		a.Assumed = append(a.Assumed, at.String()+" is past; it is computed as if it were today, with today's stock")
	}
	for _, v := range o.Varieties {
		a.Varieties = append(a.Varieties, outlookVariety(v))
	}
	for _, c := range o.Crates {
		a.Crates = append(a.Crates, OutlookCrate{c.Code, c.Name, c.Spot.Place, c.Spot.Crate, c.Spot.Form, c.Count, c.Pack, c.Since,
			report.RoundedAmount(c.Lost.Times(100), 1), string(c.State), c.Wrinkles, c.ToDo})
	}
	for _, r := range o.Rounds {
		a.Rounds = append(a.Rounds, OutlookRound{r.Code, r.Name, r.Spot.Place, r.Spot.Crate, r.Count, r.Last, r.Alive})
	}
	return a, nil
}

func outlookVariety(v outlook.Variety) OutlookVariety {
	a := OutlookVariety{Variety: v.Name, Kind: v.Kind, Clumps: v.Clumps, Others: v.Others, Elsewhere: v.Elsewhere, Through: v.Through,
		Pieces: report.RoundedAmount(v.Pieces, 1), Divided: v.Divided, Good: v.Good, Wanted: v.Wanted, Why: v.Why}
	if !math.IsNaN(v.Enough) {
		a.Enough = report.Rounded(v.Enough, 2)
	}
	return a
}

// stores returns the air of the stores that the book describes, and the kinds with the garden's own
// figures. If the book describes no garden, it returns no stores and the usual figures.
func (s *Book) stores() (map[string]outlook.Store, func(string) (*culture.Kind, bool), error) {
	described := false
	s.Read(func(b *stock.Book) { described = len(b.Described("garden")) > 0 })
	if !described {
		return nil, culture.Lookup, nil
	}
	folder, _, err := s.Folder()
	if err != nil {
		return nil, nil, err
	}
	read, err := exchange.ReadGarden(folder, s.Kept())
	if err != nil {
		return nil, nil, err
	}
	stores := map[string]outlook.Store{}
	for _, p := range read.Places {
		if steady, is := p.Model.(place.Steady); is {
			stores[p.Name] = outlook.Store{Temperature: steady.Temperature, Humidity: steady.Humidity}
		}
	}
	return stores, (&garden.Garden{Garden: read}).Kind, nil
}

// Print writes the outlook for a grower.
func (a *OutlookAnswer) Print(w io.Writer, units quantity.System) {
	report.NewPage(w).Wrap("", fmt.Sprintf("Stock to expect on %s. Of three numbers, one case in ten has fewer than the first, half have fewer than the second, and one in ten has more than the third.", a.At))
	fmt.Fprintln(w)
	fmt.Fprintf(w, "%-22s %8s %16s %14s %8s\n", "", "in store", "alive", "good", "enough")
	var unknown []string
	for _, v := range a.Varieties {
		if v.Clumps+v.Others == 0 {
			continue
		}
		if v.Why != "" {
			unknown = append(unknown, fmt.Sprintf("%d of %s: %s.", v.Clumps+v.Others, v.Variety, v.Why))
			continue
		}
		fmt.Fprintf(w, "%-22s %8d %16s %14s %8s\n", report.Clipped(v.Variety, 22), v.Clumps+v.Others, threeNumbers(v.Through), threeNumbers(v.Good), v.enough())
	}
	for _, why := range unknown {
		report.NewPage(w).Wrap("  ", why)
	}
	if len(a.Rounds) > 0 {
		fmt.Fprintln(w, "\nA round is most worth doing here:")
		for _, r := range a.Rounds {
			last := "never checked"
			if !r.Last.IsZero() {
				last = "last checked " + r.Last.String()
			}
			report.NewPage(w).Wrap(fmt.Sprintf("  %-6s ", r.Code), fmt.Sprintf("%s in %s %s: %d, of which %s alive; %s", r.Variety, r.Place, r.Crate, r.Count, threeNumbers(r.Alive), last))
		}
	}
	a.printCrates(w)
	for _, s := range a.Assumed {
		report.NewPage(w).Wrap("Assumed: ", s+".")
	}
	fmt.Fprintln(w)
	report.NewPage(w).Wrap("", a.Note)
}

// mostCrates is the most crates that are printed; --json lists all.
const mostCrates = 8

func (a *OutlookAnswer) printCrates(w io.Writer) {
	if len(a.Crates) == 0 {
		return
	}
	fmt.Fprintln(w, "\nDriest in store:")
	for _, c := range a.Crates[:min(len(a.Crates), mostCrates)] {
		state := c.State
		switch {
		case c.State != string(keeping.Firm):
		case c.Wrinkles.Middle.IsZero():
			state += ", will not wrinkle for years"
		default:
			state += ", wrinkles about " + c.Wrinkles.Middle.String()
		}
		report.NewPage(w).Wrap(fmt.Sprintf("  %-6s ", c.Code), fmt.Sprintf("%s in %s %s: %.0f%% of its weight lost, %s", c.Variety, c.Place, c.Crate, c.Lost.Middle, state))
	}
	report.NewPage(w).Wrap("  ", a.Crates[0].ToDo)
}

func (v OutlookVariety) enough() string {
	if v.Wanted == 0 || v.Enough == nil {
		return ""
	}
	return fmt.Sprintf("%.0f%%", *v.Enough*100)
}

// threeNumbers writes an amount as low, middle, high.
func threeNumbers(a odds.Amount) string {
	return fmt.Sprintf("%.0f, %.0f, %.0f", a.Low, a.Middle, a.High)
}
