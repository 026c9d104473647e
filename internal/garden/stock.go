package garden

import (
	"cmp"
	"slices"

	"eyeup/internal/exchange"
	"eyeup/season"
	"eyeup/stock"
)

// StockOf splits stock for a season. waits is what is not started yet, lot by lot and place by place,
// with how many plants are still wanted of it. growing is what was started for this season.
func (g *Garden) StockOf(all []stock.Holding) (waits []stock.Holding, growing []season.Growing) {
	all = allocateWanted(mergeCrates(all), g.growsNow)
	waits, growing = []stock.Holding{}, []season.Growing{}
	for _, h := range all {
		if !g.growsNow(h) {
			waits = append(waits, h)
			continue
		}
		growing = append(growing, season.Growing{
			Code: h.Code, Kind: h.Variety.Kind, Variety: h.Variety.Name, Form: h.Form, Place: h.Place, Count: h.Count, Since: h.Since,
		})
	}
	return waits, growing
}

// growsNow reports whether stock was started for this season. It must be in a pot, a tray or the
// ground, and have stood there no longer than the season lasts; stock of a list has no date and counts
// as started. Pots that rest in a store do not grow.
func (g *Garden) growsNow(h stock.Holding) bool {
	at, known := g.Place(h.Place)
	if !Grows(h.Form) || known && at.Sort == exchange.Store {
		return false
	}
	return h.Line > 0 || !h.Since.IsZero() && !h.Since.Before(g.Span.From)
}

// mergeCrates adds up the holdings of a lot that stand in several crates of one place: a season takes
// them as one, with one number wanted. If any holding has no code, all stay as they are, since rows
// then identify them.
func mergeCrates(all []stock.Holding) []stock.Holding {
	type lotPlace struct {
		code, kind, variety, place string
		form                       stock.Form
	}
	if slices.ContainsFunc(all, func(h stock.Holding) bool { return h.Code == "" }) {
		return all
	}
	at := map[lotPlace]int{}
	var merged []stock.Holding
	for _, h := range all {
		key := lotPlace{h.Code, h.Variety.Kind, h.Variety.Name, h.Place, h.Form}
		i, known := at[key]
		if !known {
			at[key] = len(merged)
			merged = append(merged, h)
			continue
		}
		one := &merged[i]
		one.Count, one.Plant, one.Reserve = one.Count+h.Count, one.Plant+h.Plant, one.Reserve+h.Reserve
	}
	return merged
}

// allocateWanted allocates the plants wanted to the holdings that are not started yet. In a book the
// number wanted belongs to a variety, whatever its lots. In a list it belongs to a lot, which may stand
// in several places. Plants that grow already are subtracted.
func allocateWanted(all []stock.Holding, growsNow func(stock.Holding) bool) []stock.Holding {
	type owner struct{ kind, variety, code string }
	byOwner, order := map[owner][]int{}, []owner{}
	for i, h := range all {
		w := owner{h.Variety.Kind, h.Variety.Name, ""}
		if h.Line > 0 {
			if w.code = h.Code; w.code == "" {
				continue
			}
		}
		if byOwner[w] == nil {
			order = append(order, w)
		}
		byOwner[w] = append(byOwner[w], i)
	}
	all = slices.Clone(all)
	for _, w := range order {
		allocate(all, byOwner[w], growsNow)
	}
	return all
}

// allocate allocates the plants wanted to the holdings at some indices. Each gives as many as it has,
// in order. The rest comes from dividing clumps, in proportion to how many each holding has; without
// clumps, the first holding gives it. Plants for the patch are allocated before the reserve.
func allocate(all []stock.Holding, at []int, growsNow func(stock.Holding) bool) {
	plant, reserve, growing := 0, 0, 0
	var waits []int
	for _, i := range at {
		plant, reserve = plant+all[i].Plant, reserve+all[i].Reserve
		switch {
		case growsNow(all[i]):
			growing += all[i].Count
			fallthrough
		case Grows(all[i].Form):
			all[i].Plant, all[i].Reserve = 0, 0
		default:
			waits = append(waits, i)
		}
	}
	reserve = max(0, reserve-max(0, growing-plant))
	plant = max(0, plant-growing)
	if at = waits; len(at) == 0 {
		return
	}
	gives, lacking := make([]int, len(at)), plant+reserve
	for n, i := range at {
		gives[n] = min(lacking, all[i].Count)
		if all[i].Form == stock.Seed { // a packet holds enough seed for all
			gives[n] = lacking
		}
		lacking -= gives[n]
	}
	for n, more := range byClumps(all, at, lacking) {
		gives[n] += more
	}
	for n, i := range at {
		all[i].Plant = min(plant, gives[n])
		all[i].Reserve = gives[n] - all[i].Plant
		plant -= all[i].Plant
	}
}

// byClumps splits count in proportion to the clumps of each holding, in whole numbers that add up to
// count: the largest remainders are rounded up.
func byClumps(all []stock.Holding, at []int, count int) []int {
	shares, clumps := make([]int, len(at)), 0
	for _, i := range at {
		if all[i].Form == stock.Clump {
			clumps += all[i].Count
		}
	}
	if clumps == 0 {
		shares[0] = count
		return shares
	}
	left, largest := count, []int{}
	for n, i := range at {
		if all[i].Form == stock.Clump {
			shares[n] = count * all[i].Count / clumps
			left, largest = left-shares[n], append(largest, n)
		}
	}
	slices.SortStableFunc(largest, func(a, b int) int {
		return cmp.Compare(count*all[at[b]].Count%clumps, count*all[at[a]].Count%clumps)
	})
	for _, n := range largest[:left] {
		shares[n]++
	}
	return shares
}

// Grows reports whether stock of a form is growing: a cutting, tray, pot or plant.
func Grows(form stock.Form) bool {
	return form == stock.Cutting || form == stock.Tray || form == stock.Pot || form == stock.Plant
}
