package sources

import (
	"eyeup/internal/desk"
	"eyeup/internal/reckon"
)

const (
	oddsModel = "The share of the record's springs with a freeze, at or below 0 °C (32 °F), later than the day; the range is where the true odds lie four times in five, as far as so many springs can tell (Jeffreys)."
	datesAre  = "Quantiles over the years of the record (type 8 of Hyndman & Fan 1996). A year in which too many days are missing is left out; a year without a freeze counts."
)

// OfFrost say what the odds and dates of frost rest on.
func OfFrost(d *desk.Desk, a *reckon.FrostAnswer) []Basis {
	records, assumed := weatherRecords(d.Site()), []string{a.Note, noForecast}
	return []Basis{
		{Key: "odds", Of: "the odds of one more freeze", Made: "In how many springs of the record it froze later than the day.", Model: oddsModel, Records: records, Assumed: assumed, Change: byGarden},
		{Key: "dates", Of: "frost dates", Made: "The last freeze of each spring and the first of each autumn, and the days between.", Model: datesAre, Records: records, Assumed: assumed, Change: byGarden},
		{Key: "planting", Of: "plant out after", Made: "The first day after which a freeze comes in no more of the springs than the risk.", Model: datesAre, Records: records, Assumed: assumed, Change: byGarden},
		{Key: "year", Of: "the typical year", Made: "Means of each month's daily lows and highs, year by year; the coldest of all; and how many days are at or below freezing, in the mean of the years. Days without a low or a high are left out.", Records: records, Assumed: []string{noForecast}, Change: byGarden},
	}
}
