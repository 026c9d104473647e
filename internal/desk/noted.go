package desk

import (
	"maps"

	"eyeup/stock"
)

// noted caches what pages need from the bodies of entries. Each entry is read once.
type noted struct {
	upTo      int // how many entries were looked through
	weighings map[stock.ID]weighing
}

// note looks at one entry.
func (n *noted) note(e stock.Entry) {
	if w, is := weighingOf(e); is {
		n.weighings[e.ID] = w
	}
}

// lookThrough looks through the entries that were written since it last did, and returns
// what was noted of all. It is not to be changed.
func (d *Desk) lookThrough() noted {
	d.looking.Lock()
	defer d.looking.Unlock()
	var fresh []stock.ID
	known := d.noted
	d.Read(func(b *stock.Book) {
		for ; known.upTo < b.Entries(); known.upTo++ {
			fresh = append(fresh, b.Nth(known.upTo))
		}
	})
	if len(fresh) == 0 {
		return known
	}
	known.weighings = maps.Clone(known.weighings)
	if known.weighings == nil {
		known.weighings = map[stock.ID]weighing{}
	}
	for _, id := range fresh {
		if e, err := d.book.Entry(id); err == nil {
			known.note(e)
		}
	}
	d.noted = known
	return known
}
