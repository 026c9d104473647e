package sources

import (
	"eyeup/internal/desk"
	"eyeup/internal/reckon"
)

const (
	oddsModel = "The share of the record's springs with a freeze, at or below 0 °C (32 °F), later than the day. With this number of springs, the true odds lie in the range four times in five (Jeffreys)."
	datesAre  = "Quantiles over the years of the record (type 8 of Hyndman & Fan 1996). A year in which too many days are missing is left out; a year without a freeze counts."
)

// OfFrost says where the odds and dates of frost come from.
func OfFrost(d *desk.Desk, a *reckon.FrostAnswer) []Basis {
	records, assumed := weatherRecords(d.Site()), []string{a.Note, noForecast}
	return []Basis{
		{Key: "odds", Of: "the odds of one more freeze", Made: "The share of the record's springs in which it froze later than the day.", Model: oddsModel, Records: records, Assumed: assumed, Change: byGarden},
		{Key: "dates", Of: "frost dates", Made: "The last freeze of each spring and the first of each autumn, and the days between.", Model: datesAre, Records: records, Assumed: assumed, Change: byGarden},
		{Key: "planting", Of: "plant out after", Made: "The first day after which the share of springs with a freeze is no more than the risk you accept.", Model: datesAre, Records: records, Assumed: assumed, Change: byGarden},
		{Key: "year", Of: "the typical year", Made: "The mean of each month's daily lows and highs, year by year; the coldest low of all years; and the mean number of days at or below freezing. Days without a low or a high are left out.", Records: records, Assumed: []string{noForecast}, Change: byGarden},
	}
}
