package planting

import (
	"context"
	"fmt"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/internal/garden"
	"eyeup/internal/report"
	"eyeup/internal/stockbook"
	"eyeup/odds"
	"eyeup/patch"
	"eyeup/solve"
	"eyeup/stock"
)

// PatchAnswer is the planting list: how many places of the patch each variety gets.
type PatchAnswer struct {
	Garden    string         `json:"garden"`
	Year      int            `json:"year" jsonschema_description:"the year of planting out"`
	Place     string         `json:"place" jsonschema_description:"the open ground of the list"`
	At        civil.Date     `json:"at" jsonschema_description:"the day for which stock is predicted"`
	RoomM2    float64        `json:"room_m2"`
	UsedM2    float64        `json:"used_m2"`
	Most      int            `json:"most_plants,omitempty" jsonschema_description:"most plants in the patch, whatever room they take"`
	Planted   int            `json:"planted"`
	TooLittle string         `json:"too_little,omitempty" jsonschema_description:"what the varieties you must have lack by themselves"`
	List      []PatchLine    `json:"list"`
	Reserve   []PatchReserve `json:"reserve"`
	Over      []PatchOver    `json:"over" jsonschema_description:"to give away or sell"`
	Short     []PatchShort   `json:"short" jsonschema_description:"to buy or raise first"`
	Mix       []PatchMix     `json:"mix"`
	Rows      []PatchRowLine `json:"rows" jsonschema_description:"row 1 lies where it shades no other"`
	Proof     patch.Proof    `json:"proof" jsonschema_description:"how good the list is proved to be"`
	NotListed []NotListed    `json:"not_listed"`
	Assumed   []string       `json:"assumed" jsonschema_description:"what was assumed because it is not known"`
	Note      string         `json:"note" jsonschema_description:"how much each shortfall counts"`
}

// PatchLine is one variety of the list.
type PatchLine struct {
	Variety string       `json:"variety"`
	Kind    string       `json:"kind"`
	Colour  string       `json:"colour,omitempty" jsonschema_description:"in a word"`
	Timing  stock.Timing `json:"timing,omitempty"`
	Wish    patch.Wish   `json:"wish" jsonschema:"enum=must have,enum=would like,enum=could go"`
	Wanted  int          `json:"wanted"`
	Places  int          `json:"places"`
	AreaM2  float64      `json:"area_m2"`
	InHand  odds.Amount  `json:"in_hand" jsonschema_description:"plants to expect if all clumps are cut; null if as many as wanted are raised"`
	Stands  int          `json:"stands" jsonschema_description:"divisions, corms and plants today"`
	Clumps  int          `json:"clumps"`
	Cut     int          `json:"cut" jsonschema_description:"clumps to cut to have enough in nine cases of ten"`
	Why     string       `json:"why"`

	kept, over, short int    // as in Reserve, Over and Short
	code              string // of the colour
}

// PatchReserve is what is kept back of a variety.
type PatchReserve struct {
	Variety string `json:"variety"`
	Kind    string `json:"kind"`
	Kept    int    `json:"kept"`
	Wanted  int    `json:"wanted"`
}

// PatchOver is what is left over of a variety.
type PatchOver struct {
	Variety string `json:"variety"`
	Kind    string `json:"kind"`
	Plants  int    `json:"plants" jsonschema_description:"in nine cases of ten, if all clumps are cut"`
	Clumps  int    `json:"clumps" jsonschema_description:"clumps that need not be cut"`
}

// PatchShort is what is short of a variety.
type PatchShort struct {
	Variety string `json:"variety"`
	Kind    string `json:"kind"`
	Plants  int    `json:"plants" jsonschema_description:"lacking in nine cases of ten"`
	How     string `json:"how"`
}

