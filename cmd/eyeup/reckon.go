package main

// reckonCommand holds the single calculations, one word each.
type reckonCommand struct {
}
