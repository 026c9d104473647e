package exchange

import (
	"slices"

	"eyeup/place"
)

// placeWords returns the words of places, by their types.
func placeWords() map[string][]Word {
	sort := Word{Key: "sort", Label: "sort"}
	store := slices.Concat([]Word{sort}, steadyWords, []Word{{Key: "crates", Label: "crates it holds", As: AsWhole}})
	room := slices.Concat([]Word{sort}, steadyWords, []Word{
		{Key: "shelf", Label: "shelf", Help: "such as 3 m2", US: "such as 32 ft2"},
		{Key: "daylight", Label: "daylight", Help: "share of the light outside, such as 10%"},
		{Key: "heat", Label: "heat it costs", Help: "for each degree that it is warmer than outside, such as 20 W/K; 0 W/K if it is heated anyway", US: "for each degree that it is warmer than outside, such as 40 Btu/h/F; 0 W/K if it is heated anyway"},
	}, lampWords)
	glass := slices.Concat([]Word{sort}, shapeWords, coverWords(), []Word{
		{Key: "air_changes", Label: "air changes", Help: "how often its air changes through gaps while shut, such as 1 /h"},
		{Key: "bench", Label: "bench", Help: "such as 15 m2", US: "such as 160 ft2"},
		levelsWord,
	}, heaterWords(), ventWords, []Word{
		{Key: "screen.saves", Label: "what it saves", Help: "share of the heat lost at night, such as 30%"},
		{Key: "warm_bench.area", Label: "area", Help: "besides the bench, such as 2 m2", US: "besides the bench, such as 20 ft2"},
		{Key: "warm_bench.root", Label: "warmth of roots", Help: "such as 20C", US: "such as 68F"},
		{Key: "warm_bench.power", Label: "power", Help: "such as 300 W"},
	}, lampWords)
	frame := slices.Concat([]Word{sort, {Key: "bench", Label: "floor", Help: "such as 6 m2", US: "such as 64 ft2"}}, coverWords(), ventWords)
	ground := []Word{sort, {Key: "bench", Label: "size", Help: "such as 60 m2", US: "such as 640 ft2"},
		{Key: "spacing", Label: "from plant to plant", Help: "such as 45 cm", US: "such as 18 in"}}
	return map[string][]Word{
		PlacePart(Store): store, PlacePart(Room): room, PlacePart(Glass): glass, PlacePart(Frame): frame, PlacePart(Ground): ground,
	}
}

var steadyWords = []Word{
	{Key: "temperature", Label: "warmth", Help: "such as 6C; or twelve separated by commas, January first", US: "such as 42F; or twelve separated by commas, January first", As: AsMonths},
	{Key: "humidity", Label: "humidity of its air", Help: "such as 60%; or twelve", As: AsMonths},
	{Key: "logged", Label: "file with a logger's record of it", Help: "such as cellar.csv"},
}

var shapeWords = []Word{
	{Key: "length", Label: "length", Help: "such as 7 m", US: "such as 24 ft"}, {Key: "width", Label: "width", Help: "such as 3.5 m", US: "such as 12 ft"},
	{Key: "eaves", Label: "height at the eaves", Help: "such as 1.8 m", US: "such as 6 ft"}, {Key: "ridge", Label: "height at the ridge", Help: "such as 2.7 m", US: "such as 9 ft"},
}

// coverWords are the words of a cover.
func coverWords() []Word {
	return []Word{
		{Key: "cover", Label: "cover", Help: "or the two figures below", Choices: place.CoverNames()},
		{Key: "u", Label: "heat loss through the cover (U value)", Help: "such as 3.6 W/m2/K, for a cover that is not in the list"},
		{Key: "light", Label: "light through the cover", Help: "such as 72%, for a cover that is not in the list"},
	}
}

var lampWords = []Word{
	{Key: "lamps.area", Label: "area they light", Help: "such as 1.5 m2", US: "such as 16 ft2"},
	{Key: "lamps.light", Label: "light", Help: "such as 150 umol/m2/s"},
	{Key: "lamps.hours", Label: "hours a day", Help: "such as 14 h"},
	{Key: "lamps.power", Label: "power", Help: "such as 180 W"},
}

// heaterWords are the words of a heater.
func heaterWords() []Word {
	return []Word{
		{Key: "heater.power", Label: "power", Help: "such as 8 kW", US: "such as 30000 Btu/h"},
		{Key: "heater.fuel", Label: "fuel", Choices: place.FuelNames()},
		{Key: "heater.efficiency", Label: "share of its heat that is useful", Help: "such as 85%; empty: usual for the fuel"},
	}
}

var ventWords = []Word{
	{Key: "vent.opens", Label: "opens at", Help: "such as 24C", US: "such as 75F"},
	{Key: "vent.by", Label: "by", Choices: []string{"thermostat", "hand"}},
	{Key: "vent.most", Label: "most air changes", Help: "wide open, such as 40 /h"},
}

var levelsWord = Word{Key: "levels", Label: "heating levels to choose from", Help: "separated by commas, such as off, 5C, 10C", US: "separated by commas, such as off, 40F, 50F", As: AsList}
