package page

import (
	"encoding/json"
	"strings"
	"sync"

	"eyeup/internal/paper"
	"eyeup/stock"
)

// doneOf says what was just written or undone. The query names the entries by their ids,
// with dots between.
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
			d.Labels, d.Sentence = labelsDue(e, sent), sentenceOf(e)
		}
		if a := s.outcomes.of(id); a != nil && !undone {
			d.Born, d.Notes = append(d.Born, a.Born...), append(d.Notes, a.Notices...)
		}
	}
	if n := len(d.IDs); n > 1 {
		d.Says, d.Sentence = things(n, d.Says, d.Says+"s"), ""
	}
	return d
}

// sentenceOf says what an entry changes from now on, where its kind alone does not say it;
// empty for other kinds.
func sentenceOf(e stock.Entry) string {
	if e.Kind != "decided" {
		return ""
	}
	var body struct{ Plan string }
	if err := json.Unmarshal(e.Body, &body); err != nil || body.Plan == "" {
		return ""
	}
	return "You now follow “" + body.Plan + "”. This week, lists and labels go by it."
}

// labelsDue are the labels to print after an entry: for the pots it filled, for all pots
// filled that day, for a lot with a new name.
func labelsDue(e stock.Entry, sent string) []labelsFor {
	switch {
	case e.Kind == "named":
		return []labelsFor{{"labels with the new name", "/paper/labels?renamed=" + e.On.String()}}
	case paper.IsPotting(e.Kind):
		return []labelsFor{{"labels for these", "/paper/labels?entry=" + sent}, {"labels for all potted that day", "/paper/labels?potted=" + e.On.String()}}
	}
	return nil
}

// outcomes keeps what the last entries brought about, so that the next page can say it.
type outcomes struct {
	mu    sync.Mutex
	added []stock.Added
}

// mostOutcomes is how many entries' outcomes are kept.
const mostOutcomes = 100

func (o *outcomes) keep(a stock.Added) {
	o.mu.Lock()
	defer o.mu.Unlock()
	o.added = append(o.added, a)
	if len(o.added) > mostOutcomes {
		o.added = o.added[1:]
	}
}

func (o *outcomes) of(id stock.ID) *stock.Added {
	o.mu.Lock()
	defer o.mu.Unlock()
	for i := range o.added {
		if o.added[i].ID == id {
			a := o.added[i]
			return &a
		}
	}
	return nil
}
