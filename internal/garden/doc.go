// Package garden holds a garden as described: its places, prices, stock and weather, read from a folder
// or from the invented garden. It builds the brief that a season is computed from. It does not depend on
// the stock book or on the plan that is followed. Calculations about a garden are in packages reckon,
// planting and plans.
package garden
