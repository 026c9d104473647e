// Package growth computes how fast plants, and the mites on them, develop at a temperature:
// response curves, thermal time, the spread within a lot, and what slows a plant down. It
// knows no kind of plant; the figures are in package culture.
//
// It uses two measures of progress. Sprouting counts thermal time: degree-days above a base
// (°C·d). Growing counts days at the best temperature: a day at the best temperature is 1, a
// day at half speed one half. Both are summed hourly, because the mean of a day that falls
// below the base underestimates the warmth at noon.
//
// The rate functions use plain float64 in °C, because they run for every hour of every year.
// Main sources: Yan & Hunt 1999 (Annals of Botany 84:607) for the growth curve; thermal time
// is common in the trade.
//
// Not included: humidity, disease, pinching, and the vigour of a single clump.
package growth
