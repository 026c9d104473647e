package season

import (
	"context"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/frost"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/solve"
	"eyeup/stock"
	"eyeup/sun"
	"eyeup/weather"
)

// Sort is what a place is for.
type Sort string

// The sorts of places.
const (
	Store  Sort = "store"  // dark and cool: stock waits here
	Room   Sort = "room"   // a warm room of the house
	Glass  Sort = "glass"  // any covered house that may be heated
	Frame  Sort = "frame"  // a cover without heat
	Bench  Sort = "bench"  // the warm bench of a house: warm roots in its air
	Ground Sort = "ground" // the patch
)

// Place is one of the garden's places.
type Place struct {
	Name    string
	Sort    Sort
	Model   place.Place
	Room    quantity.Area          // bench, shelf or bed
	Lit     quantity.Area          // the part of Room under lamps
	Spacing quantity.Length        // from plant to plant in the ground, for what comes from the store
	Crates  int                    // that a store takes; 0 where it is not said
	Levels  []place.Setting        // settings the grower would hold, the first being off; none for unheated places
	Level   []quantity.Temperature // the thermostat level of each of Levels; unknown for off; of a bench off and its roots
	Energy  Price                  // of the heat that the heater gives
	Costs   bool                   // a room whose heat is paid for the season's sake
	In      string                 // of a bench: the house it stands in, whose Model it shares; see place.OnBench
}

// Price is money for one unit of a thing; it may be not known.
type Price struct {
	Amount float64 // units of the currency
	Known  bool
}

// Times returns n units' worth, and nothing where the price is not known.
func (p Price) Times(n float64) float64 { return p.Amount * n }

// Prices are what things cost, in units of the garden's currency.
type Prices struct {
	Currency    string
	Electricity Price            // a kilowatt-hour
	MixLitre    Price            // a litre of potting mix
	Pots        map[string]Price // a container, by its name in package supply
	PlantWeek   Price            // what a week of one plant in flower brings
	Hand        Price            // an hour of hired hands
	Stretched   Price            // what a plant loses in worth by a day of standing too warm for its light
}

// Brief is all that a season is worked out from.
type Brief struct {
	Given Given
	Asked Asked
	Ports Ports
}

// Given is the garden as it is.
type Given struct {
	Garden       string
	Site         sun.Site
	Span         civil.Span // see Span
	Today        civil.Date
	Years        []int            // the year of each of Weather
	Weather      []*weather.Hours // one real year each, laid on Span
	Freezes      frost.Freezes    // of the same record, at 0 °C
	HoursPerWeek float64          // own hands
	Places       []Place
	Stock        []stock.Holding
	Growing      []Growing // what was started already, taken off what is wanted of Stock
	Kinds        func(name string) (*culture.Kind, bool)
	Prices       Prices
}

// Asked is what the grower asks of the season.
type Asked struct {
	FrostRisk quantity.Share        // odds accepted of a freeze after planting out
	Fits      quantity.Share        // share of years in which benches must suffice
	Held      map[string]civil.Date // starts decided already, by the lot's code
	OutFrom   civil.Date            // the Monday before which nothing leafy is planted out, where it is decided; none: by the odds of frost
	Explain   string                // the batch whose dates are to be explained; empty: none
	Unproved  bool                  // plans are wanted without how much better others could be
	Pays      bool                  // the proof also says from how many plants on heat pays
}

// Ports are what a season is worked out with.
type Ports struct {
	Kept   *Memory      // of earlier seasons of the same garden; nil: nothing is remembered
	Solver solve.Solver // answers programmes in whole numbers
	Relax  Relax        // answers programmes without whole numbers; nil: bounds come from plain arithmetic, and are wider
}

// Relax answers a programme without asking for whole numbers, and gives the dual prices of its
// limits.
type Relax func(ctx context.Context, p *solve.Programme) (solve.Relaxation, error)
