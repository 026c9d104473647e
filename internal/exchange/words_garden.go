package exchange

import (
	"maps"
	"slices"
	"sync"

	"eyeup/culture"
	"eyeup/patch"
	"eyeup/place"
	"eyeup/supply"
)

var partTitles = map[string]string{
	"garden": "the garden", "normals": "its climate", "offset": "the patch compared with the station", "season": "the season",
	"prices": "prices", "patch": "wishes for the patch", "figures": "figures of your own",
	PlacePart(Ground): "open ground", PlacePart(Frame): "cold frame",
}

// groupTitles are the titles of tables within a part; several means numbered ones.
var groupTitles = map[string]struct {
	says    string
	several bool
}{
	"spacing": {"from plant to plant", false}, "variety": {"variety", true}, "mix": {"mix", true},
	"lamps": {"lamps", false}, "heater": {"heater", false}, "vent": {"airing", false}, "screen": {"screen", false}, "warm_bench": {"warm bench", false},
}

// partWords returns the words of all parts.
var partWords = sync.OnceValue(func() map[string][]Word {
	all := map[string][]Word{
		"garden": gardenWords, "normals": normalsWords, "offset": offsetWords, "season": seasonWords,
		"prices": priceWords(), "patch": patchWords(),
	}
	maps.Copy(all, placeWords())
	return all
})

var gardenWords = []Word{
	{Key: "name", Label: "name of the garden"},
	{Key: "latitude", Label: "latitude", Help: "degrees north; south is negative", As: AsDecimal},
	{Key: "longitude", Label: "longitude", Help: "degrees east; west is negative", As: AsDecimal},
	{Key: "elevation", Label: "height above the sea", Help: "such as 180 m", US: "such as 590 ft"},
	{Key: "time_zone", Label: "time zone", Help: "region/city, such as America/New_York"},
	{Key: "units", Label: "measures", Help: "us: °F, feet, gallons; metric: °C, metres, litres", Choices: []string{"us", "metric"}},
	{Key: "currency", Label: "currency", Help: "three letters, such as USD"},
	{Key: "weather", Label: "weather", Help: "made-up, from your monthly means, or the name of a weather file that the garden has"},
	{Key: "station", Label: "station", Help: "where the file holds several"},
	{Key: "from_year", Label: "first year of the record to use", As: AsWhole},
	{Key: "to_year", Label: "last year of the record to use", As: AsWhole},
}

var normalsWords = []Word{
	{Key: "low", Label: "mean lows of the months", Help: "twelve, January first, such as -6C, -4C, …", US: "twelve, January first, such as 20F, 24F, …", As: AsMonths},
	{Key: "high", Label: "mean highs of the months", Help: "twelve, January first", As: AsMonths},
}

var offsetWords = []Word{
	{Key: "night", Label: "by night", Help: "how much warmer the patch is than the station; such as -1 K where cold air gathers", US: "how much warmer the patch is than the station; such as -2 F where cold air gathers"},
	{Key: "day", Label: "by day", Help: "such as 0 K", US: "such as 0 F"},
}

var seasonWords = []Word{
	{Key: "plant_year", Label: "year of planting out", As: AsWhole},
	{Key: "frost_risk", Label: "risk of a freeze after planting out that you accept", Help: "such as 10%"},
	{Key: "fits", Label: "share of years in which the benches must be large enough", Help: "such as 90%"},
	{Key: "hours_per_week", Label: "hours you have for it in a week", Help: "such as 14 h"},
	{Key: "stems_sold", Label: "share of the cut stems that you sell", Help: "such as 30%"},
}

// priceWords are the words of prices; those of fuels and pots come from their tables.
func priceWords() []Word {
	all := []Word{{Key: "electricity", Label: "electricity", Help: "such as 0.30 USD/kWh, in the garden's currency"}}
	for _, name := range place.FuelNames() {
		if fuel, known := place.FuelNamed(name); known && fuel.Burns() {
			all = append(all, Word{Key: name, Label: name, Help: "by the " + fuel.Unit + " or the kWh"})
		}
	}
	all = append(all,
		Word{Key: "mix", Label: "potting mix", Help: "such as 0.30 USD/l", US: "such as 8.50 USD/ft3"},
		Word{Key: "stem", Label: "a stem sold", Help: "such as 0.90 USD"},
		Word{Key: "hour", Label: "an hour of hired hands", Help: "such as 18 USD"},
		Word{Key: "stretched_day", Label: "a stretched day", Help: "value that a plant loses in a day that is too warm for its light, such as 0.05 USD"})
	for _, c := range supply.Containers() {
		all = append(all, Word{Key: "pot_" + c.ID, Label: c.Name, Help: "each, such as 0.55 USD"})
	}
	return all
}

