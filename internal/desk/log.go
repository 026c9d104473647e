package desk

import (
	"encoding/json"

	"eyeup/internal/stockbook"
	"eyeup/stock"
)

// LogLine is one entry of the log, as it is shown.
type LogLine struct {
	stock.Entry
	Lot    *stock.Lot // that it is about; nil for none
	Target string     // kind of the entry that it puts right
	Counts bool       // whether it counts still
}

// Log returns so many entries, the last written first, after leaving out skip of them, and
// how many there are in all.
func (d *Desk) Log(skip, most int) (lines []LogLine, all int, err error) {
	var ids []stock.ID
	d.Read(func(b *stock.Book) {
		all = b.Entries()
		for n := all - 1 - skip; n >= 0 && len(ids) < most; n-- {
			ids = append(ids, b.Nth(n))
		}
	})
	for _, id := range ids {
		line, err := d.logLine(id)
		if err != nil {
			return nil, all, err
		}
		lines = append(lines, line)
	}
	return lines, all, nil
}

func (d *Desk) logLine(id stock.ID) (LogLine, error) {
	e, err := d.book.Entry(id)
	if err != nil {
		return LogLine{}, err
	}
	l := LogLine{Entry: e}
	about := e
	if e.Kind == stockbook.PutRight {
		if said, rerr := stockbook.ReadPutRight(e); rerr == nil {
			if about, err = d.book.Entry(said.Target); err != nil {
				return l, err
			}
			l.Target = about.Kind
		}
	}
	var said struct{ Lot, From string }
	_ = json.Unmarshal(about.Body, &said) // what has neither is about no lot
	if said.Lot == "" {
		said.Lot = said.From
	}
	if about.Kind == "taken in" {
		said.Lot = stock.LotID{Entry: about.ID}.String()
	}
	d.Read(func(b *stock.Book) {
		head, stands, _ := b.Head(e.ID)
		l.Counts = stands && head == e.ID || e.Kind == stockbook.PutRight && head == e.ID
		if lot, err := b.Find(said.Lot); err == nil {
			l.Lot = &lot
		}
	})
	return l, nil
}
