package desk

import (
	"fmt"
	"strconv"
	"strings"
	"sync"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/plans"
	"eyeup/internal/planting"
	"eyeup/internal/reckon"
	"eyeup/internal/stockbook"
	"eyeup/quantity"
	"eyeup/stock"
)

// Desk is an open garden with its stock book, for the pages. It is safe for concurrent use.
type Desk struct {
	book    *stockbook.Book
	scratch bool // the book ends with the program

	mu      sync.Mutex      // taken after the book's own lock, never before it
	garden  *garden.Garden  // as the book describes it; its Stock is what the book held
	follows *plans.Followed // the plan that the book said was followed then; nil for none
	seen    int             // how many entries the book had when the shelf was made
	stocked int             // and when Stock was
	says    string          // what the book said of the garden then
	failed  error           // why what it says now does not hold together
	shelf   *Shelf
	last    *plans.Decided // the decision that was read last; nil before the first

	looking sync.Mutex // never taken while another of these is held
	noted   noted

	season  fresh[standing, *plans.SeasonAnswer]
	changed kept[string, *plans.SeasonAnswer]
	best    searches
	heat    kept[string, *reckon.HeatAnswer]
	light   kept[string, *reckon.LightAnswer]
	frost   kept[string, *reckon.FrostAnswer]
	nights  kept[string, *reckon.NightsAnswer]
	against kept[standing, *Against]
	outlook fresh[standing, *stockbook.OutlookAnswer]
	chosen  fresh[standing, *planting.PatchAnswer]
}

// NewDesk opens the garden that a book describes. It fails where the book does not yet describe one. A
// scratch book is thrown away when the program ends, and the pages say so.
func NewDesk(b *stockbook.Book, scratch bool) (*Desk, error) {
	g, followed, err := OpenBookGarden(b)
	if err != nil {
		return nil, err
	}
	d := &Desk{book: b, scratch: scratch, garden: g, follows: followed, seen: -1, stocked: -1}
	d.changed.most = mostChanged
	b.Read(func(s *stock.Book) { d.says = saysOf(s) })
	return d, nil
}

// Rest stops the search for the best plans and waits for all background work. After it the book may be
// closed.
func (d *Desk) Rest() {
	d.best.rest()
	d.season.rest()
	d.outlook.rest()
	d.chosen.rest()
}

// Kept is the file that entries are kept in; empty for a scratch book.
func (d *Desk) Kept() string {
	if d.scratch {
		return ""
	}
	return d.book.Kept()
}

// Warnings says what is dangerous about the place where the book is kept.
func (d *Desk) Warnings() []string { return d.book.Warnings() }

// Append writes entries down; see stockbook.Book.Append.
func (d *Desk) Append(entries ...stock.Entry) ([]stock.Added, error) {
	return d.book.Append(entries...)
}

// Undoing returns the entry that would undo another, or redo what was undone; see stockbook.Book.Undo. It
// writes nothing.
func (d *Desk) Undoing(id stock.ID, writer stockbook.Writer) (by stock.Entry, err error) {
	_, by, err = d.book.As(writer).Undoing(id)
	return by, err
}

// Read lets look at the book; what look is given must not be kept.
func (d *Desk) Read(look func(*stock.Book)) { d.book.Read(look) }

// Entry returns one entry as it was written.
func (d *Desk) Entry(id stock.ID) (stock.Entry, error) { return d.book.Entry(id) }

// Garden returns the garden with the stock that the book holds now. It is not to be
// changed.
func (d *Desk) Garden() *garden.Garden {
	g, _ := d.following()
	return g
}

// following returns the garden with the stock that the book holds now, and the plan that the book
// says is followed; nil for none. Neither is to be changed.
func (d *Desk) following() (*garden.Garden, *plans.Followed) {
	d.refresh()
	last, stocked := (*plans.Decided)(nil), false
	for !stocked {
		d.book.Read(func(b *stock.Book) { stocked = d.restock(b, last) })
		if !stocked {
			last = d.decision()
		}
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.garden, d.follows
}

// restock takes over what the book holds now. It reports false where last is not the last
// decision in it.
func (d *Desk) restock(b *stock.Book, last *plans.Decided) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.stocked == b.Entries() {
		return true
	}
	switch _, head, is := b.LastOf("decided"); {
	case !is:
		last = nil
	case last == nil || last.ID != head:
		return false
	}
	read := *d.garden.Garden
	read.Stock = b.Holdings()
	g := *d.garden
	g.Garden = &read
	d.garden, d.follows, d.stocked = &g, plans.FollowedBy(last, b, read.Stock), b.Entries()
	return true
}

