package page

import (
	"strings"
	"sync"

	"eyeup/internal/paper"
	"eyeup/stock"
)

// doneOf tells what was just written or undone, by the query: ids parted by points.
func (s *server) doneOf(r *request) *done {
	sent, undone := r.URL.Query().Get("undid"), true
	if sent == "" {
		sent, undone = r.URL.Query().Get("wrote"), false
	}
	d := &done{Undone: undone, Next: r.URL.RequestURI()}
	for one := range strings.SplitSeq(sent, ".") {
		id, err := stock.ParseID(one)
		if err != nil {
			return nil
		}
		e, err := s.desk.Entry(id)
		if err != nil {
			return nil
		}
		d.IDs, d.Says = append(d.IDs, id), e.Kind
		if !undone {
			d.Labels = labelsDue(e, sent)
		}
		if a := s.told.of(id); a != nil && !undone {
			d.Born, d.Notes = append(d.Born, a.Born...), append(d.Notes, a.Notices...)
		}
	}
	if n := len(d.IDs); n > 1 {
		d.Says = things(n, d.Says, d.Says+"s")
	}
	return d
}

// labelsDue are the labels that an entry makes due: of the pots it filled, of all that were
// filled that day, of a lot with another name.
func labelsDue(e stock.Entry, sent string) []labelsFor {
	switch {
	case e.Kind == "named":
		return []labelsFor{{"labels with the new name", "/paper/labels?renamed=" + e.On.String()}}
	case paper.IsPotting(e.Kind):
		return []labelsFor{{"labels for these", "/paper/labels?entry=" + sent}, {"for all potted that day", "/paper/labels?potted=" + e.On.String()}}
	}
	return nil
}

// told keeps what came of the entries written last, to tell it on the next page.
type told struct {
	mu    sync.Mutex
	added []stock.Added
}

// mostTold is how many entries' outcomes are kept.
const mostTold = 100

func (t *told) keep(a stock.Added) {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.added = append(t.added, a)
	if len(t.added) > mostTold {
		t.added = t.added[1:]
	}
}

func (t *told) of(id stock.ID) *stock.Added {
	t.mu.Lock()
	defer t.mu.Unlock()
	for i := range t.added {
		if t.added[i].ID == id {
			a := t.added[i]
			return &a
		}
	}
	return nil
}
