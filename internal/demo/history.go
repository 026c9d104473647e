package demo

import (
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"

	"eyeup/civil"
	"eyeup/stock"
)

// Begin is the first day of the invented garden's book.
var Begin = civil.MustOn(2023, 11, 4)

// row is a row of the invented garden's stock list.
type row struct {
	variety, kind, code, place, crate, pack string
	form                                    stock.Form
	count                                   int
}

// rows reads the stock list.
func rows() []row {
	f, err := files.Open("garden/stock.csv")
	if err != nil {
		panic(err) // the file is part of the program
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		panic(err)
	}
	at := func(r []string, column string) string { return r[slices.Index(all[0], column)] }
	var list []row
	for _, r := range all[1:] {
		count, err := strconv.Atoi(at(r, "count"))
		if err != nil {
			panic(err)
		}
		list = append(list, row{at(r, "variety"), at(r, "kind"), at(r, "code"), at(r, "place"), at(r, "crate"), at(r, "pack"), stock.Form(at(r, "form")), count})
	}
	return list
}

// History returns three years of entries as a grower would have written them. Their result is
// the stock list of the garden's folder.
func (s *Scribe) History() []stock.Entry {
	h := &history{Scribe: s}
	for i, r := range rows() {
		switch {
		case r.form == stock.Clump:
			h.dahlia(r, i)
		default:
			h.bought(r)
		}
	}
	h.mishaps()
	slices.SortStableFunc(h.entries, func(a, b stock.Entry) int { return int(a.On.Sub(b.On)) })
	return h.entries
}

// history collects entries.
type history struct {
	*Scribe
	entries []stock.Entry
}

func (h *history) write(on civil.Date, kind string, body said) stock.Entry {
	e := h.Entry(on, kind, body)
	h.entries = append(h.entries, e)
	return e
}

// lotOf returns the id of the first lot that an entry created.
func lotOf(e stock.Entry) string { return stock.LotID{Entry: e.ID}.String() }

// year is one growing year of a variety: clumps stored, lost and cut in spring, plants set
// out, clumps lifted.
type year struct{ stored, lost, cut, planted, lifted int }

// years computes a variety's three years backwards from the number of clumps today.
func (h *history) years(clumps int) [3]year {
	var all [3]year
	for i := 2; i >= 0; i-- {
		y := &all[i]
		y.lifted = clumps
		y.planted = clumps + h.some(clumps, 0.04)
		y.cut = max(1, (y.planted*10+27)/28)
		y.lost = h.some(y.cut+1, 0.07)
		y.stored = y.cut + y.lost + h.upTo(1)
		clumps = y.stored
	}
	return all
}

// dahlia writes three years of a variety, from the clumps bought to those in the cellar today.
func (h *history) dahlia(r row, bed int) {
	years := h.years(r.count)
	store := said{"place": "cellar", "crate": r.crate}
	bought := h.write(Begin.AddDays(civil.Days(h.upTo(6))), "taken in", said{
		"variety": r.variety, "kind": r.kind, "form": "clump", "count": years[0].stored,
		"place": "cellar", "crate": r.crate, "pack": r.pack, "how": "bought",
	})
	lot := lotOf(bought)
	for i, y := range years {
		h.winter(lot, 2023+i, y)
		lot = h.spring(lot, 2024+i, y, bed)
		h.summer(lot, 2024+i, bed)
		h.autumn(lot, 2024+i, y, store, r.pack)
	}
	h.write(civil.MustOn(2026, 12, 13), "round", said{"lot": lot, "place": "cellar", "whole": true, "firm": r.count})
}

// winter writes two rounds of the store; the second counts all.
func (h *history) winter(lot string, autumn int, y year) {
	wrinkled := h.some(y.stored-y.lost, 0.15)
	h.write(civil.MustOn(autumn, 12, 17), "round", said{"lot": lot, "place": "cellar", "whole": false, "firm": 1})
	h.write(civil.MustOn(autumn+1, 2, 4), "round", said{
		"lot": lot, "place": "cellar", "whole": true, "firm": y.stored - y.lost - wrinkled, "wrinkled": wrinkled, "lost": y.lost,
	})
}

// spring writes waking, dividing, potting and planting; it returns the lot of divisions.
func (h *history) spring(lot string, in int, y year, bed int) string {
	day := civil.MustOn(in, 3, 22)
	h.write(day.AddDays(-12), "woken", said{"lot": lot, "place": "cellar", "count": y.cut, "to": said{"place": "back room"}})
	h.write(day.AddDays(-3), "eyed", said{"lot": lot, "place": "back room", "count": y.cut})
	never := h.some(y.planted, 0.06)
	good := y.planted + never + h.upTo(2)
	doubtful := h.some(good, 0.12)
	cut := h.write(day, "divided", said{
		"from": lot, "place": "back room", "clumps": y.cut, "good": good, "doubtful": doubtful, "waste": h.some(good, 0.3),
		"sitting": day.String() + "/bench " + strconv.Itoa(bed/6+1), "tools": "cleaned between lots",
	})
	if left := y.stored - y.lost - y.cut; left > 0 {
		h.write(day.AddDays(2), "given away", said{"lot": lot, "place": "cellar", "count": left, "whom": "p2"})
	}
	if doubtful > 0 {
		blind := stock.LotID{Entry: cut.ID, Nth: 1}.String()
		h.write(day.AddDays(35), "destroyed", said{"lot": blind, "all": true, "why": "no eye after five weeks"})
	}
	young := lotOf(cut)
	start := day.AddDays(civil.Days(14 + h.upTo(7)))
	h.write(start, "started", said{"lot": young, "count": y.planted + never, "container": "no1", "to": said{"place": "back room", "form": "pot"}})
	if over := good - y.planted - never; over > 0 {
		h.write(start.AddDays(1), "sold", said{"lot": young, "form": "division", "count": over, "price": said{"v": fmt.Sprintf("%d.00", 4*over), "currency": "USD"}})
	}
	h.write(start.AddDays(20), "up", said{"lot": young, "form": "pot", "count": y.planted})
	h.write(start.AddDays(21), "moved", said{"lot": young, "form": "pot", "all": true, "to": said{"place": "glass"}})
	if never > 0 {
		h.write(start.AddDays(36), "destroyed", said{"lot": young, "form": "pot", "count": never, "why": "five weeks, not up"})
	}
	h.write(civil.MustOn(in, 5, 20), "hardened", said{"lot": young, "form": "pot", "all": true, "to": said{"place": "cold frame"}})
	h.write(civil.MustOn(in, 5, 30), "planted out", said{"lot": young, "form": "pot", "all": true,
		"to": said{"place": "patch", "bed": strconv.Itoa(bed/6 + 1), "row": strconv.Itoa(bed%6 + 1)}})
	return young
}