// patchWords are the words of the settings of the planting list.
func patchWords() []Word {
	kinds := culture.Kinds()
	return []Word{
		{Key: "place", Label: "place", Help: "open ground; empty if there is only one"},
		{Key: "kinds", Label: "kinds planted in it", Help: "separated by commas, such as dahlia, anemone; empty: all", As: AsList},
		{Key: "places", Label: "most plants in it", Help: "empty: limited by its area only", As: AsWhole},
		{Key: "low", Label: "a variety is low up to", Help: "its height, such as 85 cm", US: "its height, such as 34 in"},
		{Key: "tall", Label: "a variety is tall from", Help: "its height, such as 115 cm", US: "its height, such as 45 in"},
		{Key: "bed_width", Label: "width of a bed", Help: "such as 1.2 m; with the length of a row, rows are laid", US: "such as 4 ft; with the length of a row, rows are laid"},
		{Key: "row_length", Label: "length of a row", Help: "such as 9 m", US: "such as 30 ft"},
		{Key: "spacing.*", Label: "from * to *", Help: "such as 45 cm; empty: that of the place", US: "such as 18 in; empty: that of the place"},
		{Key: "variety.#.name", Label: "name"},
		{Key: "variety.#.kind", Label: "kind", Choices: kinds},
		{Key: "variety.#.wish", Label: "how much it is wanted", Help: "empty: would like", Choices: []string{string(patch.Must), string(patch.Would), string(patch.Could)}},
		{Key: "variety.#.least", Label: "fewest worth planting", Help: "plants", As: AsWhole},
		{Key: "variety.#.most", Label: "most, where there is room", Help: "plants", As: AsWhole},
		{Key: "variety.#.flower", Label: "form of its flower", Help: "in your own word, such as ball"},
		{Key: "variety.#.colour_word", Label: "its colour as a word", Help: "empty: from its colour code"},
		{Key: "variety.#.spacing", Label: "from plant to plant", Help: "such as 45 cm", US: "such as 18 in"},
		{Key: "variety.#.plant", Label: "wanted in the patch", Help: "plants; this and all below only for a variety that is not in stock yet", As: AsWhole},
		{Key: "variety.#.reserve", Label: "in reserve", Help: "plants kept back as insurance", As: AsWhole},
		{Key: "variety.#.bought", Label: "ordered", Help: "plants ordered but not yet here", As: AsWhole},
		{Key: "variety.#.timing", Label: "timing", Choices: []string{"early", "mid", "late"}},
		{Key: "variety.#.colour", Label: "colour code", Help: "such as #d9962e"},
		{Key: "variety.#.height", Label: "height", Help: "such as 120 cm", US: "such as 4 ft"},
		{Key: "mix.#.kind", Label: "kind", Choices: kinds},
		{Key: "mix.#.by", Label: "by", Choices: traitNames()},
		{Key: "mix.#.want.*", Label: "share of *", Help: "of the kind's plants, such as 25%"},
		{Key: "mix.#.slack", Label: "deviation allowed at no cost", Help: "such as 3%"},
	}
}

// traitNames are the traits that a mix may use.
func traitNames() []string {
	var all []string
	for _, t := range patch.Traits() {
		all = append(all, string(t))
	}
	return all
}

// SharesOf returns the names of the parts of a mix by a trait: all of them, or, where the
// grower may choose names (open), some usual ones.
func SharesOf(by string) (names []string, open bool) {
	if known := words(patch.Trait(by)); known != nil {
		return known, false
	}
	if by == string(patch.Colour) {
		return slices.Clone(patch.Families()), true
	}
	return nil, true
}
