// Package solve states a programme (columns with costs and bounds, rows that bind them,
// some columns whole) and what an answer to it must prove. It knows nothing of plants:
// the season and the planting list are put to it as numbers.
//
// A Programme is always a search for the least cost. A Solver answers it with values, what
// they cost, and a bound below which no answer can lie; the two may stand apart, and then
// the gap is told. There are two solvers: Plain, here, which needs nothing but arithmetic
// and is honest about a wider gap, and the one of internal/highs, which closes it.
//
// No answer need be believed. Programme.Check multiplies the values out again, and
// Programme.Bound turns a price on each row into a bound, whoever found the prices; both
// round outwards, so that what they grant holds in exact arithmetic too. Programme.WriteMPS
// writes the programme for other solvers.
//
// Nothing here reads a clock: limits are counts, and the same programme with the same limits
// gives the same answer on every run. Products are kept from being fused with sums, so that
// machines agree as far as their exponential functions do.
package solve