// summer writes flowering: first flower, name proved, stems cut, and plants marked before the
// frost.
func (h *history) summer(lot string, in, bed int) {
	first := civil.MustOn(in, 7, 20).AddDays(civil.Days(h.upTo(28)))
	h.write(first, "first flower", said{"lot": lot, "place": "patch"})
	h.write(first.AddDays(14), "name proved", said{"lot": lot, "true_to_name": true})
	h.write(first.AddDays(16), "stems cut", said{"lot": lot, "place": "patch", "stems": 8 + h.upTo(20)})
	h.write(civil.MustOn(in, 9, 12), "marked", said{"lot": lot, "place": "patch", "mark": "keep"})
}

// autumn writes lifting, curing and packing.
func (h *history) autumn(lot string, in int, y year, store said, pack string) {
	day := civil.MustOn(in, 10, 18).AddDays(civil.Days(h.upTo(6)))
	to := said{"form": "clump", "place": store["place"], "crate": store["crate"]}
	h.write(day, "lifted", said{"lot": lot, "place": "patch", "count": y.lifted, "lost": y.planted - y.lifted, "to": to})
	h.write(day.AddDays(3), "cured", said{"lot": lot, "place": "cellar"})
	h.write(day.AddDays(12), "packed", said{"lot": lot, "place": "cellar", "medium": pack, "moisture": "barely damp"})
}

// bought writes what was bought last autumn, and a smaller lot of the year before that is used
// up.
func (h *history) bought(r row) {
	if r.form == stock.Corm {
		h.corms(r)
	}
	if r.form == stock.Seed {
		old := h.write(civil.MustOn(2025, 11, 22), "taken in", said{"variety": r.variety, "kind": r.kind, "form": "seed", "count": 1, "place": r.place, "how": "bought"})
		h.write(civil.MustOn(2026, 3, 28), "sown", said{"from": lotOf(old), "packets": 1, "seeds": 24, "count": 24, "to": said{"place": "back room", "form": "tray"}})
	}
	body := said{"variety": r.variety, "kind": r.kind, "form": r.form, "count": r.count, "place": r.place, "code": r.code, "how": "bought"}
	for name, text := range map[string]string{"crate": r.crate, "pack": r.pack} {
		if text != "" {
			body[name] = text
		}
	}
	h.write(civil.MustOn(2026, 10, 31), "taken in", body)
}

func (h *history) corms(r row) {
	old := lotOf(h.write(civil.MustOn(2025, 10, 11), "taken in", said{"variety": r.variety, "kind": r.kind, "form": "corm", "count": r.count / 2, "place": r.place, "how": "bought"}))
	h.write(civil.MustOn(2026, 2, 21), "started", said{"lot": old, "all": true, "to": said{"place": "glass", "form": "tray"}})
	h.write(civil.MustOn(2026, 4, 18), "planted out", said{"lot": old, "all": true, "to": said{"place": "patch", "bed": "9"}})
	h.write(civil.MustOn(2026, 5, 23), "stems cut", said{"lot": old, "place": "patch", "stems": r.count})
	h.write(civil.MustOn(2026, 7, 11), "destroyed", said{"lot": old, "place": "patch", "all": true, "why": "spent"})
}

// mishaps writes what happens in any garden: a swap, a sick plant, a typing error.
func (h *history) mishaps() {
	swapped := h.write(civil.MustOn(2025, 4, 12), "taken in", said{"variety": "Ferry Lamp", "kind": "dahlia", "form": "division", "count": 3, "place": "back room", "how": "swapped"})
	lot := lotOf(swapped)
	h.write(civil.MustOn(2025, 5, 31), "planted out", said{"lot": lot, "all": true, "to": said{"place": "patch", "bed": "9", "row": "1"}})
	h.write(civil.MustOn(2025, 8, 9), "marked sick", said{"lot": lot, "place": "patch", "what": "mosaic on the leaves", "count": 1})
	h.write(civil.MustOn(2025, 8, 10), "destroyed", said{"lot": lot, "place": "patch", "all": true, "why": "mosaic"})
	slip := h.write(civil.MustOn(2025, 8, 10), "note", said{"place": "patch", "text": "bed 9 washed out"})
	h.write(civil.MustOn(2025, 8, 11), "put right", said{"target": slip.ID, "body": said{"place": "patch", "text": "bed 9 left fallow until spring; knives washed"}})
}
