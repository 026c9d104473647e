package exchange

// coverNames and fuelNames are the rows of the tables of package place.
func coverNames() []string {
	return []string{"single-glass", "twin-wall", "single-film", "double-film"}
}

func fuelNames() []string {
	return []string{"electricity", "propane", "natural-gas", "oil", "wood", "pellets"}
}
