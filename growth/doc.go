// Package growth says how fast plants, and the mites on them, get on at a temperature:
// rates against temperature, sums of warmth, the spread within a lot, and what slows a
// plant down. It knows no kind of plant; the figures are those of package culture.
//
// Two measures of progress are kept apart. Sprouting counts degree-days above a base
// (°C·d). Growing counts days at the best temperature: a day at the best temperature is
// 1, a day at half speed one half. Both are summed hour by hour, since a mean over a day
// that dips below the base understates the warmth of its noon.
//
// Temperatures in the rate functions are plain float64 in °C, since they run over
// every hour of every year. Chief sources: Yan & Hunt 1999 (Annals of Botany 84:607)
// for the curve of growth; the linear sum of warmth is the trade's own.
//
// Left out: humidity, disease, pinching, and the vigour of a single clump.
package growth
