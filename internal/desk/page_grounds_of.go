package desk

import (
	"fmt"
	"slices"

	"eyeup/culture"
	"eyeup/place"
	"eyeup/season"
	"eyeup/stock"
)

// weatherRecords name the record of weather and what is known of the patch beside it.
func (g *Garden) weatherRecords() []Record {
	w := g.source()
	says := fmt.Sprintf("weather: %d whole years, %d to %d, of %s %s", w.Years, w.FromYear, w.ToYear, w.Station, w.Name)
	if w.MadeUp {
		says = fmt.Sprintf("weather: made up from the garden's monthly normals, %d years; no station measured it", w.Years)
	}
	return []Record{{Says: says, At: "/weather#source"}, {Says: "the patch against the station, as the garden describes it", At: "/garden"}}
}

const (
	runModel   = "Each place is run hour by hour through every year of the record: heat through its cover and leaks, what its floor keeps, the sun that comes in, and what its heater can give. The middle is even odds; one year in ten lies beyond the range on either side."
	heldLowest = "A heated place is held at the lowest of its levels, unless the heaters are said to be off."
	noForecast = "The years of the record are as likely as each other to come again. They are no forecast."
	liftAtMost = "An unheated cover is promised no more above the night outside than covers have been measured to lift it."
)

// GroundsOfNights say what the nights ahead rest on, and what is at risk in them.
func (d *Desk) GroundsOfNights(a *NightsAnswer) Grounds {
	g := d.Site()
	on := Grounds{Of: "the nights", Records: append(g.weatherRecords(), Record{Says: "what stands in each place, by the book", At: "/stock?by=place"}),
		Model: runModel, Assumed: []string{noForecast, heldLowest, liftAtMost}}
	if a.Typed != nil {
		on.Assumed[0] = "Tonight's low is as you typed it. The days around it are those of each year of the record, today and the day after shifted as a whole to keep their range."
	}
	kinds := map[string]bool{}
	for _, p := range a.Places {
		on.addPlace(g, p.Name)
		for _, r := range p.AtRisk {
			if k, known := g.kind(r.Kind); known && !kinds[r.Kind] {
				kinds[r.Kind] = true
				on.addKind(k, "cold.dead", "cold.damage", "cold.back")
			}
		}
	}
	return on
}

// addPlace adds the figures of a covered place.
func (g *Grounds) addPlace(garden *Garden, name string) {
	p, known := garden.Place(name)
	house, covered := p.Model.(place.Covered)
	if !known || !covered {
		return
	}
	for _, f := range (&heating{covered: &house}).figures() {
		g.add(f)
	}
}

// addKind adds figures of a kind, the kind's name before their meaning.
func (g *Grounds) addKind(k *culture.Kind, keys ...string) {
	for _, f := range figuresOf(k, keys) {
		f.Key, f.Meaning = k.Name+" "+f.Key, k.Name+", "+f.Meaning
		g.add(f)
	}
}

// add adds a figure once.
func (g *Grounds) add(f FigureAnswer) {
	if !slices.ContainsFunc(g.Figures, func(has FigureAnswer) bool { return has.Key == f.Key }) {
		g.Figures = append(g.Figures, f)
	}
}

// GroundsOfWeek say what the jobs of a week rest on.
func (d *Desk) GroundsOfWeek(w *Week) Grounds {
	g := Grounds{Of: "the jobs", Records: append(d.planRecords(w.Followed), Record{Says: "what stands in pots, trays and the ground, by the book", At: "/stock"}, Record{Says: "rounds gone", At: "/rounds"}),
		Model:   "Weeks are those of the season's plan, by the middle dates over the years of the record. Minutes are those of the garden's figures for each piece of work.",
		Assumed: []string{"A job counts as done as far as the book tells. That something was hardened it can't tell, so that is never called late.", "A round is due four weeks after the last: common practice."}}
	kinds := map[string]bool{}
	for _, j := range slices.Concat(w.Late, w.Due) {
		if k, known := d.Site().kind(j.Kind); known && !kinds[j.Kind] {
			kinds[j.Kind] = true
			g.addKind(k, "work.")
		}
	}
	return g
}

// planRecords name the plan and the entry by which it is followed.
func (d *Desk) planRecords(isFollowed bool) []Record {
	last := d.lastDecided()
	if !isFollowed || last == nil {
		return []Record{{Says: "the season's usual plan; none is followed yet", At: "/season"}}
	}
	return []Record{{Says: "the plan followed, by the entry of", On: last.on, At: "/season"}}
}

// GroundsOfPlaces say what the list of places rests on.
func (d *Desk) GroundsOfPlaces() Grounds {
	return Grounds{Of: "the places", Records: append([]Record{{Says: "measures, covers, heaters and crates, as the garden describes them", At: "/garden"}, {Says: "what stands where, by the book", At: "/stock?by=place"}}, d.Site().weatherRecords()...),
		Model: runModel, Assumed: []string{noForecast, "Heat is for the weeks in which the plan uses the place; each place's page has its figures and their sources."}}
}

