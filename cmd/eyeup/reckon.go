package main

// reckonCommand holds the single calculations, one word each.
type reckonCommand struct {
	Air airCommand `cmd:"" help:"What air of a temperature and humidity is like."`
	Sun sunCommand `cmd:"" help:"Where the sun stands; when it rises and sets."`
}
