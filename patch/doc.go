// Package patch makes the planting list: how many places of a limited patch each variety gets,
// which give way to new ones, what is kept back, what is surplus and short, and in which rows
// they stand.
//
// A Brief gives the wishes. The cost of a list is measured in places: what each variety lacks
// of its wish, what is outside the wanted mix, and what would have to be acquired (see Count).
// The list of least cost is found by integer programming (package solve); its proof says by
// how many places another list could be better at most.
//
// Not included: when a place becomes free again within the year, and where each plant is
// raised; that is the season's.
package patch
