package stockbook

import (
	"cmp"
	"slices"
	"strings"

	"eyeup/stock"
)

// StockSaid makes entries of a stock list: each variety is described, and each row taken
// in as a lot. Rows of one code are one lot, that stands in several spots.
func StockSaid(holdings []stock.Holding) []Said {
	all := describedVarieties(holdings)
	for i := range holdings {
		if firstOfCode(holdings, i) == i {
			all = append(all, lotSaid(holdings, i)...)
		}
	}
	return all
}

// lotSaid makes entries of the lot of a row: all of it is taken in where the row stands that
// says least of its spot, and the rest is brought from there to where the others say.
func lotSaid(holdings []stock.Holding, i int) []Said {
	rows := holdings[i : i+1]
	if code := holdings[i].Code; code != "" {
		rows = slices.Clone(holdings[i:])
		rows = slices.DeleteFunc(rows, func(h stock.Holding) bool { return h.Code != code })
		slices.SortStableFunc(rows, func(a, b stock.Holding) int { return cmp.Compare(detail(a), detail(b)) })
	}
	count := 0
	var parts []Said
	for j, h := range rows {
		if count += h.Count; j > 0 && !sameSpot(rows[0], h) {
			parts = append(parts, movedApart(rows[0], h)...)
		}
	}
	body := spotSaid(rows[0])
	body["variety"], body["kind"], body["count"] = rows[0].Variety.Name, rows[0].Variety.Kind, count
	for name, text := range map[string]string{"code": rows[0].Code, "pack": rows[0].Pack, "note": rows[0].Note} {
		if text != "" {
			body[name] = text
		}
	}
	return append([]Said{{"taken in", body}}, parts...)
}

// sameSpot reports whether two rows stand at one spot as the same.
func sameSpot(a, b stock.Holding) bool {
	return a.Place == b.Place && a.Crate == b.Crate && a.Bed == b.Bed && a.Row == b.Row && a.Form == b.Form
}

// detail is how much a row says of its spot within a place. What is brought elsewhere keeps
// what is not said otherwise; from spots in the order of detail every other one is reached.
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

// spotSaid says where a row stands, and as what.
func spotSaid(h stock.Holding) map[string]any {
	s := map[string]any{"place": h.Place, "form": h.Form}
	for name, text := range map[string]string{"crate": h.Crate, "bed": h.Bed, "row": h.Row} {
		if text != "" {
			s[name] = text
		}
	}
	return s
}

// firstOfCode returns the first row of the same code.
func firstOfCode(holdings []stock.Holding, i int) int {
	if holdings[i].Code == "" {
		return i
	}
	return slices.IndexFunc(holdings, func(h stock.Holding) bool { return h.Code == holdings[i].Code })
}

// movedApart brings a part of a lot to where another row has it, and packs it as that says.
func movedApart(from, to stock.Holding) []Said {
	body := spotSaid(from)
	body["lot"], body["count"], body["to"] = from.Code, to.Count, spotSaid(to)
	if to.Pack == "" {
		return []Said{{"moved", body}}
	}
	packed := spotSaid(to)
	packed["lot"], packed["count"], packed["medium"] = from.Code, to.Count, to.Pack
	return []Said{{"moved", body}, {"packed", packed}}
}

// describedVarieties makes entries that describe the varieties of a stock list, with what
// is wanted of each added up over its rows.
func describedVarieties(holdings []stock.Holding) []Said {
	var order []string
	wanted := map[string]map[string]any{}
	for _, h := range holdings {
		key := h.Variety.Kind + "/" + strings.ToLower(h.Variety.Name)
		v := wanted[key]
		if v == nil {
			v = facts(h)
			wanted[key] = v
			order = append(order, key)
		}
		v["plant"], v["reserve"] = v["plant"].(int)+h.Plant, v["reserve"].(int)+h.Reserve
	}
	var all []Said
	names := map[string]string{}
	for _, h := range holdings {
		names[h.Variety.Kind+"/"+strings.ToLower(h.Variety.Name)] = h.Variety.Name
	}
	for _, key := range order {
		all = append(all, Said{"described", map[string]any{"what": "variety", "name": names[key], "body": wanted[key]}})
	}
	return all
}

// facts are what a row of a stock list says of its variety.
func facts(h stock.Holding) map[string]any {
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
