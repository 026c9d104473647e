package desk

import (
	"eyeup/internal/plans"
	"eyeup/stock"
)

// LastDecided returns the last decision that counts still; nil for none.
func (d *Desk) LastDecided() *plans.Decided {
	last := d.decision()
	if last == nil || last.Said.Plan == "" {
		return nil
	}
	return last
}

// decision is the last decision that counts still, read once; nil for none.
func (d *Desk) decision() *plans.Decided {
	var head stock.ID
	var is bool
	d.Read(func(b *stock.Book) { _, head, is = b.LastOf("decided") })
	d.mu.Lock()
	last := d.last
	d.mu.Unlock()
	switch {
	case !is:
		return nil
	case last != nil && last.ID == head:
		return last
	}
	last = plans.LastDecided(d.book)
	d.mu.Lock()
	defer d.mu.Unlock()
	d.last = last
	return last
}

// Decided returns the name of the plan that the grower decided on last, empty for none.
func (d *Desk) Decided() string {
	if last := d.LastDecided(); last != nil {
		return last.Said.Plan
	}
	return ""
}
