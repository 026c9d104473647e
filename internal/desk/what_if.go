package desk

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/stock"
)

// Change is a what-if: what the grower changes in a season, to see what the plans become. The zero value
// changes nothing.
type Change struct {
	Risk      quantity.Share                   // odds accepted of a freeze after planting out; 0: the garden's
	Levels    map[string]*quantity.Temperature // by heated place: the one level it may have; nil is off
	HeatPrice map[string]float64               // by fuel: what a kilowatt-hour costs; electricity among them
	Plant     map[string]int                   // by lot code: how many are to go into the patch
	Starts    map[string]civil.Date            // by lot code: a day of the week it is started in
}

// IsZero reports whether nothing is changed.
func (c Change) IsZero() bool {
	return c.Risk == 0 && len(c.Levels)+len(c.HeatPrice)+len(c.Plant)+len(c.Starts) == 0
}

// String writes the changes in a fixed order, so that equal changes give equal strings.
func (c Change) String() string {
	var s strings.Builder
	if c.Risk != 0 {
		fmt.Fprintf(&s, "risk %g;", float64(c.Risk))
	}
	for _, name := range slices.Sorted(maps.Keys(c.Levels)) {
		fmt.Fprintf(&s, "%q at ", name)
		if t := c.Levels[name]; t != nil {
			fmt.Fprintf(&s, "%g", t.Celsius())
		}
		s.WriteString(";")
	}
	for _, fuel := range slices.Sorted(maps.Keys(c.HeatPrice)) {
		fmt.Fprintf(&s, "%s costs %g;", fuel, c.HeatPrice[fuel])
	}
	for _, code := range slices.Sorted(maps.Keys(c.Plant)) {
		fmt.Fprintf(&s, "%s: %d;", code, c.Plant[code])
	}
	for _, code := range slices.Sorted(maps.Keys(c.Starts)) {
		fmt.Fprintf(&s, "%s on %s;", code, c.Starts[code])
	}
	return s.String()
}

// mostPlants is more than one patch holds.
const mostPlants = 100000

// of returns the garden with the change. It fails for a place or lot that does not exist, and for a risk,
// price or count out of range.
func (c Change) of(g *garden.Garden) (*garden.Garden, error) {
	read := *g.Garden
	if c.Risk != 0 {
		if c.Risk < 0 || c.Risk > 0.9 {
			return nil, fmt.Errorf("no season can be planned for odds of frost of %.0f %%; give 1 to 90 %%", c.Risk.Percent())
		}
		read.Season.FrostRisk = c.Risk
	}
	for _, change := range []func(*exchange.Garden) error{c.levels, c.prices, c.planted} {
		if err := change(&read); err != nil {
			return nil, err
		}
	}
	changed := *g
	changed.Garden = &read
	return &changed, nil
}

func (c Change) levels(g *exchange.Garden) error {
	g.Places = slices.Clone(g.Places)
	for name, level := range c.Levels {
		at := slices.IndexFunc(g.Places, func(p exchange.Place) bool { return p.Name == name })
		if at < 0 || len(g.Places[at].Levels) == 0 {
			return fmt.Errorf("no place named %q is heated", name)
		}
		g.Places[at].Levels = []place.Setting{}
		if level != nil {
			g.Places[at].Levels = []place.Setting{place.Steadily(*level)}
		}
	}
	return nil
}

func (c Change) prices(g *exchange.Garden) error {
	fuels := map[string]quantity.Price[quantity.Energy]{}
	maps.Copy(fuels, g.Prices.Fuels)
	g.Prices.Fuels = fuels
	for fuel, price := range c.HeatPrice {
		if !(price >= 0 && price < 1000) {
			return fmt.Errorf("a price of %g for a kilowatt-hour is not possible; give one from 0 up to 1000", price)
		}
		per := quantity.PriceOf(price, g.Currency, quantity.KilowattHour)
		if fuel == "electricity" {
			g.Prices.Electricity = per
		} else {
			fuels[fuel] = per
		}
	}
	return nil
}

func (c Change) planted(g *exchange.Garden) error {
	g.Stock = slices.Clone(g.Stock)
	for code, plant := range c.Plant {
		at := slices.IndexFunc(g.Stock, func(h stock.Holding) bool { return h.Code == code })
		if at < 0 {
			return fmt.Errorf("no lot has the code %s", code)
		}
		if plant < 0 || plant > mostPlants {
			return fmt.Errorf("%d can't be planted; give 0 to %d", plant, mostPlants)
		}
		g.Stock[at].Plant = plant
	}
	return nil
}
