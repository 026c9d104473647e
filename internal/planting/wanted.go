package planting

import (
	"slices"

	"eyeup/stock"
)

// SortOf is a variety with all that the garden holds of it.
type SortOf struct {
	stock.Variety
	Holdings []stock.Holding
}

// Sorts gathers holdings by variety, in their order.
func Sorts(all []stock.Holding) []SortOf {
	var found []SortOf
	for _, h := range all {
		at := slices.IndexFunc(found, func(s SortOf) bool { return s.Name == h.Variety.Name && s.Kind == h.Variety.Kind })
		if at < 0 {
			found, at = append(found, SortOf{Variety: h.Variety}), len(found)
		}
		found[at].Holdings = append(found[at].Holdings, h)
	}
	return found
}

// Wanted returns what the patch and the reserve want of the variety.
func (s SortOf) Wanted() (plant, reserve int) {
	for _, h := range s.Holdings {
		plant, reserve = plant+h.Plant, reserve+h.Reserve
	}
	return plant, reserve
}
