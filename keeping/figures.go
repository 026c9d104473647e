package keeping

import (
	"math"
	"slices"
	"strings"

	"eyeup/culture"
	"eyeup/odds"
)

// Units that package culture lacks.
const (
	Transpiration culture.Unit = "ng/kg/s/Pa"
	ADay          culture.Unit = "share/d"
)

const (
	noCurve  = "assumption: nothing is published for dahlia; agrees with bare clumps that wrinkle over a winter at 42-43 °F and 52 % and live, and packed ones that stay firm"
	ranking  = "assumption: nothing is measured but that peat with sawdust kept dahlias best and sand worst (Ciobanu et al., Not. Bot. Horti Agrobot. Cluj)"
	recalled = "from memory: the limit is not published"
)

// figures are all figures of this package. Those of a kind as a whole are in package culture.
var figures = []culture.NamedFigure{
	{Key: "dahlia clump coefficient", Meaning: "water lost through the skin", Figure: culture.Figure{
		Low: 25, Value: 40, High: 60, Unit: Transpiration, Sure: culture.Assumption, Source: noCurve}},
	{Key: "dahlia division coefficient", Meaning: "water lost through skin and cut", Figure: culture.Figure{
		Low: 30, Value: 60, High: 120, Unit: Transpiration, Sure: culture.Assumption,
		Source: "assumption: one and a half times a clump's; cut potatoes lost 1.75 times what whole ones did in their first week (J. Hort. Sci. Biotech. 2014)"}},
	{Key: "apart", Meaning: "weight lost independently of the air", Figure: culture.Figure{
		Low: 0, Value: 0.0001, High: 0.0003, Unit: ADay, Sure: culture.Assumption, Source: noCurve}},
	{Key: "surface", Meaning: "humidity of the air at the skin", Figure: culture.Figure{
		Low: 0.97, Value: 0.98, High: 1, Unit: culture.Share, Sure: culture.Practice, Source: "common practice: water activity of fresh roots, 0.98 to 1"}},
	{Key: "wrinkled", Meaning: "weight lost at which skin wrinkles", Figure: culture.Figure{
		Low: 0.06, Value: 0.08, High: 0.1, Unit: culture.Share, Sure: culture.Memory, Source: recalled}},
	{Key: "dried out", Meaning: "weight lost at which it is dead", Figure: culture.Figure{
		Low: 0.2, Value: 0.3, High: 0.4, Unit: culture.Share, Sure: culture.Memory, Source: recalled}},
	{Key: "dried out spread", Meaning: "spread of that limit within a lot", Figure: culture.Figure{
		Low: 0.03, Value: 0.05, High: 0.08, Unit: culture.Share, Sure: culture.Assumption, Source: "assumption: a lot does not die in one day"}},

	{Key: "bare packing", Meaning: "times less is lost than bare", Figure: culture.Figure{
		Low: 1, Value: 1, High: 1, Unit: culture.Times, Sure: culture.Measured, Source: "by definition"}},
	{Key: "vermiculite packing", Meaning: "times less is lost than bare", Figure: culture.Figure{
		Low: 5, Value: 8, High: 15, Unit: culture.Times, Sure: culture.Assumption, Source: noCurve}},
	{Key: "peat packing", Meaning: "times less is lost than bare", Figure: culture.Figure{
		Low: 5, Value: 8, High: 15, Unit: culture.Times, Sure: culture.Assumption, Source: ranking}},
	{Key: "sawdust packing", Meaning: "times less is lost than bare", Figure: culture.Figure{
		Low: 5, Value: 8, High: 15, Unit: culture.Times, Sure: culture.Assumption, Source: ranking}},
	{Key: "shavings packing", Meaning: "times less is lost than bare", Figure: culture.Figure{
		Low: 3, Value: 6, High: 12, Unit: culture.Times, Sure: culture.Assumption, Source: "assumption: as sawdust, but airier"}},
	{Key: "sand packing", Meaning: "times less is lost than bare", Figure: culture.Figure{
		Low: 2, Value: 4, High: 8, Unit: culture.Times, Sure: culture.Assumption, Source: ranking}},
	{Key: "paper packing", Meaning: "times less is lost than bare", Figure: culture.Figure{
		Low: 1.3, Value: 2, High: 4, Unit: culture.Times, Sure: culture.Assumption, Source: "assumption: a few sheets hold the air still, no more"}},

	{Key: "freezes", Meaning: "roots freeze below", Figure: culture.Figure{
		Low: -2, Value: 0, High: 0, Unit: culture.Celsius, Sure: culture.Memory, Source: "from memory: a freezing point was not found; the freezing of water is the guard"}},
	{Key: "alarm", Meaning: "warm the store below", Figure: culture.Figure{
		Low: 1.5, Value: 1.7, High: 2, Unit: culture.Celsius, Sure: culture.Practice, Source: "common practice: 35 °F, before anything freezes"}},
	{Key: "pace spread", Meaning: "spread of varieties about their kind", Figure: culture.Figure{
		Low: 0.3, Value: 0.5, High: 0.8, Unit: culture.Times, Sure: culture.Assumption, Source: "assumption: agrees with sorts that keep in anything and sorts that hardly keep"}},
	{Key: "rot warmth", Meaning: "rot grows, for each 10 K", Figure: culture.Figure{
		Low: 1.5, Value: 2.5, High: 4, Unit: culture.Times, Sure: culture.Assumption, Source: "assumption: as most decay; agrees with moulds at their best near 20 °C"}},
	{Key: "rot wet", Meaning: "rot grows, from usual to soaking air", Figure: culture.Figure{
		Low: 1.5, Value: 3, High: 6, Unit: culture.Times, Sure: culture.Assumption, Source: "assumption: agrees with societies' advice that wet packing rots dahlias"}},
	{Key: "rot damp", Meaning: "humidity at the skin, usually", Figure: culture.Figure{
		Low: 0.88, Value: 0.92, High: 0.95, Unit: culture.Share, Sure: culture.Assumption, Source: "assumption: what packing makes of a room at half humidity; growers read 80 to 96 % in it"}},
	{Key: "rot winter", Meaning: "length of a usual winter in store", Figure: culture.Figure{
		Low: 120, Value: 150, High: 180, Unit: culture.Days, Sure: culture.Practice, Source: "common practice: lifted in October or November, woken in March or April"}},
	{Key: "rot usual", Meaning: "temperature of a usual store", Figure: culture.Figure{
		Low: 4.4, Value: 7.2, High: 10, Unit: culture.Celsius, Sure: culture.Practice, Source: "common practice: 40 to 50 °F"}},
}

// Figures returns every figure that the package uses.
func Figures() []culture.NamedFigure { return slices.Clone(figures) }

// FiguresOf returns the figures used for a stock.
func FiguresOf(s Stock) []culture.NamedFigure {
	var all []culture.NamedFigure
	for _, f := range figures {
		skin, pack := strings.HasSuffix(f.Key, " coefficient"), strings.HasSuffix(f.Key, " packing")
		if !skin && !pack || f.Key == s.Kind+" "+s.Form+" coefficient" || f.Key == s.Pack+" packing" {
			all = append(all, f)
		}
	}
	return all
}

// figure returns one figure; NaN if it is not in the table.
func figure(key string) culture.Figure {
	for _, f := range figures {
		if f.Key == key {
			return f.Figure
		}
	}
	return culture.Figure{Low: math.NaN(), Value: math.NaN(), High: math.NaN()}
}

// amounts converts the ranges of figures to distributions.
func amounts(figures []culture.Figure) []odds.Amount {
	all := make([]odds.Amount, len(figures))
	for i, f := range figures {
		all[i] = odds.Amount{Low: f.Low, Middle: f.Value, High: f.High}
	}
	return all
}

func known(f culture.Figure) bool { return !math.IsNaN(f.Value) }
