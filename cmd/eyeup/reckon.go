package main

// reckonCommand holds the single calculations, one word each.
type reckonCommand struct {
	Air     airCommand     `cmd:"" help:"What air of a temperature and humidity is like."`
	Culture cultureCommand `cmd:"" help:"What is known of how a kind is raised, and how sure it is."`
	Light   lightCommand   `cmd:"" help:"The light of a place month by month, and what lamps would have to add."`
	Mite    miteCommand    `cmd:"" help:"How fast mites or thrips go from egg to adult."`
	Sprout  sproutCommand  `cmd:"" help:"How soon a kind comes up in a warm place."`
	Sun     sunCommand     `cmd:"" help:"Where the sun stands; when it rises and sets."`
}
