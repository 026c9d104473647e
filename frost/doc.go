// Package frost tells when it freezes: the last freeze of each spring and the first of
// each autumn in a weather record, how they are spread over the years, and the odds that
// one more comes after a given day.
//
// A freeze of a threshold is a day whose low is at or below it, as in the published
// normals of the United States. Those come from minima that were filled in from
// neighbours and fitted to homogenised means; a raw record differs from them by days.
//
// A year without a freeze is a year, and stays in the count; a year whose record has too
// many gaps where it matters is none, and is named.
package frost
