package exchange

import (
	"io/fs"
	"time"

	"eyeup/culture"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/stock"
	"eyeup/sun"
	"eyeup/weather"
)

// Garden is a garden as its folder describes it.
type Garden struct {
	Name     string
	Site     sun.Site
	Zone     *time.Location
	System   quantity.System // how measures are shown
	Currency string          // of every price, ISO 4217

	Weather Weather
	Offset  Offset
	Season  Season
	Prices  Prices
	Places  []Place         // in the order of the file
	Stock   []stock.Holding // in the order of the file; kinds are not checked
	Patch   *Patch          // settings of the planting list; nil: none

	// Figures are the garden's own figures for each kind, which replace the usual ones.
	Figures map[string][]culture.Override

	folder string // where it was read from, for messages
	files  fs.FS  // that folder, while it is read
}

// Weather is the source of a garden's weather. Station and the years belong to a file; they
// are ignored if the weather is made up.
type Weather struct {
	File             string           // in the folder; empty where the weather is made up
	Station          string           // the station in the file; empty if it has only one
	FromYear, ToYear int              // first and last year used; 0: all years
	Normals          *weather.Normals // monthly means from which weather is made up; nil: none
}

// IsMadeUp reports whether the weather is made up from monthly means.
func (w Weather) IsMadeUp() bool { return w.File == "" }

// Offset is how much warmer the patch is than the station, by night and by day.
type Offset struct{ Night, Day quantity.Difference }

// Season is the grower's settings for the season.
type Season struct {
	PlantYear    int            // the year of planting out; the season begins in the autumn before
	FrostRisk    quantity.Share // accepted risk of a freeze after planting out
	Fits         quantity.Share // share of years in which the benches must be large enough
	HoursPerWeek time.Duration  // the grower's own working time
	StemsSold    quantity.Share // share of the cut stems that are sold
}

// Prices are in the garden's currency. A zero price means that the price is not known.
type Prices struct {
	Electricity quantity.Price[quantity.Energy]
	Fuels       map[string]quantity.Price[quantity.Energy] // by the fuel's name, for its heat content
	Mix         quantity.Price[quantity.Volume]
	Pots        map[string]quantity.Money // by the container's id, such as no1
	Stem        quantity.Money            // price of a stem sold
	Hour        quantity.Money            // value of an hour of the grower's own work
	Stretched   quantity.Money            // value that a plant loses in a day that is too warm for its light
}

// Sort is the type of a place.
type Sort string

// The types of places.
const (
	Store  Sort = "store"
	Room   Sort = "room"
	Glass  Sort = "glass" // under glass, film or twin-wall
	Frame  Sort = "frame"
	Ground Sort = "ground"
)

// Place is a place where stock can stand, with its capacity.
type Place struct {
	Name    string
	Sort    Sort
	Model   place.Place // its physical model
	Crates  int         // capacity of a store in crates; 0 elsewhere
	Bench   quantity.Area
	Spacing quantity.Length // from plant to plant in the ground; 0 elsewhere
	Levels  []place.Setting // heating levels that plans may choose from; empty: never heated
	LogFile string          // file in the folder with a logger's record of a store or room; empty: none
	Line    int             // of garden.toml
}

// Place returns the place with that name, and whether there is one.
func (g *Garden) Place(name string) (*Place, bool) {
	for i := range g.Places {
		if g.Places[i].Name == name {
			return &g.Places[i], true
		}
	}
	return nil, false
}
