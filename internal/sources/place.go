package sources

import (
	"fmt"
	"slices"

	"eyeup/internal/desk"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/reckon"
	"eyeup/internal/report"
	"eyeup/season"
	"eyeup/stock"
)

// weatherRecords name the weather record, and how the patch differs from the station.
func weatherRecords(g *garden.Garden) []Record {
	w := g.Source()
	says := fmt.Sprintf("weather: %d whole years, %d to %d, of %s %s", w.Years, w.FromYear, w.ToYear, w.Station, w.Name)
	if w.MadeUp {
		says = fmt.Sprintf("weather: made up from the garden's monthly normals, %d years; no station measured it", w.Years)
	}
	return []Record{{Says: says, At: at(Weather)}, described("the patch against the station")}
}

const (
	runModel   = "Each place is simulated hour by hour through every year of the record, as air and floor (textbook heat transfer). It loses heat through cover and leaks, stores heat in the floor, and gains it from the sun and the heater. Hourly temperatures come from each day's low and high after Parton & Logan 1981."
	lightModel = "The sun's path at the garden's latitude, dimmed by the day's sky (Hargreaves & Samani, where nobody measured the sun) and by the cover, hour by hour (Collares-Pereira & Rabl 1979). A megajoule gives 2.02 mol of light (Faust & Logan 2018). Lamps add their light for the hours they are on."
	benchModel = "Each batch takes room from the week it arrives to the week it leaves: tight while the plants are small, spaced once their leaves meet."

	evenOdds    = "The middle has even odds; one year in ten lies below the range and one above. The range covers the weather only: the assumptions about cover, floor and leaks are about as uncertain again."
	heldLowest  = "A heated place is held at its lowest level, unless you say that the heaters are off."
	steadyMonth = "The place has this temperature all month, whatever the weather outside. A minimum thermometer there tells you more."
	noForecast  = "Every year of the record is equally likely to come again. This is not a forecast."
	liftAtMost  = "An unheated cover is never taken to be warmer than outside by more than measurements of such covers show."
)

// OfNights says where the figures of the nights ahead come from: outside, in each place, and what is at
// risk.
func OfNights(d *desk.Desk, a *reckon.NightsAnswer) []Basis {
	g := d.Site()
	assumed := []string{noForecast, heldLowest, liftAtMost}
	if a.Typed != nil {
		assumed[0] = "Tonight's low is as you typed it. The days around it are those of each year of the record, today and the day after shifted as a whole to keep their range."
	}
	all := []Basis{{Key: "outside", Of: "the lowest night outside", Made: "The lowest low of these nights in every year of the record, and the share of the years in which it freezes.",
		Records: weatherRecords(g), Assumed: assumed[:1], Change: byGarden}}
	for _, p := range a.Places {
		all = append(all, ofNight(g, p.Name, assumed))
	}
	return append(all, ofRisk(d, a)...)
}

// ofNight says where the coldest nights of one place come from.
func ofNight(g *garden.Garden, name string, assumed []string) Basis {
	night := Basis{Key: Key("night", name), Of: "coldest in " + name, Records: append(weatherRecords(g), described(name)), Assumed: assumed, Change: byGarden,
		Made: "The coldest hour inside over these nights, in every year of the record, and the share of the years in which it freezes there. " + evenOdds}
	p, _ := g.Place(name)
	if p != nil && p.Sort == exchange.Ground {
		night.Made = "The lowest low of these nights at the patch, in every year of the record, and the share of the years in which it freezes."
		night.Assumed = assumed[:1]
		return night
	}
	if p != nil && (p.Sort == exchange.Store || p.Sort == exchange.Room) {
		night.Assumed = []string{steadyMonth}
		night.addLogger(*p)
		return night
	}
	night.Model = runModel
	night.addPlace(g, name)
	return night
}

// ofRisk says, kind by kind, where the odds of cold damage come from.
func ofRisk(d *desk.Desk, a *reckon.NightsAnswer) []Basis {
	var all []Basis
	var seen []string
	for _, p := range a.Places {
		for _, r := range p.AtRisk {
			k, known := d.Site().Kind(r.Kind)
			if !known || slices.Contains(seen, r.Kind) {
				continue
			}
			seen = append(seen, r.Kind)
			risk := Basis{Key: Key("risk", r.Kind), Of: "cold and " + r.Kind, Made: "The share of the years in which the place gets cold enough to harm this kind, with the stock that the book has there.",
				Records: append(counted(d), Record{Says: "how cold each place gets", At: here("night", p.Name)}), Assumed: []string{"A freeze harms all plants of a kind alike, hardened or not."}, Change: byFigures}
			risk.addKind(k, "cold.dead", "cold.damage", "cold.back")
			all = append(all, risk)
		}
	}
	return all
}

// OfPlaces says where the figures in the list of places come from.
func OfPlaces(d *desk.Desk, all []desk.PlaceNow) []Basis {
	list := []Basis{
		{Key: "there", Of: "what stands there", Made: "All individuals that the book has in the place.", Model: foldModel, Records: counted(d), Change: byEntry},
		{Key: "room", Of: "bench and crates", Made: "The room that the place has.", Records: []Record{described("measures and crates")}, Change: byGarden},
	}
	for _, p := range all {
		if p.Plan == nil || p.Plan.Heat == nil {
			continue
		}
		heat := Basis{Key: Key("heat", p.Name), Of: "heat in " + p.Name, Made: "Heat for the weeks in which the plan uses the place at its level, in a middle year, and the years in which it still freezes inside. " + reckon.AskedMeans,
			Model: runModel, Records: slices.Concat(planRecords(d), weatherRecords(d.Site()), []Record{described(p.Name)}), Assumed: []string{noForecast, evenOdds}, Change: byChange}
		heat.addPlace(d.Site(), p.Name)
		list = append(list, heat)
	}
	return list
}