// Site returns the garden as it is described, with stock that may be of before: for what
// asks nothing of the stock.
func (d *Desk) Site() *garden.Garden {
	d.refresh()
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.garden
}

// Shelf returns the stock as it stands now. It is not to be changed.
func (d *Desk) Shelf() *Shelf {
	d.refresh()
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.shelf
}

// refresh takes over what was written since it was last done.
func (d *Desk) refresh() {
	says := ""
	d.book.Read(func(b *stock.Book) {
		d.mu.Lock()
		defer d.mu.Unlock()
		if d.seen == b.Entries() {
			return
		}
		d.seen, d.shelf = b.Entries(), newShelf(b)
		if now := saysOf(b); now != d.says {
			says = now
		}
	})
	if says != "" {
		d.describeAnew(says)
	}
}

// describeAnew opens the garden again after its description changed. Where the new description is wrong,
// the garden stays as it was and Faulty says why.
func (d *Desk) describeAnew(says string) {
	g, followed, err := OpenBookGarden(d.book)
	d.mu.Lock()
	defer d.mu.Unlock()
	d.says, d.failed = says, err
	if err == nil {
		d.garden, d.follows, d.stocked = g, followed, -1
		d.heat.forget()
		d.light.forget()
		d.frost.forget()
	}
}

// Faulty returns what is wrong with the book's description of the garden; nil for nothing.
func (d *Desk) Faulty() error {
	d.refresh()
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.failed
}

// saysOf puts together what a book says of the garden, the stock apart.
func saysOf(b *stock.Book) string {
	var s strings.Builder
	for _, what := range []string{"garden", "place", "weather"} {
		for _, one := range b.Described(what) {
			fmt.Fprintf(&s, "%s %q %s\n", what, one.Name, one.Body)
		}
	}
	return s.String()
}

// written returns how many entries the book has.
func (d *Desk) written() int {
	d.refresh()
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.seen
}

// Weather says which weather record the garden uses.
func (d *Desk) Weather() garden.WeatherSource { return d.Site().Source() }

// Nights answers for the nights ahead. Each question is worked out once until an entry is written. See
// reckon.Nights.
func (d *Desk) Nights(q reckon.NightsQuestion) (*reckon.NightsAnswer, error) {
	key := fmt.Sprintf("%d %s %d %s %s %v", d.written(), q.From, q.Nights, typedOf(q.Low), typedOf(q.Level), q.Off)
	return d.nights.get(key, func() (*reckon.NightsAnswer, error) { return reckon.Nights(d.Garden(), q) })
}

// typedOf writes a temperature that may not be asked for.
func typedOf(t *quantity.Temperature) string {
	if t == nil {
		return "-"
	}
	return strconv.FormatFloat(t.Celsius(), 'g', -1, 64)
}

// Heat answers how much heat a place's levels need, held the whole season. Each place is worked out once
// until the garden's description changes.
func (d *Desk) Heat(place string) (*reckon.HeatAnswer, error) {
	g := d.Site()
	return d.heat.get(place, func() (*reckon.HeatAnswer, error) {
		q := reckon.HeatQuestion{Place: place}
		if p, known := g.Place(place); known {
			for _, level := range p.Levels {
				if t, on := level.At(g.Span.From); on {
					q.Levels = append(q.Levels, &t)
				} else {
					q.Levels = append(q.Levels, nil)
				}
			}
		}
		if len(q.Levels) == 0 {
			q.Levels = append(q.Levels, nil)
		}
		return reckon.Heat(g, q)
	})
}

// Light answers what light a place has, month by month; each place is reckoned once.
func (d *Desk) Light(place string) (*reckon.LightAnswer, error) {
	return d.light.get(place, func() (*reckon.LightAnswer, error) { return reckon.Light(d.Site(), place) })
}

// Frost answers when it freezes in the garden at 0 °C, and the odds of a freeze later than
// a day.
func (d *Desk) Frost(after civil.MonthDay) (*reckon.FrostAnswer, error) {
	return d.frost.get(after.String(), func() (*reckon.FrostAnswer, error) { return frostAnswer(d.Site(), after) })
}
