package desk

import (
	"encoding/json"

	"eyeup/civil"
	"eyeup/internal/stockbook"
	"eyeup/stock"
)

// weighing is what so many weighed together.
type weighing struct {
	kg    float64
	count int
}

// each is what one weighed in the middle, kg.
func (w weighing) each() float64 { return w.kg / float64(w.count) }

// weighingOf reads the weight that an entry tells of: a packing, a round, or what puts one
// of them right.
func weighingOf(e stock.Entry) (weighing, bool) {
	body := e.Body
	if e.Kind == stockbook.PutRight {
		said, err := stockbook.ReadPutRight(e)
		if err != nil {
			return weighing{}, false
		}
		body = said.Body
	}
	var said struct {
		Count                      int
		Firm, Wrinkled, Soft, Lost int
		Weight                     stock.Measure
	}
	if json.Unmarshal(body, &said) != nil || said.Weight.IsZero() {
		return weighing{}, false
	}
	mass, err := said.Weight.Mass()
	w := weighing{float64(mass), said.Count + said.Firm + said.Wrinkled + said.Soft + said.Lost}
	return w, err == nil && w.count > 0 && w.kg > 0
}

// Weighed is the weight that stock in store has lost, by weighing. Weights are the mean of one individual,
// so taking some out does not count as a loss.
type Weighed struct {
	From, On civil.Date // of the first and the last weighing
	First    stock.ID   // entries that tell of them
	Last     stock.ID
	Percent  float64 // of the first weight lost; below 0 where they weigh more now
}

// Scales are all weighings of the book.
type Scales struct {
	desk *Desk
	all  map[stock.ID]weighing
}

// Scales returns all weighings of the book as it stands.
func (d *Desk) Scales() Scales { return Scales{d, d.lookThrough().weighings} }

// at returns the weighing that an entry tells of, or what puts it right.
func (s Scales) at(id stock.ID) (weighing, bool) {
	head, stands := id, false
	s.desk.Read(func(b *stock.Book) { head, stands, _ = b.Head(id) })
	w, known := s.all[head]
	return w, known && stands
}

// Weighed returns what some in store have lost since they were packed, or since the first
// round that weighed them; nil where they were not weighed twice.
func (s Scales) Weighed(h Held) *Weighed {
	if len(s.all) == 0 {
		return nil
	}
	var w Weighed
	var first, last float64
	note := func(id stock.ID, on civil.Date) {
		weight, known := s.at(id)
		switch {
		case !known:
		case first == 0:
			first, w.First, w.From = weight.each(), id, on
		default:
			last, w.Last, w.On = weight.each(), id, on
		}
	}
	if packed, err := s.desk.book.Entry(h.Packed); err == nil {
		note(h.Packed, packed.On)
	}
	for _, r := range h.Rounds {
		note(r.Entry, r.On)
	}
	if last == 0 {
		return nil
	}
	w.Percent = 100 * (1 - last/first)
	return &w
}

// ChangedSince returns what changed how many stand in a crate or bed of a place since the
// last rounds there, or since a day for what no round has looked at.
func (d *Desk) ChangedSince(place string, c CrateOnShelf, day civil.Date) []stock.Change {
	looked := map[stock.Spot]map[stock.LotID]bool{}
	lots := d.Shelf().Lots
	for _, h := range c.Holdings {
		if h.Round() != nil {
			if looked[h.Spot] == nil {
				looked[h.Spot] = map[stock.LotID]bool{}
			}
			looked[h.Spot][lots[h.Lot].ID] = true
		}
	}
	var all []stock.Change
	d.Read(func(b *stock.Book) {
		for _, one := range b.SinceRounds(stock.Spot{Place: place, Crate: c.Crate, Bed: c.Bed}) {
			here := one.Spot.Crate == c.Crate && one.Spot.Bed == c.Bed
			if here && one.Spot.Form != stock.Seed && (one.On.After(day) || looked[one.Spot][one.Lot]) {
				all = append(all, one)
			}
		}
	})
	return all
}
