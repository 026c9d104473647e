// Package culture holds the figures by which every kind of plant is raised: what wakes
// it, how fast it grows, what it stands, the room and the work it takes.
//
// Every figure carries its unit, a range, where it comes from and how sure it is. Most of
// what a grower needs has never been measured and published; such a figure is marked
// common practice or assumption, and gives way to the garden's own (Override). What is
// not known stays unknown: a number that is not there is not-a-number, never 0, and
// Lacks names it.
//
// The figures lie in data/, one table for each kind; general.csv holds those that do not
// belong to one kind and those that stand in where a kind's own is not known (General),
// facts.csv what is not a number, sources.csv what the short names of sources stand for.
// Days of growth are days at the best temperature (package growth).
package culture
