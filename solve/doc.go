// Package solve defines mixed-integer linear programmes (columns with costs and bounds, rows
// that constrain them, some columns whole) and what an answer must prove. It knows nothing of
// plants: the season and the planting list are given to it as numbers.
//
// A Programme always minimises cost. A Solver answers it with values, their cost, and a lower
// bound on the cost; if the two differ, the answer reports the gap. There are two solvers:
// Plain, in this package, which needs no library and often leaves a wider gap, and that of
// internal/highs, which closes it.
//
// No answer needs to be trusted. Programme.Check evaluates the values again, and
// Programme.Bound turns dual prices into a bound, whoever found them. Both round outwards, so
// that their results also hold in exact arithmetic. Programme.WriteMPS writes the programme
// for other solvers.
//
// Nothing here reads a clock: limits are counts, and the same programme with the same limits
// gives the same answer on every run. Fused multiply-add is avoided, so that machines agree as
// far as their exponential functions do.
package solve