// OfHeat says where the heat of a place's levels comes from, column by column.
func OfHeat(d *desk.Desk, a *reckon.HeatAnswer) []Basis {
	base := Basis{Model: runModel, Records: append(weatherRecords(d.Site()), described("the place")), Assumed: []string{noForecast, evenOdds}, Change: byGarden}
	base.addUsed(a.Figures)
	of := func(key, of, made string) Basis {
		g := base
		g.Key, g.Of, g.Made = key, of, made
		return g
	}
	asked := of("asked", "heat needed and given", "Useful heat over the whole season, year by year. "+reckon.AskedMeans)
	short := of("short", "hours short, and by how much", "Hours more than half a kelvin below the level, and the worst of them, year by year.")
	cold := of("cold", "freezing inside, and the coldest nights", "The years in which it freezes inside at the level, and the coldest hours of all years.")
	cost := Basis{Key: "cost", Of: "cost", Made: "Heat given, divided by the heater's efficiency, times the price of its fuel.",
		Records: []Record{{Says: "heat given", At: here("asked")}, described("price and heater")}, Assumed: slices.Clone(a.Notes), Change: byGarden}
	short.Figures, cold.Figures = nil, nil // they are the same as for heat
	short.Records = append(slices.Clone(short.Records), Record{Says: "the figures of the place: see heat needed", At: here("asked")})
	cold.Records = short.Records
	return []Basis{asked, cost, short, cold}
}

// OfLight says where the light of a place comes from.
func OfLight(d *desk.Desk, a *reckon.LightAnswer) []Basis {
	assumed := []string{a.Sky}
	if a.Note != "" {
		assumed = append(assumed, a.Note)
	}
	records := append(weatherRecords(d.Site()), described("cover and lamps"))
	return []Basis{
		{Key: "light", Of: "light outside and here", Made: "The light of a mean day of the month, over the years of the record.", Model: lightModel, Records: records, Assumed: assumed, Change: byGarden},
		{Key: "hours", Of: "hours of day and of lamps", Made: "Day: from sunrise to sunset. Then the hours with the lamps of the place, and how long lamps would have to be on for a day of 14 hours.",
			Model: "The sun's path at the garden's latitude, checked against Reda & Andreas, NREL/TP-560-34302.", Records: []Record{described("latitude and lamps")}, Assumed: []string{"In days below 12 hours a dahlia from a tuber forms tubers and blind buds: Konishi & Inaba 1964, Journal of the Japanese Society for Horticultural Science 33:171. Growers lengthen the day to 14 hours with lamps: common practice."}, Change: byGarden},
	}
}

// OfBench says where the fill of a bench comes from.
func OfBench(d *desk.Desk, p *season.PlacePlan) []Basis {
	g := Basis{Key: "bench", Of: "bench over the year", Made: "The room that all batches take there, week by week, beside the room there is.", Model: benchModel,
		Records: append(planRecords(d), described("the bench of "+p.Place)), Change: byFigures}
	g.addBenches(d.Site(), kindsOn(d.Shelf()))
	return []Basis{g}
}

// addBenches adds the figures of how much bench a plant takes, kind by kind.
func (g *Basis) addBenches(garden *garden.Garden, kinds []string) {
	for _, kind := range kinds {
		if k, known := garden.Kind(kind); known {
			g.addKind(k, "bench.")
		}
	}
}

// kindsOn lists the kinds in stock, each once.
func kindsOn(s *desk.Shelf) []string {
	var kinds []string
	for _, v := range s.Varieties {
		kinds = report.AddOnce(kinds, v.Kind)
	}
	return kinds
}

// OfThere says where the counts of a place come from, and its warmth where it is steady.
func OfThere(d *desk.Desk, p desk.PlaceNow) []Basis {
	climate := Basis{Key: "climate", Of: "warmth and humidity", Made: "Month by month.", Records: []Record{described("warmth and humidity of " + p.Name)}, Assumed: []string{steadyMonth}, Change: byGarden}
	climate.addLogger(p.Place)
	return []Basis{
		{Key: "there", Of: "what stands here", Made: "All individuals that the book has in the place.", Model: foldModel, Records: counted(d), Change: byEntry},
		{Key: "room", Of: "bench, crates, cover and heater", Made: "As measured by you.", Records: []Record{described(p.Name)}, Change: byGarden},
		climate,
	}
}

// addLogger names the logger of a steady place, where it has one. The logger's hours replace the monthly
// figures of the description.
func (g *Basis) addLogger(p exchange.Place) {
	if p.LogFile == "" {
		return
	}
	g.Records = append(g.Records, Record{Says: "the record of its logger, " + p.LogFile})
	g.Assumed = []string{"On days that the logger did not record, the place has the temperature of its month. " + steadyMonth}
}

func packedWords(s stock.Standing) string {
	if s.Pack == "" {
		return s.Spot.Place + ": here since"
	}
	return s.Spot.Place + ": packed in " + s.Pack + ", here since"
}
