package planting

import (
	"slices"

	"eyeup/stock"
)

// SortOf is a variety with all of its holdings.
type SortOf struct {
	stock.Variety
	Holdings []stock.Holding
}

// Sorts groups holdings by variety, in the order in which the varieties first appear.
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

// Wanted returns how many of the variety are wanted for the patch and for the reserve.
func (s SortOf) Wanted() (plant, reserve int) {
	for _, h := range s.Holdings {
		plant, reserve = plant+h.Plant, reserve+h.Reserve
	}
	return plant, reserve
}
