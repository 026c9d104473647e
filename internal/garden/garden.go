package garden

import (
	"cmp"
	"fmt"
	"io/fs"
	"maps"
	"sync"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/frost"
	"eyeup/internal/exchange"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/weather"
)

// Garden is a garden as its folder describes it, with its weather.
type Garden struct {
	*exchange.Garden
	Record  *weather.Record // corrected from the station to the patch
	Sky     weather.Sky
	Members []weather.Member  // one for each usable year of the record
	LeftOut []weather.LeftOut // the years that can't be used, and why
	Span    civil.Span        // the days of the season

	cache *weatherCache // shared by all seasons computed from this garden; may be nil
}

// Open reads a garden folder and its weather. name is the folder as the user typed it; error messages
// show it.
func Open(fsys fs.FS, name string) (*Garden, error) {
	read, err := exchange.ReadGarden(fsys, name)
	if err != nil {
		return nil, err
	}
	return New(read, fsys)
}

// New makes a garden of a description that was read and of its weather, which fsys holds. It fails
// where the weather has no usable year.
func New(read *exchange.Garden, fsys fs.FS) (*Garden, error) {
	record, err := read.LoadWeather(fsys)
	if err != nil {
		return nil, err
	}
	g := &Garden{cache: &weatherCache{}, Garden: read, Record: record, Span: season.Span(read.Season.PlantYear, read.Site)}
	from, to := g.Years()
	g.Sky = weather.FitSky(record, read.Site)
	g.Members, g.LeftOut = weather.Members(record, g.Span, from, to)
	if len(g.Members) == 0 {
		return nil, fmt.Errorf("the weather has no year without long gaps between %d and %d; give other years, or another station (%s)", from, to, firstReason(g.LeftOut))
	}
	return g, nil
}

func firstReason(left []weather.LeftOut) string {
	if len(left) == 0 {
		return "the record does not reach there"
	}
	return fmt.Sprintf("%d: %s", left[0].Year, left[0].Why)
}

// Years returns the first and last year of the record that may be used.
func (g *Garden) Years() (from, to int) {
	span := g.Record.Span()
	from, to = span.From.Year(), span.To.Year()
	if g.Record.MadeUp {
		return from + 1, to // the first year has no autumn before it
	}
	return cmp.Or(g.Weather.FromYear, from), cmp.Or(g.Weather.ToYear, to)
}

// weatherCache holds the garden's hourly weather, computed once, and the results that seasons
// computed from it share.
type weatherCache struct {
	once   sync.Once
	hours  []*weather.Hours
	memory season.Memory
}

func (c *weatherCache) of(g *Garden) ([]*weather.Hours, *season.Memory) {
	c.once.Do(func() { c.hours = g.Hours() })
	return c.hours, &c.memory
}

// Hours returns the garden's hourly weather, one for each usable year.
func (g *Garden) Hours() []*weather.Hours {
	hours := make([]*weather.Hours, len(g.Members))
	for i, m := range g.Members {
		hours[i] = m.Hours(g.Site, g.Sky)
	}
	return hours
}

// Freezes returns the first and last freezes of each year of the garden's record, at 0 °C.
func (g *Garden) Freezes() frost.Freezes {
	from, to := g.Years()
	return frost.Dates(g.Record, g.Site, quantity.Celsius(0), from, to)
}

// Brief returns what the garden's season is computed from, as of today.
func (g *Garden) Brief(today civil.Date) season.Brief {
	b := season.Brief{
		Given: season.Given{
			Garden: g.Name, Site: g.Site, Span: g.Span, Today: today,
			Freezes: g.Freezes(), HoursPerWeek: g.Season.HoursPerWeek.Hours(),
			Kinds: g.Kind, Prices: g.SeasonPrices(),
		},
		Asked: season.Asked{FrostRisk: g.Season.FrostRisk, Fits: g.Season.Fits},
	}
	b.Given.Stock, b.Given.Growing = g.StockOf(g.Stock)
	if g.cache != nil {
		b.Given.Weather, b.Ports.Kept = g.cache.of(g)
	} else {
		b.Given.Weather = g.Hours()
	}
	for _, m := range g.Members {
		b.Given.Years = append(b.Given.Years, m.Year)
	}
	for _, p := range g.Places {
		b.Given.Places = append(b.Given.Places, g.place(p))
		if bench, has := g.warmBench(p); has {
			b.Given.Places = append(b.Given.Places, bench)
		}
	}
	return b
}

// Kind returns a kind of plant. The garden's own figures replace the usual ones.
func (g *Garden) Kind(name string) (*culture.Kind, bool) {
	k, known := culture.Lookup(name)
	if !known {
		return nil, false
	}
	if own := g.Figures[name]; len(own) > 0 {
		changed, err := k.With(own)
		if err != nil { // never: exchange.ReadGarden checked the same figures
			return nil, false
		}
		return changed, true
	}
	return k, true
}

