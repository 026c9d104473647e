// Package culture holds the growing figures of every kind of plant: what wakes it, how fast it
// grows, what temperatures it tolerates, and the room and work it needs.
//
// Every figure has a unit, a range, a source and a degree of sureness. Most of what a grower
// needs has never been measured and published. Such a figure is marked common practice or
// assumption, and a garden can replace it by its own (Override). A missing figure is NaN,
// never 0, and Lacks names it.
//
// The figures are in data/, one table for each kind. general.csv holds those common to all
// kinds and the defaults of figures that a kind lacks (General); facts.csv holds what is not a
// number; sources.csv holds the references of the sources. Days of growth are days at the best
// temperature (package growth).
package culture
