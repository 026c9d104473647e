package plans

import (
	"cmp"
	"fmt"
	"slices"

	"eyeup/civil"
	"eyeup/internal/report"
	"eyeup/season"
	"eyeup/stock"
)

// begun fits decisions to what was started already: that stays as it is.
type begun struct {
	*Followed
	book  *stock.Book
	steps LotSteps
	gone  map[string]bool // lots that are part of what was started
}

// fitBegun fits the decisions that are followed to what the book tells of since, lot by lot. The
// stock of which something was started is put back to where and how it waited, so that the
// plan starts it again, on the day on which it was.
func fitBegun(f *Followed, b *stock.Book) {
	from := f.On
	for _, l := range f.Decisions.Batches {
		if !l.Start.IsZero() {
			from = Earlier(from, l.Start)
		}
	}
	fit := &begun{Followed: f, book: b, steps: StepsFrom(b, from), gone: map[string]bool{}}
	all := slices.Clone(f.Decisions.Batches)
	f.Decisions.Batches = all
	var back []stock.Holding
	for len(all) > 0 {
		to := 1
		for to < len(all) && all[to].Code == all[0].Code {
			to++
		}
		if spots, is := fit.lot(all[:to]); is {
			back = append(back, spots...)
		}
		all = all[to:]
	}
	if len(back) > 0 {
		f.Stock = fit.putBack(back)
	}
}

// raisedWay is what the book has of a lot that is raised in one way.
type raisedWay struct {
	alive int // that stand still
	made  bool
	codes []string // of its lots
	steps []stock.Step
}

// lot fits what is decided of one lot, and returns how it waited before any of it was started,
// place by place; false where none was.
func (f *begun) lot(lines []season.Decided) ([]stock.Holding, bool) {
	first := lines[0]
	down, err := f.book.Down(first.Code)
	if err != nil || first.Code == "" {
		return nil, false
	}
	ways := f.waysOf(down)
	cut, struck := ways["divided"], ways["cuttings"]
	if countOf(ways["whole"].steps, startKinds...) == 0 && !cut.made && !struck.made {
		return nil, false
	}
	for _, w := range ways {
		for _, code := range w.codes {
			f.gone[code] = true
		}
	}
	spots := f.waited(lines, ways)
	f.alive(lines, "divided", cut)
	f.alive(lines, "cuttings", struck)
	f.started(lines, ways["whole"].steps)
	return spots, true
}

// waited is how a lot waited before any of it was started: as many in each place as were to come
// from there, as far as they are alive, and the rest in the first.
func (f *begun) waited(lines []season.Decided, ways map[string]*raisedWay) []stock.Holding {
	mother, _ := f.book.Find(lines[0].Code) // Down has found it
	alive := ways["whole"].alive
	if ways["divided"].made {
		alive += parentsOf(lines)
	}
	var spots []stock.Holding
	cut := map[string]bool{} // once for each place, whatever the ways that the pieces go
	for _, d := range lines {
		at := slices.IndexFunc(spots, func(h stock.Holding) bool { return h.Place == d.Place && h.Form == d.Form })
		if at < 0 {
			at = len(spots)
			h := stock.Holding{Code: d.Code, Variety: mother.Variety, Form: d.Form, Place: d.Place, Pack: d.Pack, Plant: d.Plant, Reserve: d.Reserve}
			h.Variety.Name = mother.Name()
			spots = append(spots, h)
		}
		n := d.Count
		switch {
		case d.How == season.FromCuttings || d.How == season.Divided && cut[d.Place]:
			n = 0
		case d.How == season.Divided:
			n, cut[d.Place] = d.Parents, true
		}
		spots[at].Count += min(n, alive)
		alive -= min(n, alive)
	}
	spots[0].Count += alive
	if lines[0].Form == stock.Seed {
		spots[0].Count = max(spots[0].Count, 1)
	}
	return spots
}

// waysOf tells what the book has of a lot and all that came of it, by the way in which it is
// raised.
func (f *begun) waysOf(down []stock.LotID) map[string]*raisedWay {
	ways := map[string]*raisedWay{"whole": {}, "divided": {}, "cuttings": {}}
	for i, id := range down {
		lot, err := f.book.Find(id.String())
		if err != nil {
			continue
		}
		w := ways[WayOf(lot, i == 0)]
		w.made = true
		w.alive += lot.Count()
		w.steps = append(w.steps, f.steps[id]...)
		w.codes = append(w.codes, string(lot.Code))
	}
	for _, w := range ways {
		slices.SortStableFunc(w.steps, func(x, y stock.Step) int { return cmp.Compare(x.On.Sub(y.On), 0) })
	}
	return ways
}

