package main

// reckonCommand holds the single calculations, one word each.
type reckonCommand struct {
	Air     airCommand     `cmd:"" help:"Properties of air at a temperature and humidity."`
	Culture cultureCommand `cmd:"" help:"How a kind of plant is raised, and how sure each figure is."`
	Frost   frostCommand   `cmd:"" help:"When it freezes at a weather station, and the risk of one more freeze."`
	Heat    heatCommand    `cmd:"" help:"Heat needed to keep a place at a temperature, and its coldest nights."`
	Hours   hoursCommand   `cmd:"" help:"Temperature of one day hour by hour, from its low and high."`
	Keep    keepCommand    `cmd:"" help:"How stock keeps in a store: drying, wrinkling, losses."`
	Light   lightCommand   `cmd:"" help:"Light in a place month by month, and how much lamps would have to add."`
	Mite    miteCommand    `cmd:"" help:"How fast mites or thrips grow from egg to adult."`
	Mix     mixCommand     `cmd:"" help:"Potting mix needed for a number of containers."`
	Nights  nightsCommand  `cmd:"" help:"How cold the nights ahead may be, and which stock is at risk."`
	Pack    packCommand    `cmd:"" help:"Crates and packing needed to store stock over winter."`
	Soil    soilCommand    `cmd:"" help:"When soil in open ground is warm enough."`
	Sow     sowCommand     `cmd:"" help:"How many seeds to sow for a number of plants."`
	Sprout  sproutCommand  `cmd:"" help:"How soon a kind comes up, at a temperature."`
	Sun     sunCommand     `cmd:"" help:"Where the sun stands, and when it rises and sets."`
}
