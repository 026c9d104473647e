package desk

import (
	"slices"
	"strings"

	"eyeup/stock"
)

// stockSaid makes entries of a stock list: each variety is described, and each row taken
// in as a lot. Rows of one code are one lot, that stands in several spots.
func stockSaid(holdings []stock.Holding) []said {
	all := describedVarieties(holdings)
	for i, h := range holdings {
		if firstOfCode(holdings, i) != i {
			continue
		}
		count := h.Count
		var parts []said
		for j := i + 1; j < len(holdings) && h.Code != ""; j++ {
			if holdings[j].Code == h.Code {
				count += holdings[j].Count
				parts = append(parts, movedApart(h, holdings[j]))
			}
		}
		body := map[string]any{"variety": h.Variety.Name, "kind": h.Variety.Kind, "form": h.Form, "count": count, "place": h.Place}
		for name, text := range map[string]string{"code": h.Code, "crate": h.Crate, "pack": h.Pack, "note": h.Note} {
			if text != "" {
				body[name] = text
			}
		}
		all = append(append(all, said{"taken in", body}), parts...)
	}
	return all
}

// firstOfCode returns the first row of the same code.
func firstOfCode(holdings []stock.Holding, i int) int {
	if holdings[i].Code == "" {
		return i
	}
	return slices.IndexFunc(holdings, func(h stock.Holding) bool { return h.Code == holdings[i].Code })
}

// movedApart brings a part of a lot to where another row has it.
func movedApart(from, to stock.Holding) said {
	spot := func(h stock.Holding) map[string]any {
		s := map[string]any{"place": h.Place, "form": h.Form}
		if h.Crate != "" {
			s["crate"] = h.Crate
		}
		return s
	}
	body := spot(from)
	body["lot"], body["count"], body["to"] = from.Code, to.Count, spot(to)
	return said{"moved", body}
}

// describedVarieties makes entries that describe the varieties of a stock list, with what
// is wanted of each added up over its rows.
func describedVarieties(holdings []stock.Holding) []said {
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
	var all []said
	names := map[string]string{}
	for _, h := range holdings {
		names[h.Variety.Kind+"/"+strings.ToLower(h.Variety.Name)] = h.Variety.Name
	}
	for _, key := range order {
		all = append(all, said{"described", map[string]any{"what": "variety", "name": names[key], "body": wanted[key]}})
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
