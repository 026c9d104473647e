package weather

import "math"

// plane is a linear model of a standard deviation, in K, by the yearly swing and by how far a
// month is below the year's warmest, both in K of monthly means.
type plane struct{ level, swing, below float64 }

func (p plane) at(swing, below float64) float64 { return p.level + p.swing*swing + p.below*below }

// Spreads of single days about normal and of monthly means over the years. Fitted by least squares to
// the 60 station-months of Waterville ME, New York Central Park (GHCN-Daily, 1981-2010),
// Grand Forks ND (GHCN-Daily, 1986-2015), Rennes (GHCN-Daily, 1981-2010) and Mullingar (Met Éireann, 1981-2010):
// from a swing of 12 K in Ireland to 34 K in North Dakota. They are right within 0.5 K as
// a root mean square, at worst 1.2 K; beyond such climates they are a guess.
var (
	dailyLow    = plane{1.97, 0.033, 0.130}
	dailyHigh   = plane{1.53, 0.089, 0.076}
	monthlyLow  = plane{0.63, 0.013, 0.070}
	monthlyHigh = plane{0.79, 0.029, 0.041}
)

// together is the correlation between a month's mean low and mean high over the years: 0.72 as
// a mean over the stations and months named at dailyLow, from 0.0 (a dry Maine summer) to
// 0.97.
const together = 0.72

// steeper corrects for the interpolation between months, which reduces the variance of a
// month's mean.
var steeper = 1 / math.Sqrt(own*own+2*neighbour*neighbour)

// spread divides the variance of days between the chain and the months' offsets, so that days
// and monthly means both vary as measured.
func (w *writer) spread() {
	ofHighs, ofLows := w.chain.monthVariance()
	coldest, warmest := math.Inf(1), math.Inf(-1)
	for m := range w.lows {
		mean := (w.lows[m] + w.highs[m]) / 2
		coldest, warmest = min(coldest, mean), max(warmest, mean)
	}
	for m := range w.lows {
		below := warmest - (w.lows[m]+w.highs[m])/2
		w.spreadL[m], w.offsetL[m] = shareOut(dailyLow.at(warmest-coldest, below), monthlyLow.at(warmest-coldest, below), ofLows)
		w.spreadH[m], w.offsetH[m] = shareOut(dailyHigh.at(warmest-coldest, below), monthlyHigh.at(warmest-coldest, below), ofHighs)
	}
}

// shareOut solves s² + o² = daily² and s²·v + o² = monthly² for the chain's part s and the
// offset's part o, where v is the variance of a monthly mean of the chain. If the chain alone
// varies enough between months, o is 0.
func shareOut(daily, monthly, v float64) (chain, offset float64) {
	o := (monthly*monthly - v*daily*daily) / (1 - v)
	if o <= 0 {
		return daily, 0
	}
	return math.Sqrt(max(daily*daily-o, 0)), math.Sqrt(o)
}
