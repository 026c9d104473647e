// Package garden holds a garden as it is described: its places, prices, stock and weather, read from a
// folder or from the invented garden. It makes of them what a season is worked out from. It does not
// know the stock book, nor which plan is followed; what is reckoned from a garden stands in rooms of
// its own.
package garden