// place returns a place as a season takes it.
func (g *Garden) place(p exchange.Place) season.Place {
	s := season.Place{
		Name: p.Name, Sort: season.Sort(p.Sort), Model: p.Model, Room: p.Bench, Spacing: p.Spacing, Crates: p.Crates,
		Levels: []place.Setting{place.Off()}, Level: []quantity.Temperature{quantity.Unknown()},
	}
	for _, level := range p.Levels {
		if t, on := level.At(g.Span.From); on {
			s.Levels, s.Level = append(s.Levels, level), append(s.Level, t)
		}
	}
	switch model := p.Model.(type) {
	case place.Steady:
		s.Costs = model.HeatPerKelvin > 0
		s.Levels, s.Level = s.Levels[:1], s.Level[:1] // a season sets no level in a room
		s.Energy = g.UsefulHeat(place.Heater{Fuel: "electricity", Efficiency: 1})
		if model.Lamps != nil {
			s.Lit = model.Lamps.Area
		}
	case place.Covered:
		model.BenchApart = true // its warm bench is a place of its own, on only while something stands there
		s.Model = model
		if model.Heater != nil {
			s.Energy = g.UsefulHeat(*model.Heater)
		}
	}
	return s
}

// warmBench returns the warm bench of a house as a place of its own, and whether there is one.
func (g *Garden) warmBench(p exchange.Place) (season.Place, bool) {
	house, covered := g.place(p).Model.(place.Covered)
	if !covered || house.WarmBench == nil {
		return season.Place{}, false
	}
	name, benches := "warm bench", 0
	for _, other := range g.Places {
		if model, is := other.Model.(place.Covered); is && model.WarmBench != nil {
			benches++
		}
	}
	if _, taken := g.Place(name); taken || benches > 1 {
		name += " in " + p.Name
	}
	return season.Place{
		Name: name, Sort: season.Bench, In: p.Name, Model: place.OnBench{House: house}, Room: house.WarmBench.Area,
		Levels: []place.Setting{place.Off()}, Level: []quantity.Temperature{quantity.Unknown(), house.WarmBench.Root},
		Energy: g.UsefulHeat(place.Heater{Fuel: "electricity", Efficiency: 1}),
	}, true
}

// UsefulHeat returns the price of one kWh of heat that a heater gives: the price of its fuel divided
// by its efficiency.
func (g *Garden) UsefulHeat(h place.Heater) season.Price {
	price := g.Prices.Electricity
	if h.Fuel != "electricity" {
		price = g.Prices.Fuels[h.Fuel]
	}
	efficiency := h.Efficiency
	if fuel, known := place.FuelNamed(h.Fuel); known && efficiency == 0 {
		efficiency = fuel.Efficiency
	}
	if price.IsZero() || efficiency <= 0 {
		return season.Price{}
	}
	return season.Price{Amount: price.Per(quantity.KilowattHour) / float64(efficiency), Known: true}
}

// SeasonPrices returns the garden's prices as a season takes them.
func (g *Garden) SeasonPrices() season.Prices {
	p := season.Prices{Currency: g.Currency, Pots: map[string]season.Price{}}
	if e := g.Prices.Electricity; !e.IsZero() {
		p.Electricity = season.Price{Amount: e.Per(quantity.KilowattHour), Known: true}
	}
	if m := g.Prices.Mix; !m.IsZero() {
		p.MixLitre = season.Price{Amount: m.Per(quantity.Litre), Known: true}
	}
	if stem := g.Prices.Stem; stem.Minor > 0 {
		p.PlantWeek = season.Price{Amount: g.stemsAWeek() * stem.Units() * float64(g.Season.StemsSold), Known: true}
	}
	if hour := g.Prices.Hour; hour.Minor > 0 {
		p.Hand = season.Price{Amount: hour.Units(), Known: true}
	}
	if day := g.Prices.Stretched; day.Minor > 0 {
		p.Stretched = season.Price{Amount: day.Units(), Known: true}
	}
	for id, money := range maps.All(g.Prices.Pots) {
		p.Pots[id] = season.Price{Amount: money.Units(), Known: true}
	}
	return p
}

// stemsAWeek is how many stems a plant gives in a week of flower, or 0 if that is not known. Plants of
// every kind take the dahlia's figure, because a plan has one price for a week of flower. Asking each
// kind for its own flower.week is still to do.
func (g *Garden) stemsAWeek() float64 {
	dahlia, known := g.Kind("dahlia")
	if !known {
		return 0
	}
	stems, _ := dahlia.Figure("flower.week")
	return stems.Value
}
