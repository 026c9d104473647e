package main

// reckonCommand holds the single calculations, one word each.
type reckonCommand struct {
	Air     airCommand     `cmd:"" help:"What air of a temperature and humidity is like."`
	Culture cultureCommand `cmd:"" help:"What is known of how a kind is raised, and how sure it is."`
	Frost   frostCommand   `cmd:"" help:"When it freezes at a station, and the odds of one more."`
	Heat    heatCommand    `cmd:"" help:"What it takes to hold a place at a level, and its worst nights."`
	Hours   hoursCommand   `cmd:"" help:"The air of one day hour by hour, from its low and high."`
	Keep    keepCommand    `cmd:"" help:"What a store does to what lies in it: drying, wrinkling, losses."`
	Light   lightCommand   `cmd:"" help:"The light of a place month by month, and what lamps would have to add."`
	Mite    miteCommand    `cmd:"" help:"How fast mites or thrips go from egg to adult."`
	Mix     mixCommand     `cmd:"" help:"How much mix so many containers take."`
	Nights  nightsCommand  `cmd:"" help:"How cold the nights ahead may be, and what they put at risk."`
	Pack    packCommand    `cmd:"" help:"Crates and packing to put stock away for the winter."`
	Soil    soilCommand    `cmd:"" help:"When open soil is warm enough."`
	Sow     sowCommand     `cmd:"" help:"How many seeds to sow for so many plants."`
	Sprout  sproutCommand  `cmd:"" help:"How soon a kind comes up in a warm place."`
	Sun     sunCommand     `cmd:"" help:"Where the sun stands; when it rises and sets."`
}