// GroundsOfHeat say what a place's levels and their heat rest on.
func (d *Desk) GroundsOfHeat(a *HeatAnswer) Grounds {
	return Grounds{Of: "heat and cost", Records: append(d.Site().weatherRecords(), Record{Says: "the place and what a unit of fuel costs, as the garden describes them", At: "/garden"}), Model: runModel + " " + askedMeans, Assumed: slices.Clone(a.Notes), Figures: a.Figures}
}

// GroundsOfLight say what a place's light rests on.
func (d *Desk) GroundsOfLight(a *LightAnswer) Grounds {
	g := Grounds{Of: "light", Records: append(d.Site().weatherRecords(), Record{Says: "cover and lamps, as the garden describes them", At: "/garden"}),
		Model: "The sun's path over the garden's latitude, dimmed by the day's sky and by the cover, hour by hour; lamps added for the hours they burn.", Assumed: []string{a.Sky}}
	if a.Note != "" {
		g.Assumed = append(g.Assumed, a.Note)
	}
	return g
}

// GroundsOfBench say what the fill of a bench rests on.
func (d *Desk) GroundsOfBench(p *season.PlacePlan) Grounds {
	var kinds []string
	g := Grounds{Of: "bench over the year", Records: append(d.planRecords(d.Decided() != ""), Record{Says: "the bench of " + p.Place + ", as the garden describes it", At: "/garden"}),
		Model: "Each batch takes so much room from the week it comes till the week it goes: tight while small, spaced once leaves meet."}
	for _, v := range d.Shelf().Varieties {
		kinds = addOnce(kinds, v.Kind)
	}
	for _, kind := range kinds {
		if k, known := d.Site().kind(kind); known {
			g.addKind(k, "bench.")
		}
	}
	return g
}

// GroundsOfClimate say what is known of a steady place.
func GroundsOfClimate(name string) Grounds {
	return Grounds{Of: "warmth and humidity", Records: []Record{{Says: "warmth and humidity of " + name + ", as the garden describes them", At: "/garden"}},
		Assumed: []string{"The place is as warm as that all month, whatever it is outside. A thermometer that keeps its lowest reading tells more."}}
}

// GroundsOfFrost say what the odds of frost rest on.
func (d *Desk) GroundsOfFrost(a *FrostAnswer) Grounds {
	return Grounds{Of: "the odds of frost", Records: d.Site().weatherRecords(),
		Model:   "The share of the record's springs with a freeze, at or below 0 °C, later than the day; the range is where the true odds lie four times in five, as far as so many springs can tell. Dates are quantiles over the years.",
		Assumed: []string{a.Note, noForecast}}
}

// GroundsOfYear say what the typical year rests on.
func (d *Desk) GroundsOfYear() Grounds {
	return Grounds{Of: "the typical year", Records: d.Site().weatherRecords(),
		Model: "Means of each month's daily lows and highs, year by year; days without a low or a high are left out."}
}

// GroundsOfStock say what counts of stock rest on.
func (d *Desk) GroundsOfStock() Grounds {
	records := []Record{{Says: "every entry, with who wrote it", At: "/log"}}
	if kept := d.Kept(); kept != "" {
		records[0].Says += ", in " + kept
	}
	return Grounds{Of: "the counts", Records: records, Model: "Entries are folded in the order in which things happened. A whole round sets the count to what was found; a packet of seed counts as one."}
}

// GroundsOfLot say what is told of a lot's time to come.
func (d *Desk) GroundsOfLot(l *stock.Lot, o *OutlookAnswer) Grounds {
	g := Grounds{Of: "what comes next", Records: append(d.planRecords(d.Decided() != ""), d.Site().weatherRecords()...),
		Model: "Dates: the middle plant of the batch is led through every year of the record, place by place; the middle date is even odds, with one year in ten sooner and one later. " + keepingModel}
	if o != nil {
		g.Assumed = append(g.Assumed, o.Assumed...)
		g.Assumed = append(g.Assumed, o.Note)
	}
	for _, s := range l.Standing {
		if isDormant(s.Spot.Form) {
			g.Records = append(g.Records, recordOf(l, packedWords(s), s.Since, s.Packed))
		}
	}
	if k, known := d.Site().kind(l.Kind); known {
		g.addKind(k, "store.success", "divide.pieces", "sprout.", "flower.", "plant.check")
	}
	return g
}

func packedWords(s stock.Standing) string {
	if s.Pack == "" {
		return s.Spot.Place + ": here since"
	}
	return s.Spot.Place + ": packed in " + s.Pack + ", here since"
}