// PatchMix compares one share of a wished mix with the list.
type PatchMix struct {
	Kind    string      `json:"kind"`
	By      patch.Trait `json:"by"`
	Name    string      `json:"name"`
	Places  int         `json:"places"`
	Of      int         `json:"of" jsonschema_description:"places of the kind"`
	Low     float64     `json:"low" jsonschema_description:"lowest share without a penalty"`
	High    float64     `json:"high" jsonschema_description:"highest share without a penalty"`
	Outside float64     `json:"outside" jsonschema_description:"places above the range; negative: below it"`
	Nobody  bool        `json:"nobody" jsonschema_description:"whether no variety has this trait"`
}

// PatchRowLine is one row of the patch.
type PatchRowLine struct {
	Row   int             `json:"row"`
	Bed   int             `json:"bed"`
	Kind  string          `json:"kind"`
	Holds int             `json:"holds"`
	Parts []PatchRowPlant `json:"parts"`
}

// PatchRowPlant is some plants of one variety in a row.
type PatchRowPlant struct {
	Label   int    `json:"label" jsonschema_description:"in the order in which labels are put out"`
	Variety string `json:"variety"`
	From    int    `json:"from" jsonschema_description:"place in the row of its first plant"`
	Count   int    `json:"count"`
}

// PatchProof says how far a list is from the best possible one, at most.
type PatchProof = patch.Proof

// PatchQuestion asks for a planting list.
type PatchQuestion struct {
	Today    civil.Date
	At       civil.Date       // the day for which stock is predicted; none: six weeks before the middle last frost
	Solver   solve.Solver     // usually the function Solver; nil: a good list without one
	Progress func(PatchProof) // called with each better list or bound; may be nil
}

// beforeFrost is how long before the last frost stock leaves the store.
var beforeFrost = civil.Days(culture.Usual("patch.before"))

// List computes the planting list of a garden read from a folder. When ctx ends, it returns the best list
// so far, with its gap.
func List(g *garden.Garden, ctx context.Context, q PatchQuestion) (*PatchAnswer, error) {
	book, err := bookOf(g.Stock, q.Today)
	if err != nil {
		return nil, err
	}
	return patchOf(g, ctx, book, q, []string{"that the stock has stood in its places since today: a stock list does not say since when"})
}

// ListOfBook computes the planting list of a book's garden, as List does.
func ListOfBook(s *stockbook.Book, ctx context.Context, g *garden.Garden, q PatchQuestion) (*PatchAnswer, error) {
	var copied []byte // computed on a copy, so that others can write meanwhile
	s.Read(func(b *stock.Book) { copied = b.Snapshot() })
	b, err := stock.Restore(copied)
	if err != nil {
		return nil, err
	}
	return patchOf(g, ctx, b, q, nil)
}

func patchOf(g *garden.Garden, ctx context.Context, book *stock.Book, q PatchQuestion, assumed []string) (*PatchAnswer, error) {
	if q.Today.After(g.Span.To) {
		return nil, fmt.Errorf("the season of %d ended on %v; set plant_year to the year you plan for", g.Season.PlantYear, g.Span.To)
	}
	if q.At.IsZero() {
		q.At = stockDay(g, q.Today)
	}
	hand, assumedOfStock, err := stockInHand(g, book, q.Today, q.At)
	if err != nil {
		return nil, err
	}
	b, err := newPatchBrief(g, hand)
	if err != nil {
		return nil, err
	}
	list, err := patch.Make(ctx, &b.Brief, q.Solver, q.Progress)
	if err != nil {
		return nil, err
	}
	a := &PatchAnswer{
		Garden: g.Name, Year: g.Season.PlantYear, Place: b.ground.Name, At: q.At, Most: b.Places, Note: patchNote,
		RoomM2: *report.Rounded(float64(b.Room), 2), UsedM2: *report.Rounded(list.Used, 2), Proof: list.Proof,
		NotListed: append([]NotListed{}, b.out...), Assumed: append(append(append([]string{}, assumed...), assumedOfStock...), b.assumed...),
	}
	a.fill(b, list)
	return a, a.layRows(g, b, list)
}

