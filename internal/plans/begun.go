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

// begun adapts the decisions of the plan that is followed to what was started already.
type begun struct {
	*Followed
	book  *stock.Book
	steps LotSteps
	gone  map[string]bool // codes of lots that are part of what was started
}

// fitBegun adapts the decisions that are followed to the entries written since, lot by lot. Stock of
// which something was started is put back, in the plan, to the place and form it waited in. The plan
// then starts it again in the week in which it really was started.
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
	alive int      // individuals left
	made  bool     // whether any lot was raised in this way
	codes []string // of its lots
	steps []stock.Step
}

// lot adapts the decisions about one lot. It returns the stock of the lot before any of it was started,
// place by place, and false where nothing was started.
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

// waited is the stock of a lot before any of it was started. Each place gets as many as the plan takes
// from there, as long as enough are alive. The first place gets the rest.
func (f *begun) waited(lines []season.Decided, ways map[string]*raisedWay) []stock.Holding {
	mother, _ := f.book.Find(lines[0].Code) // Down has found it
	alive := ways["whole"].alive
	if ways["divided"].made {
		alive += parentsOf(lines)
	}
	var spots []stock.Holding
	cut := map[string]bool{} // clumps of a place are counted once, whatever routes their pieces take
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

// waysOf returns what the book has of a lot and its descendants, by the way they are raised.
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

// startKinds are the kinds of entries that start something.
var startKinds = KindsOf["started"]

// countOf adds up the individuals in entries of some kinds.
func countOf(steps []stock.Step, kinds ...string) int {
	n := 0
	for _, s := range steps {
		if slices.Contains(kinds, s.Kind) {
			n += s.Count
		}
	}
	return n
}

// parentsOf is the number of clumps of a lot that are divided.
func parentsOf(lines []season.Decided) int {
	n, cut := 0, map[string]bool{}
	for _, d := range lines {
		if d.How == season.Divided && !cut[d.Place] {
			n, cut[d.Place] = n+d.Parents, true
		}
	}
	return n
}

// alive lowers the counts of one way to what is still alive. It takes from the line that starts last first.
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
	f.otherwise = append(f.otherwise, fmt.Sprintf("%s (%s), %s: %d are left of the %d in the plan", lines[0].Variety, lines[0].Code, how, w.alive, decided))
	for i := range slices.Backward(lines) {
		if string(lines[i].How) == how {
			n := min(short, lines[i].Count)
			lines[i].Count, lines[i].Of, short = lines[i].Count-n, lines[i].Of-n, short-n
		}
	}
}

// started moves the starts of a lot to the weeks in which the book has them. Clumps that are divided
// count as started when half of them were woken; all others when half of the plants of a line were.
func (f *begun) started(lines []season.Decided, steps []stock.Step) {
	kinds, before := startKinds, 0
	if parentsOf(lines) > 0 { // clumps that are woken are then divided
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
			f.otherwise = append(f.otherwise, fmt.Sprintf("%s (%s): started in the week of %s instead of the week of %s", d.Variety, d.Code, report.ShortDate(week), report.ShortDate(d.Start)))
			d.Start = week
		}
	}
}

// reached returns the day by which half of count had an entry of one of the kinds, not counting the first
// before of them. It is zero where fewer than half have.
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

// putBack is the stock with what was started put back, together with the numbers wanted of its varieties.
func (f *begun) putBack(back []stock.Holding) []stock.Holding {
	type name struct{ kind, variety string }
	type wish struct{ plant, reserve int }
	wishes := map[name]wish{}
	var all []stock.Holding
	given := map[name]bool{} // a variety's wishes are set once, on one of its lots
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
