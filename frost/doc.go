// Package frost computes freeze dates from a weather record: the last freeze of each spring
// and the first of each autumn, their spread over the years, and the probability of another
// freeze after a given day.
//
// A freeze at a threshold is a day whose low is at or below it, as in the published normals of
// the United States. Those use minima that were filled from neighbouring stations and fitted
// to homogenised means; a raw record differs from them by days.
//
// A year without a freeze counts as a year. A year whose record has too many gaps near the
// freeze does not count and is reported.
package frost
