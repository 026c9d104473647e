// Package supply computes what to buy: mix, pots, bags, feed, water, labels, crates and
// packing, and how many seeds to sow for a number of plants.
//
// It takes counts and returns amounts with their spread; it knows no plan. Its figures are in
// data/ with unit, range, source and sureness, and Figures lists them. A garden can replace
// those that differ, such as the volume of a pot or a bag.
package supply