// stockDay is the day for which stock is predicted: six weeks before the middle last frost of the season,
// or today if that is past or it never freezes.
func stockDay(g *garden.Garden, today civil.Date) civil.Date {
	frost := g.Freezes().Spring().Middle
	if frost.IsZero() {
		return today
	}
	for year := g.Span.From.Year(); year <= g.Span.To.Year(); year++ {
		if at := frost.In(year).AddDays(-beforeFrost); g.Span.Holds(at) && at.After(today) {
			return at
		}
	}
	return today
}

// patchNote explains how a list is scored.
const patchNote = "How a list is scored, in places. Each place that a variety lacks counts 1 if you would like it, 4 if you must have it, 1/4 if it could go. " +
	"The second quarter of a variety's places to be lost counts 1.25 times as much, the third 1.5 times, the last twice. " +
	"Each place above a wished share and its slack counts 2, each below 1. A plant to be got first counts 1/2. " +
	"In hand are the plants that you have in nine cases of ten. These weights are a choice, not a measurement."

// fill copies the list into the answer, variety by variety.
func (a *PatchAnswer) fill(b *patchBrief, list *patch.List) {
	a.List, a.Reserve, a.Over, a.Short, a.Mix, a.Rows = []PatchLine{}, []PatchReserve{}, []PatchOver{}, []PatchShort{}, []PatchMix{}, []PatchRowLine{}
	for i := range b.Varieties {
		v, h := &b.Varieties[i], list.Hand(i)
		a.Planted += list.Places[i]
		a.List = append(a.List, PatchLine{
			Variety: v.Name, Kind: v.Kind, Colour: v.Word(), Timing: v.Timing, Wish: v.Wish, Wanted: v.Plant, Places: list.Places[i],
			AreaM2: *report.Rounded(float64(list.Places[i])*float64(v.Spacing.Times(v.Spacing)), 2),
			InHand: report.RoundedAmount(v.Hand, 1), Stands: b.stands[i], Clumps: v.Clumps, Cut: h.Cut, Why: list.Why(i),
			kept: h.Reserve, over: h.Over, short: h.Short, code: v.Variety.Colour,
		})
		if v.Reserve > 0 {
			a.Reserve = append(a.Reserve, PatchReserve{v.Name, v.Kind, h.Reserve, v.Reserve})
		}
		if h.Over > 0 {
			a.Over = append(a.Over, PatchOver{v.Name, v.Kind, h.Over, h.Clumps})
		}
		if h.Short > 0 {
			a.Short = append(a.Short, PatchShort{v.Name, v.Kind, h.Short, list.Get(i)})
		}
	}
	for _, f := range list.Mixed() {
		a.Mix = append(a.Mix, PatchMix{f.Mix.Kind, f.Mix.By, f.Name, f.Places, f.Of, f.Low, f.High, *report.Rounded(f.Outside, 2), f.Nobody})
	}
	switch {
	case list.Lacks > 0:
		a.TooLittle = fmt.Sprintf("the varieties you must have need %.1f m² more than the patch has; change some to would like, lower their least, or plant them closer", list.Lacks)
	case list.Crowd > 0:
		a.TooLittle = fmt.Sprintf("the varieties you must have are %d plants more than the patch takes; change some to would like, or lower their least", list.Crowd)
	}
}

// layRows arranges the list in rows, if the garden gives the size of its beds.
func (a *PatchAnswer) layRows(g *garden.Garden, b *patchBrief, list *patch.List) error {
	asked := asked(g)
	if asked.Width == 0 {
		return nil
	}
	rows, err := list.Rows(patch.Bed{Width: asked.Width, Length: asked.Length})
	if err != nil {
		return fmt.Errorf("the rows: %w", err)
	}
	for _, r := range rows {
		line := PatchRowLine{r.Number, r.Bed, r.Kind, r.Holds, []PatchRowPlant{}}
		for _, part := range r.Parts {
			line.Parts = append(line.Parts, PatchRowPlant{part.Label, b.Varieties[part.Variety].Name, part.From, part.Count})
		}
		a.Rows = append(a.Rows, line)
	}
	return nil
}
