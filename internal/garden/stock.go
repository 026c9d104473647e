package garden

import (
	"cmp"
	"slices"

	"eyeup/internal/exchange"
	"eyeup/season"
	"eyeup/stock"
)

// StockOf is stock as a season takes it: what waits of each lot in each place, with what is still
// wanted of it, and what grows already.
func (g *Garden) StockOf(all []stock.Holding) (waits []stock.Holding, growing []season.Growing) {
	all = sharedOut(together(all), g.growsNow)
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

// growsNow reports whether some stock was started for this season: it stands in a pot, a tray or the
// ground since the season began, or a list tells that it does. Pots that rest in a store do not grow.
func (g *Garden) growsNow(h stock.Holding) bool {
	at, known := g.Place(h.Place)
	if !Grows(h.Form) || known && at.Sort == exchange.Store {
		return false
	}
	return h.Line > 0 || !h.Since.IsZero() && !h.Since.Before(g.Span.From)
}

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

// sharedOut shares what is wanted out among all that waits to give it. A book tells once of a
// variety how many are wanted, whatever its lots; a list tells it lot by lot, of which some stand
// in several places. What grows already is taken off.
func sharedOut(all []stock.Holding, growsNow func(stock.Holding) bool) []stock.Holding {
	type wish struct{ kind, variety, code string }
	byWish, order := map[wish][]int{}, []wish{}
	for i, h := range all {
		w := wish{h.Variety.Kind, h.Variety.Name, ""}
		if h.Line > 0 {
			if w.code = h.Code; w.code == "" {
				continue
			}
		}
		if byWish[w] == nil {
			order = append(order, w)
		}
		byWish[w] = append(byWish[w], i)
	}
	all = slices.Clone(all)
	for _, w := range order {
		shareWish(all, byWish[w], growsNow)
	}
	return all
}

// shareWish shares out what is wanted of the holdings at some indices: each gives as many as it
// has, in their order; what is still wanted then the clumps give by being divided, each heap as
// its size is, or else the first. What is planted is given before what is kept back.
func shareWish(all []stock.Holding, at []int, growsNow func(stock.Holding) bool) {
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
		if all[i].Form == stock.Seed { // packets, each of many
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

// byClumps shares so many out by the numbers of clumps, to the last one.
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

// Grows reports whether what stands in a form grows already.
func Grows(form stock.Form) bool {
	return form == stock.Cutting || form == stock.Tray || form == stock.Pot || form == stock.Plant
}
