// Package odds says how sure a figure is: quantiles that keep "never" as a value,
// intervals for shares, the beta-binomial, and streams of chance that repeat.
//
// Quantiles are said as a grower says them, never as a bare percentage: an Amount is
// low in one case in ten, middle at even odds, high in one case in ten.
package odds
