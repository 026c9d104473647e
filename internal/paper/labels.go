package paper

import (
	"cmp"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strconv"
	"strings"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/plans"
	"eyeup/internal/report"
	"eyeup/internal/sheet"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/stock"
)

// OpenStock reads a garden folder without its weather. That is enough for labels, crate cards, round
// sheets and giving lists.
func OpenStock(fsys fs.FS, name string) (*garden.Garden, error) {
	read, err := exchange.ReadGarden(fsys, name)
	if err != nil {
		return nil, err
	}
	return &garden.Garden{Garden: read}, nil
}

// LabelsQuestion asks for labels.
type LabelsQuestion struct {
	Lots    []string     // codes; empty means all lots
	Each    bool         // a label for every individual, not one for each lot
	Layout  sheet.Layout // the size of a label and how labels lie on the page
	From    int          // the first free label of the first page, from 1
	Address string       // the garden's own web address, for the square code; empty for none
	Outline bool         // draws the edges of the labels
}

// AskLabels makes a question from what was typed: a layout by its measures, such as a4:3x8, the garden's
// own address or none, and the first free label, from 1. It fails where layout or address can't be read.
func AskLabels(layout, address string, from int) (LabelsQuestion, error) {
	q := LabelsQuestion{From: from}
	var err error
	if q.Layout, err = sheet.ParseLayout(layout); err != nil {
		return q, err
	}
	if address != "" {
		q.Address, err = sheet.Address(address)
	}
	return q, err
}

// Alignment writes a PDF page that shows where the labels of a layout will lie.
func Alignment(q LabelsQuestion, today civil.Date, w io.Writer) (*report.WrittenAnswer, error) {
	told, err := sheet.Alignment(w, q.Layout, today)
	if err != nil {
		return nil, err
	}
	return written("alignment test", q.Layout.PerPage(), "labels", told), nil
}

// job makes the print job of labels.
func (q LabelsQuestion) job(labels []sheet.Label, today civil.Date) sheet.LabelJob {
	return sheet.LabelJob{Layout: q.Layout, Labels: labels, From: q.From, Address: q.Address, Outline: q.Outline, Today: today}
}

// Labels writes labels for lots of the garden as PDF. It fails for a code that no lot has, and where no
// lot has a code.
func Labels(g *exchange.Garden, q LabelsQuestion, today civil.Date, w io.Writer) (*report.WrittenAnswer, error) {
	lots, uncoded, err := chosenLots(g.Stock, q.Lots)
	if err != nil {
		return nil, err
	}
	var labels []sheet.Label
	for _, lot := range lots {
		times := 1
		if q.Each {
			times = count(lot)
		}
		for n := range times {
			labels = append(labels, labelOf(lot, n+1, times, today))
		}
	}
	if len(labels) == 0 && uncoded > 0 {
		return nil, fmt.Errorf("no label can be printed: none of the %s has a code; write codes into stock.csv, or import the stock into a book, which gives every lot a code", report.Counted(uncoded, "holding"))
	}
	told, err := sheet.Labels(w, q.job(labels, today))
	if err != nil {
		return nil, err
	}
	a := written("labels", len(labels), "labels", told)
	if uncoded > 0 && len(q.Lots) == 0 {
		a.Notices = append(a.Notices, fmt.Sprintf("%s without a code got no label, because a label shows the code.", report.Counted(uncoded, "holding")))
	}
	return a, nil
}

// chosenLots returns the holdings of the lots with some codes, or of all lots where codes is empty, lot by
// lot. uncoded is how many holdings have no code. It fails for a code that no lot has.
func chosenLots(all []stock.Holding, codes []string) (lots [][]stock.Holding, uncoded int, err error) {
	at := map[string]int{}
	var known []string
	for _, h := range all {
		if h.Code == "" {
			uncoded++
			continue
		}
		i, again := at[h.Code]
		if !again {
			i, at[h.Code], known = len(lots), len(lots), append(known, h.Code)
			lots = append(lots, nil)
		}
		lots[i] = append(lots[i], h)
	}
	if len(codes) == 0 {
		return lots, uncoded, nil
	}
	var chosen [][]stock.Holding
	for _, typed := range codes {
		code, err := stock.ParseCode(typed)
		if err != nil {
			return nil, 0, err
		}
		i, there := at[string(code)]
		if !there {
			return nil, 0, fmt.Errorf("there is no lot %s in the garden%s", code, nearestCode(string(code), known))
		}
		chosen = append(chosen, lots[i])
	}
	return chosen, uncoded, nil
}

func nearestCode(code string, known []string) string {
	if near, ok := quantity.Nearest(code, known); ok {
		return fmt.Sprintf("; did you mean %s?", near)
	}
	return ""
}

func count(lot []stock.Holding) int {
	n := 0
	for _, h := range lot {
		n += h.Count
	}
	return n
}

// labelOf makes label n of the labels of a lot.
func labelOf(lot []stock.Holding, n, of int, today civil.Date) sheet.Label {
	h := lot[0]
	l := sheet.Label{Code: h.Code, Variety: h.Variety.Name, Kind: h.Variety.Kind, Form: string(h.Form), Colour: h.Variety.Colour, Date: today}
	if len(lot) == 1 {
		l.Place = spotOf(h)
	}
	if slices.ContainsFunc(lot, func(other stock.Holding) bool { return other.Form != h.Form }) {
		l.Form = ""
	}
	if of > 1 {
		l.Note = fmt.Sprintf("%d of %d", n, of)
	}
	return l
}

