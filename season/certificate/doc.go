// Package certificate holds the written proof that a season's plan is near the best, and
// checks it.
//
// A proof is a tree of settings searched by branch and bound (see package season/prove). Its
// leaves together hold every setting: a heater is on from one of a range of days to one of
// another, and its level steps on one of a third. For each leaf the certificate names dual
// prices of what is limited: bench room, hours, shared lamps. Whoever found the prices, they
// give a Lagrangian bound: no plan in that leaf costs less. The least of these bounds holds
// for all plans.
//
// Check works the bounds out again, rounded outwards, and checks that the leaves leave no
// setting out. This package imports neither the search nor package season, so it shares no
// code and no mistake with them. What it takes on trust is the data: what each way to raise a
// plant takes and gains, and what a heater costs from one day to another.
package certificate
