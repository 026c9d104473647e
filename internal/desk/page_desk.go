package desk

import (
	"sync"

	"eyeup/civil"
	"eyeup/stock"
)

// Ledger keeps the entries of a garden. It is safe for several hands at once.
type Ledger interface {
	// Read lets look at what the entries come to; nothing is written meanwhile, and what
	// look is given must not be kept.
	Read(look func(*stock.Book))
	// Append adds entries in one go, all of them or none, and returns once they are as
	// safe as they will be. An entry that is sent again counts once; the same id with
	// other words is refused.
	Append(entries ...stock.Entry) ([]stock.Added, error)
	// Entry returns one entry as it was written.
	Entry(stock.ID) (stock.Entry, error)
	// Kept says where the entries lie; empty where they end with the program.
	Kept() string
}

// Desk is a garden and its stock book lying open, for the pages: many may read and write
// at once.
type Desk struct {
	ledger Ledger

	mu     sync.Mutex
	garden *Garden // as its folder or book describes it; its Stock is what the book holds
	seen   int     // how many entries the book had when Stock was made
	shelf  *Shelf
	told   int    // how many entries were looked through for decisions
	plan   string // decided on last

	season seasons
	heat   kept[string, *HeatAnswer]
	light  kept[string, *LightAnswer]
	frost  kept[string, *FrostAnswer]
}

// NewDesk lays a garden and its book open.
func NewDesk(g *Garden, ledger Ledger) *Desk {
	return &Desk{garden: g, ledger: ledger, seen: -1}
}

// Kept says where entries lie; empty where they end with the program.
func (d *Desk) Kept() string { return d.ledger.Kept() }

// Append writes entries down. See Ledger.
func (d *Desk) Append(entries ...stock.Entry) ([]stock.Added, error) {
	return d.ledger.Append(entries...)
}

// Read lets look at the book. See Ledger.
func (d *Desk) Read(look func(*stock.Book)) { d.ledger.Read(look) }

// Garden returns the garden with the stock that the book holds now. It is not to be
// changed.
func (d *Desk) Garden() *Garden {
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
	d.ledger.Read(func(b *stock.Book) {
		d.mu.Lock()
		defer d.mu.Unlock()
		if d.seen == b.Entries() {
			return
		}
		read := *d.garden.Garden
		read.Stock = b.Holdings()
		g := *d.garden
		g.Garden = &read
		d.garden, d.seen = &g, b.Entries()
		d.shelf = newShelf(b)
	})
}

// written returns how many entries the garden of now rests on.
func (d *Desk) written() int {
	d.refresh()
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.seen
}

// Weather says what weather the garden reckons with.
func (d *Desk) Weather() WeatherSource { return d.Garden().source() }

// Nights answers for the nights ahead. See Nights.
func (d *Desk) Nights(q NightsQuestion) (*NightsAnswer, error) { return Nights(d.Garden(), q) }

// Heat answers what a place's levels take, the whole season through; each place is
// reckoned once.
func (d *Desk) Heat(place string) (*HeatAnswer, error) {
	g := d.Garden()
	return d.heat.get(place, func() (*HeatAnswer, error) {
		q := HeatQuestion{Place: place}
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
		return Heat(g, q)
	})
}

// Light answers what light a place has, month by month; each place is reckoned once.
func (d *Desk) Light(place string) (*LightAnswer, error) {
	return d.light.get(place, func() (*LightAnswer, error) { return Light(d.Garden(), place) })
}

// Frost answers when it freezes in the garden at 0 °C, and the odds of a freeze later than
// a day.
func (d *Desk) Frost(after civil.MonthDay) (*FrostAnswer, error) {
	return d.frost.get(after.String(), func() (*FrostAnswer, error) { return d.Garden().frostAnswer(after) })
}

// kept holds answers that are reckoned once.
type kept[K comparable, V any] struct {
	mu  sync.Mutex
	all map[K]V
}

// most is how many answers are kept of one sort; then all are forgotten.
const most = 400

// get returns the answer to a question, which make reckons when it is first asked. What
// fails is asked again.
func (k *kept[K, V]) get(key K, make func() (V, error)) (V, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if v, known := k.all[key]; known {
		return v, nil
	}
	v, err := make()
	if err != nil {
		return v, err
	}
	if k.all == nil || len(k.all) >= most {
		k.all = map[K]V{}
	}
	k.all[key] = v
	return v, nil
}

// Entry returns one entry as it was written. See Ledger.
func (d *Desk) Entry(id stock.ID) (stock.Entry, error) { return d.ledger.Entry(id) }
