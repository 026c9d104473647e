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
	Stock   []stock.Holding // in the order of the file; kinds are not looked up
	Patch   *Patch          // what is asked of the planting list; nil where nothing is

	// Figures are the garden's own of each kind, in place of the usual ones.
	Figures map[string][]culture.Override

	folder string // it was read from, for messages
	files  fs.FS  // the same, while it is read
}

// Weather is where a garden's weather comes from. Station and years belong to a file;
// beside made-up weather they stand for nothing.
type Weather struct {
	File             string           // in the folder; empty where the weather is made up
	Station          string           // which station of the file; empty where it has one
	FromYear, ToYear int              // of the record, both within; 0 where all of it serves
	Normals          *weather.Normals // monthly means from which weather is made up; nil where there are none
}

// IsMadeUp reports whether the weather is made up from monthly means.
func (w Weather) IsMadeUp() bool { return w.File == "" }

// Offset is how much warmer the patch is than the station, by night and by day.
type Offset struct{ Night, Day quantity.Difference }

// Season is what the grower asks of the season.
type Season struct {
	PlantYear    int            // the year of planting out; the season begins in the autumn before
	FrostRisk    quantity.Share // odds accepted of a freeze after planting out
	Fits         quantity.Share // share of the years in which benches must suffice
	HoursPerWeek time.Duration  // of own work
	StemsSold    quantity.Share // share of the cut stems that are sold
}

// Prices are what things cost in the garden's currency. What has no price is zero, and
// its cost is not known.
type Prices struct {
	Electricity quantity.Price[quantity.Energy]
	Fuels       map[string]quantity.Price[quantity.Energy] // by the fuel's name, for its heat content
	Mix         quantity.Price[quantity.Volume]
	Pots        map[string]quantity.Money // by the container's id, such as no1
	Stem        quantity.Money            // what a sold stem brings
	Hour        quantity.Money            // what an hour of own work is held to be worth
	Stretched   quantity.Money            // what a plant loses in worth by a day of standing too warm for its light
}

// Sort is what a place is.
type Sort string

// The sorts of places.
const (
	Store  Sort = "store"
	Room   Sort = "room"
	Glass  Sort = "glass" // under glass, film or twin-wall
	Frame  Sort = "frame"
	Ground Sort = "ground"
)

// Place is somewhere stock can stand, with the room it has.
type Place struct {
	Name    string
	Sort    Sort
	Model   place.Place // what it is like inside
	Crates  int         // that a store takes; 0 elsewhere
	Bench   quantity.Area
	Spacing quantity.Length // from plant to plant in the ground; 0 elsewhere
	Levels  []place.Setting // of a heated place that plans may choose from; empty: never heated
	LogFile string          // in the folder, what a logger recorded in a store or room; empty: nothing
	Line    int             // of garden.toml
}

// Place returns the place of that name, and whether there is one.
func (g *Garden) Place(name string) (*Place, bool) {
	for i := range g.Places {
		if g.Places[i].Name == name {
			return &g.Places[i], true
		}
	}
	return nil, false
}
