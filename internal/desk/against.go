package desk

import (
	"cmp"
	"slices"

	"eyeup/civil"
	"eyeup/internal/plans"
	"eyeup/stock"
)

// Against compares the plan that is followed with what has happened so far.
type Against struct {
	plans.Decision
	On    civil.Date // the day it was decided on
	Lines []AgainstLine
	Lots  []AgainstLot // late ones first; none where the plan has no dates
}

// AgainstLine is one kind of stock: how many the plan would have started by today and in
// all, and how many the book has in trays, pots or the ground.
type AgainstLine struct {
	Kind         string
	Due, Planned int
	Started      int
}

// Against compares the plan that is followed with the book; nil where none is followed.
func (d *Desk) Against(today civil.Date) *Against {
	last := d.LastDecided()
	if last == nil {
		return nil
	}
	a, _ := d.against.get(standing{d.written(), today}, func() (*Against, error) { return d.holdAgainst(last, today), nil })
	return a
}

func (d *Desk) holdAgainst(last *plans.Decided, today civil.Date) *Against {
	said := last.Said
	a := &Against{Decision: plans.Decision{Plan: said.Plan}, On: last.On}
	if said.Promised != nil {
		a.Promised = *said.Promised
	}
	done := doneOf(d.Shelf())
	at := map[string]int{}
	for _, line := range said.Lines {
		if line.Kind == "" {
			continue // the decision is from before lines had a kind
		}
		i, known := at[line.Kind]
		if !known {
			i = len(a.Lines)
			at[line.Kind] = i
			a.Lines = append(a.Lines, AgainstLine{Kind: line.Kind, Started: done.started[line.Kind]})
		}
		a.Lines[i].Planned += line.Count
		if !line.Start.After(today) {
			a.Lines[i].Due += line.Count
		}
	}
	a.Lots = d.againstLots(last, today)
	return a
}

// Late returns the lots of which something is late.
func (a *Against) Late() []AgainstLot {
	if a == nil {
		return nil
	}
	n := slices.IndexFunc(a.Lots, func(l AgainstLot) bool { return !l.IsLate() })
	if n < 0 {
		n = len(a.Lots)
	}
	return a.Lots[:n]
}

// againstLots compares the lines of a decision with the book, batch by batch.
func (d *Desk) againstLots(last *plans.Decided, today civil.Date) []AgainstLot {
	var all []AgainstLot
	at := map[string]int{}
	ways := map[string]map[string]bool{} // by lot code: the ways in which the lot is raised
	for _, line := range last.Said.Lines {
		if line.Code == "" || line.Flower == (civil.When{}) && line.Up == (civil.When{}) {
			continue // the decision is from before lines had dates
		}
		i, known := at[line.ID]
		if !known {
			i = len(all)
			at[line.ID] = i
			if ways[line.Code] == nil {
				ways[line.Code] = map[string]bool{}
			}
			ways[line.Code][line.How] = true
			all = append(all, AgainstLot{Code: line.Code, Variety: line.Variety, Kind: line.Kind, how: line.How, Steps: stepsOf(line)})
		}
		all[i].Count += line.Count
		start := &all[i].Steps[0].Planned
		start.Early = plans.Earlier(start.Early, line.Start)
		start.Late = plans.Later(start.Late, line.Start.AddDays(civil.Week-1))
	}
	if len(all) == 0 {
		return nil
	}
	inTurn(all)
	d.Read(func(b *stock.Book) {
		f := stepsSince(b, all, last.On)
		for i := range all {
			all[i].holdAgainst(of(f, b, &all[i], len(ways[all[i].Code]) > 1), today)
		}
	})
	slices.SortStableFunc(all, func(x, y AgainstLot) int {
		return cmp.Or(cmp.Compare(b2i(y.IsLate()), b2i(x.IsLate())), cmp.Compare(x.Kind, y.Kind), cmp.Compare(x.Variety, y.Variety))
	})
	return all
}

// inTurn orders the batches of one lot that are raised in the same way, from several places or by several
// routes. What the book has of the lot counts for the batch that starts first, then for the next.
func inTurn(all []AgainstLot) {
	turn := make([]int, len(all))
	for i := range turn {
		turn[i] = i
	}
	slices.SortStableFunc(turn, func(x, y int) int { return int(all[x].Steps[0].Planned.Early.Sub(all[y].Steps[0].Planned.Early)) })
	type way struct{ code, how string }
	last := map[way]*AgainstLot{}
	for _, i := range turn {
		l := &all[i]
		key := way{l.Code, l.how}
		if earlier := last[key]; earlier != nil {
			l.before, earlier.more = earlier.before+earlier.Count, true
		}
		last[key] = l
	}
}

func stepsSince(b *stock.Book, lots []AgainstLot, decided civil.Date) plans.LotSteps {
	from := decided
	for _, l := range lots {
		from = plans.Earlier(from, l.Steps[0].Planned.Early)
	}
	return plans.StepsFrom(b, from)
}

// of returns the steps of a batch's lot and its descendants. Where the lot is raised in several ways, it
// returns only those of the batch's own way.
func of(f plans.LotSteps, b *stock.Book, l *AgainstLot, several bool) (all []stock.Step) {
	down, err := b.Down(l.Code)
	if err != nil {
		return nil
	}
	made, mother := false, 0
	for i, id := range down {
		lot, err := b.Find(id.String())
		if err != nil {
			continue
		}
		way := plans.WayOf(lot, i == 0)
		if i == 0 {
			mother = lot.Count()
		}
		if !several || way == l.how {
			made = true
			l.Left += lot.Count()
			all = append(all, f[id]...)
		}
	}
	if !made { // nothing was divided or struck yet
		l.Left = mother
	}
	slices.SortStableFunc(all, func(x, y stock.Step) int { return cmp.Compare(x.On.Sub(y.On), 0) })
	return all
}
