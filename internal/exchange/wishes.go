package exchange

import (
	"eyeup/patch"
	"eyeup/quantity"
)

// Patch is the grower's settings for the planting list; all of them are optional.
type Patch struct {
	Place         string   // the place of open ground; empty: the only one
	Kinds         []string // kinds planted in it; empty: all
	Places        int      // most plants in it; 0: limited by its area only
	Low, Tall     quantity.Length
	Width, Length quantity.Length            // of its beds, for rows; 0: no rows
	Spacing       map[string]quantity.Length // from plant to plant, by kind
	Varieties     []PatchVariety
	Mixes         []patch.Mix
}

// PatchVariety is the settings of one variety, beyond the stock list.
type PatchVariety struct {
	Name, Kind  string
	Wish        patch.Wish // empty: would like
	Least, Most int
	Flower      string
	Family      string // its colour as a word
	Spacing     quantity.Length
	New         *NewVariety // nil: it is in the stock list
	Line        int         // of garden.toml
}

// NewVariety describes a variety that is not yet in the stock list.
type NewVariety struct {
	Plant, Reserve int
	Bought         int // plants ordered but not yet here
	Timing         string
	Colour         string // #rrggbb
	Height         quantity.Length
}
