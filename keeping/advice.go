package keeping

import (
	"math"
	"slices"

	"eyeup/culture"
	"eyeup/quantity"
)

// Advice is what one source advises for storing a kind. NaN marks what it does not say.
type Advice struct {
	Kind                    string
	Coldest, Warmest        float64 // °C
	Driest, Dampest         float64 // humidity of the air, share
	Medium, Source, Remarks string
	Sure                    culture.Sureness
}

var none = math.NaN()

var advice = []Advice{
	{"dahlia", 4.4, 10, none, none, "vermiculite, peat or shavings, a dry place", "Iowa State University Extension 2011", "", culture.Practice},
	{"dahlia", 1.7, 4.4, none, none, "packed", "Purdue University Extension", "prone to drying", culture.Practice},
	{"dahlia", 4.4, 7.2, none, none, "dry sand or peat", "Colorado State University, as quoted in Ohio 2011", "look every few weeks; soak what has shrivelled overnight", culture.Practice},
	{"dahlia", 1.7, 10, none, none, "coarse vermiculite in bags with fine holes", "dahlias.net, Storing", "best about 45 °F (7.2 °C)", culture.Practice},
	{"dahlia", none, 10, none, none, "peat, vermiculite or sawdust", "Cornell Cooperative Extension, Oneida 2017", "warmer, it dries and shrivels", culture.Practice},
	{"dahlia", 5, 8, 0.3, 0.4, "peat with sawdust best, sand worst", "Ciobanu et al., Not. Bot. Horti Agrobot. Cluj", "a trial of packings", culture.Measured},
	{"dahlia", none, none, 0.5, 0.5, "", "Ohio State University Extension 2013", "for tender bulbs in general", culture.Practice},
	{"dahlia", none, none, 0.75, 0.9, "", "common practice", "as many guides have it", culture.Practice},
	{"gladiolus", 1.7, 7.2, none, none, "mesh, dry and airy", "Iowa State University Extension 2011", "", culture.Practice},
	{"canna", 4.4, 10, none, none, "dry", "Iowa State University Extension 2011", "", culture.Practice},
	{"tuberous begonia", 7.2, 10, none, none, "", "Purdue University Extension", "", culture.Practice},
	{"tuberous begonia", 4.4, 10, none, none, "slightly moist peat", "University of Missouri Extension", "", culture.Practice},
	{"caladium", 15.6, 15.6, none, none, "", "Purdue University Extension", "", culture.Practice},
	{"caladium", 21.1, 21.1, 0.75, 0.75, "", "Virginia Cooperative Extension; a producer for the humidity", "", culture.Practice},
	{"sweet potato", 12.8, 15.6, none, none, "", "University of Missouri 2021", "chilled below", culture.Practice},
	{"ranunculus", none, none, none, none, "cool and dry", "Cerveny, Miller & Taylor 2011, HortScience 46:1523", "fewest lived after warm and damp storage", culture.Measured},
}

// Advised returns the advice of all sources for storing a kind.
func Advised(kind string) []Advice {
	var all []Advice
	for _, a := range advice {
		if a.Kind == kind {
			all = append(all, a)
		}
	}
	return slices.Clone(all)
}

// Disagree reports whether the sources on a kind give ranges of humidity that do not overlap,
// and the lowest and highest value given.
func Disagree(kind string) (driest, dampest float64, disagree bool) {
	driest, dampest = math.Inf(1), math.Inf(-1)
	leastDampest, mostDriest := math.Inf(1), math.Inf(-1)
	for _, a := range Advised(kind) {
		if math.IsNaN(a.Driest) {
			continue
		}
		driest, dampest = min(driest, a.Driest), max(dampest, a.Dampest)
		mostDriest, leastDampest = max(mostDriest, a.Driest), min(leastDampest, a.Dampest)
	}
	return driest, dampest, mostDriest > leastDampest
}

// ToDo returns advice for stock in a state, in a store at a temperature.
func ToDo(s State, store quantity.Temperature) string {
	switch {
	case store.Below(quantity.Celsius(figure("freezes").Value)):
		return "warm the store at once and check it in a few days: frozen roots go soft"
	case store.Below(quantity.Celsius(figure("alarm").Value)):
		return "warm the store a little: it is close to freezing"
	}
	switch s {
	case Firm:
		return "leave it; look again in a month"
	case Wrinkled:
		return "moisten the packing a little, or pack bare stock; it is alive, and a night in water before starting plumps it"
	default:
		return "soak one overnight; if it stays limp it is dead"
	}
}
