package stockbook

import (
	"cmp"
	"slices"
	"strings"

	"eyeup/stock"
)

// StockDrafts drafts the entries of a stock list: one that describes each variety, and one that takes in
// each row as a lot. Rows with the same code are one lot that stands at several spots.
func StockDrafts(holdings []stock.Holding) []Draft {
	all := describedVarieties(holdings)
	for i := range holdings {
		if firstOfCode(holdings, i) == i {
			all = append(all, lotDrafts(holdings, i)...)
		}
	}
	return all
}

// lotDrafts drafts the entries of the lot of row i. All of the lot is taken in at the spot that is
// described with least detail; then parts of it are moved to the spots of the other rows.
func lotDrafts(holdings []stock.Holding, i int) []Draft {
	rows := holdings[i : i+1]
	if code := holdings[i].Code; code != "" {
		rows = slices.Clone(holdings[i:])
		rows = slices.DeleteFunc(rows, func(h stock.Holding) bool { return h.Code != code })
		slices.SortStableFunc(rows, func(a, b stock.Holding) int { return cmp.Compare(detail(a), detail(b)) })
	}
	count := 0
	var parts []Draft
	for j, h := range rows {
		if count += h.Count; j > 0 && !sameSpot(rows[0], h) {
			parts = append(parts, moveDrafts(rows[0], h)...)
		}
	}
	body := spotBody(rows[0])
	body["variety"], body["kind"], body["count"] = rows[0].Variety.Name, rows[0].Variety.Kind, count
	for name, text := range map[string]string{"code": rows[0].Code, "pack": rows[0].Pack, "note": rows[0].Note} {
		if text != "" {
			body[name] = text
		}
	}
	return append([]Draft{{"taken in", body}}, parts...)
}

// sameSpot reports whether two rows have the same spot and form.
func sameSpot(a, b stock.Holding) bool {
	return a.Place == b.Place && a.Crate == b.Crate && a.Bed == b.Bed && a.Row == b.Row && a.Form == b.Form
}

// detail ranks how precisely a row says its spot within a place. A move keeps the crate, bed and row that
// its target does not name. So moves must start from the spot with least detail to reach all others.
func detail(h stock.Holding) int {
	switch {
	case h.Crate == "" && h.Bed == "" && h.Row == "":
		return 0
	case h.Crate == "" && h.Bed == "":
		return 1
	case h.Row == "":
		return 2
	}
	return 3
}

// spotBody returns the members of an entry that name the spot and form of a row.
func spotBody(h stock.Holding) map[string]any {
	s := map[string]any{"place": h.Place, "form": h.Form}
	for name, text := range map[string]string{"crate": h.Crate, "bed": h.Bed, "row": h.Row} {
		if text != "" {
			s[name] = text
		}
	}
	return s
}

// firstOfCode returns the index of the first row with the same code as row i.
func firstOfCode(holdings []stock.Holding, i int) int {
	if holdings[i].Code == "" {
		return i
	}
	return slices.IndexFunc(holdings, func(h stock.Holding) bool { return h.Code == holdings[i].Code })
}

// moveDrafts drafts the entries that move part of a lot to the spot of another row and pack it as that row
// says.
func moveDrafts(from, to stock.Holding) []Draft {
	body := spotBody(from)
	body["lot"], body["count"], body["to"] = from.Code, to.Count, spotBody(to)
	if to.Pack == "" {
		return []Draft{{"moved", body}}
	}
	packed := spotBody(to)
	packed["lot"], packed["count"], packed["medium"] = from.Code, to.Count, to.Pack
	return []Draft{{"moved", body}, {"packed", packed}}
}

// describedVarieties drafts the entries that describe the varieties of a stock list. The numbers wanted
// are added up over the rows of each variety.
func describedVarieties(holdings []stock.Holding) []Draft {
	var order []string
	wanted := map[string]map[string]any{}
	for _, h := range holdings {
		key := h.Variety.Kind + "/" + strings.ToLower(h.Variety.Name)
		v := wanted[key]
		if v == nil {
			v = varietyBody(h)
			wanted[key] = v
			order = append(order, key)
		}
		v["plant"], v["reserve"] = v["plant"].(int)+h.Plant, v["reserve"].(int)+h.Reserve
	}
	var all []Draft
	names := map[string]string{}
	for _, h := range holdings {
		names[h.Variety.Kind+"/"+strings.ToLower(h.Variety.Name)] = h.Variety.Name
	}
	for _, key := range order {
		all = append(all, Draft{"described", map[string]any{"what": "variety", "name": names[key], "body": wanted[key]}})
	}
	return all
}

// varietyBody returns what a row of a stock list says about its variety.
func varietyBody(h stock.Holding) map[string]any {
	f := map[string]any{"kind": h.Variety.Kind, "plant": 0, "reserve": 0}
	for name, text := range map[string]string{"timing": string(h.Variety.Timing), "colour": h.Variety.Colour, "note": h.Note} {
		if text != "" {
			f[name] = text
		}
	}
	if h.Variety.Height > 0 {
		figure, unit, _ := strings.Cut(h.Variety.Height.Written(), " ")
		f["height"] = map[string]string{"v": figure, "u": unit}
	}
	return f
}
