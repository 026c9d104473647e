package desk

import (
	"slices"

	"eyeup/stock"
)

// together puts together what stands of a lot in several crates of one place, as a season
// raises it: wanted is told once of a lot, and all its crates are there to give it. Stock of
// which some has no code is told apart by its rows and stays as it is.
func together(all []stock.Holding) []stock.Holding {
	type heap struct {
		code, kind, variety, place string
		form                       stock.Form
	}
	if slices.ContainsFunc(all, func(h stock.Holding) bool { return h.Code == "" }) {
		return all
	}
	at := map[heap]int{}
	var fewer []stock.Holding
	for _, h := range all {
		key := heap{h.Code, h.Variety.Kind, h.Variety.Name, h.Place, h.Form}
		i, known := at[key]
		if !known {
			at[key] = len(fewer)
			fewer = append(fewer, h)
			continue
		}
		one := &fewer[i]
		one.Count, one.Plant, one.Reserve = one.Count+h.Count, one.Plant+h.Plant, one.Reserve+h.Reserve
	}
	return fewer
}
