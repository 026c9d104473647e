// Package supply reckons what has to be got: mix, pots, bags, feed, water, labels, crates
// and packing, and how many seeds to sow for so many plants.
//
// It takes counts and gives amounts with their spread; it knows no plan. Every figure it
// rests on lies in data/ with its unit, range, source and sureness, and Figures lists them.
// What differs from garden to garden (a pot's volume, a bag's) can be given in place of ours.
package supply
