// Package patch works out the planting list: how many places of a patch that does not grow
// each variety gets, which give way to new ones, what is kept back, what is over and short,
// and in which rows they stand.
//
// A Brief says what is wished. Every list is counted in places: what each variety lacks of
// its wish, what stands outside the wished mix, and what would have to be got (see Count).
// The list with the least count is sought as a programme (package solve), and its proof says
// by how many places another list could at most be better.
//
// Left out: when a place is free again within the year, and where each plant is raised; that
// is the season's.
package patch