// startKinds are the entries by which something is started.
var startKinds = KindsOf["started"]

// countOf returns how many some kinds of entries tell of.
func countOf(steps []stock.Step, kinds ...string) int {
	n := 0
	for _, s := range steps {
		if slices.Contains(kinds, s.Kind) {
			n += s.Count
		}
	}
	return n
}

// parentsOf is how many clumps of a lot are cut.
func parentsOf(lines []season.Decided) int {
	n, cut := 0, map[string]bool{}
	for _, d := range lines {
		if d.How == season.Divided && !cut[d.Place] {
			n, cut[d.Place] = n+d.Parents, true
		}
	}
	return n
}

// alive takes what does not stand any more off what is raised in a way, from the last started on.
func (f *begun) alive(lines []season.Decided, how string, w *raisedWay) {
	decided := 0
	for _, d := range lines {
		if string(d.How) == how {
			decided += d.Count
		}
	}
	short := decided - w.alive
	if !w.made || short <= 0 {
		return
	}
	f.otherwise = append(f.otherwise, fmt.Sprintf("%s (%s), %s: %d stand of the %d decided", lines[0].Variety, lines[0].Code, how, w.alive, decided))
	for i := range slices.Backward(lines) {
		if string(lines[i].How) == how {
			n := min(short, lines[i].Count)
			lines[i].Count, lines[i].Of, short = lines[i].Count-n, lines[i].Of-n, short-n
		}
	}
}

// started moves the starts of a lot to the weeks in which the book has them: that of clumps that
// are cut to the one in which half of them were woken, all others to that in which half of the
// plants of a line were started.
func (f *begun) started(lines []season.Decided, steps []stock.Step) {
	kinds, before := startKinds, 0
	if parentsOf(lines) > 0 { // clumps that are woken are cut
		kinds = slices.DeleteFunc(slices.Clone(startKinds), func(kind string) bool { return kind == "woken" })
	}
	for i := range lines {
		d := &lines[i]
		var on civil.Date
		switch {
		case d.Way.IsDirect() || d.How == season.FromCuttings:
		case d.How == season.Divided:
			on = reached(steps, []string{"woken"}, 0, d.Parents)
		default:
			on = reached(steps, kinds, before, d.Count)
			before += d.Count
		}
		if week := on.Monday(); !on.IsZero() && week != d.Start {
			f.otherwise = append(f.otherwise, fmt.Sprintf("%s (%s): started in the week of %s, not of %s", d.Variety, d.Code, report.ShortDate(week), report.ShortDate(d.Start)))
			d.Start = week
		}
	}
}

// reached returns the day on which half of so many, after others, had come so far by some kind
// of entry; none where they have not.
func reached(steps []stock.Step, kinds []string, before, count int) (on civil.Date) {
	for _, kind := range kinds {
		n := 0
		for _, s := range steps {
			if s.Kind != kind {
				continue
			}
			if n += s.Count; 2*(n-before) >= count && n > before {
				if on.IsZero() || s.On.Before(on) {
					on = s.On
				}
				break
			}
		}
	}
	return on
}

// putBack is the stock with what was started put back, and what is wanted of its varieties.
func (f *begun) putBack(back []stock.Holding) []stock.Holding {
	type name struct{ kind, variety string }
	type wish struct{ plant, reserve int }
	wishes := map[name]wish{}
	var all []stock.Holding
	given := map[name]bool{} // told once of a variety, whatever its lots
	for _, h := range f.Stock {
		key := name{h.Variety.Kind, h.Variety.Name}
		if !f.gone[h.Code] {
			all = append(all, h)
			given[key] = given[key] || h.Plant+h.Reserve > 0
			continue
		}
		w := wishes[key]
		wishes[key] = wish{w.plant + h.Plant, w.reserve + h.Reserve}
	}
	for _, h := range back {
		key := name{h.Variety.Kind, h.Variety.Name}
		w := wishes[key]
		switch {
		case given[key]:
			h.Plant, h.Reserve = 0, 0
		case w.plant+w.reserve > 0:
			h.Plant, h.Reserve = w.plant, w.reserve
			given[key] = true
		}
		all = append(all, h)
	}
	return all
}