// spotOf says where a holding is: its place and crate.
func spotOf(h stock.Holding) string {
	if h.Crate == "" {
		return h.Place
	}
	return h.Place + ", crate " + h.Crate
}

// SessionLabels writes labels for exactly the pots that a plan starts in the week of a day. It fails where
// it starts none with a code in that week.
func SessionLabels(g *garden.Garden, followed *plans.Followed, plan string, day civil.Date, q LabelsQuestion, today civil.Date, w io.Writer) (*report.WrittenAnswer, error) {
	_, p, err := plans.Planned(g, followed, plan, today)
	if err != nil {
		return nil, err
	}
	var labels []sheet.Label
	uncoded := 0
	for _, b := range p.Batches {
		for _, s := range b.Starts {
			if s.Week != day.Monday() {
				continue
			}
			if b.Code == "" {
				uncoded += s.Count
				continue
			}
			for n := range s.Count {
				labels = append(labels, potLabel(b, s, n+1))
			}
		}
	}
	if len(labels) == 0 {
		return nil, fmt.Errorf("no lot with a code is started in the week of %s by the plan %q; it starts lots in the weeks of %s", report.ShortDate(day.Monday()), p.Name, startWeeks(p))
	}
	told, err := sheet.Labels(w, q.job(labels, today))
	if err != nil {
		return nil, err
	}
	a := written("labels of the session", len(labels), "labels", told)
	if uncoded > 0 {
		a.Notices = append(a.Notices, fmt.Sprintf("%s of lots without a code got no label.", report.Counted(uncoded, "pot")))
	}
	return a, nil
}

func potLabel(b season.BatchPlan, s season.Start, n int) sheet.Label {
	l := sheet.Label{Code: b.Code, Variety: b.Variety, Kind: b.Kind, Form: b.Form, Colour: b.Colour, Date: s.Week}
	if len(b.Stays) > 0 {
		l.Place = b.Stays[0].Place
	}
	if s.Count > 1 {
		l.Note = fmt.Sprintf("%d of %d", n, s.Count)
	}
	return l
}

// startWeeks lists the Mondays of the weeks in which a plan starts anything.
func startWeeks(p *season.Plan) string {
	var weeks []civil.Date
	for _, b := range p.Batches {
		for _, s := range b.Starts {
			if !slices.Contains(weeks, s.Week) {
				weeks = append(weeks, s.Week)
			}
		}
	}
	slices.SortFunc(weeks, func(a, b civil.Date) int { return int(a.Sub(b)) })
	words := make([]string, len(weeks))
	for i, w := range weeks {
		words[i] = report.ShortDate(w)
	}
	if len(words) == 0 {
		return "no week"
	}
	return strings.Join(words, ", ")
}

// Cards writes a card for every crate of the garden as PDF.
func Cards(g *exchange.Garden, q LabelsQuestion, today civil.Date, w io.Writer) (*report.WrittenAnswer, error) {
	cards := cardsOf(g.Stock)
	told, err := sheet.Cards(w, q.Layout, cards, q.Outline, today)
	if err != nil {
		return nil, err
	}
	return written("crate cards", len(cards), "cards", told), nil
}

// cardsOf gathers the stock crate by crate. Stock without a code is left out, because a card shows the
// square code; the round sheet lists it.
func cardsOf(all []stock.Holding) []sheet.Card {
	var cards []sheet.Card
	for _, h := range byCrate(all) {
		if h.Crate == "" || h.Code == "" {
			continue
		}
		if n := len(cards); n == 0 || cards[n-1].Place != h.Place || cards[n-1].Crate != h.Crate {
			cards = append(cards, sheet.Card{Crate: h.Crate, Place: h.Place})
		}
		card := &cards[len(cards)-1]
		holds := report.Counted(h.Count, string(h.Form))
		if h.Pack != "" {
			holds += ", " + h.Pack
		}
		card.Lots = append(card.Lots, sheet.CardLot{Code: h.Code, Variety: h.Variety.Name, Colour: h.Variety.Colour, Holds: holds})
	}
	return cards
}

// byCrate sorts holdings by place, crate number and, within a crate, by name.
func byCrate(all []stock.Holding) []stock.Holding {
	sorted := slices.Clone(all)
	slices.SortStableFunc(sorted, func(a, b stock.Holding) int {
		return cmp.Or(cmp.Compare(a.Place, b.Place), compareCrates(a.Crate, b.Crate), cmp.Compare(a.Variety.Name, b.Variety.Name), cmp.Compare(a.Code, b.Code))
	})
	return sorted
}

// compareCrates compares crate names by their numbers: 2 comes before 10, A1 before A10.
func compareCrates(a, b string) int {
	parts := func(s string) (head string, n int) {
		head = strings.TrimRight(s, "0123456789")
		n, err := strconv.Atoi(s[len(head):])
		if err != nil {
			n = -1
		}
		return head, n
	}
	headA, nA := parts(a)
	headB, nB := parts(b)
	return cmp.Or(cmp.Compare(headA, headB), cmp.Compare(nA, nB), cmp.Compare(a, b))
}
