package stock

import (
	"eyeup/civil"
	"eyeup/quantity"
)

// Timing is how early a variety flowers compared with others of its kind; empty if unknown.
type Timing string

// The timings that the trade distinguishes.
const (
	Early Timing = "early"
	Mid   Timing = "mid"
	Late  Timing = "late"
)

// Form is the state in which stock is handled.
type Form string

// The forms of stock.
const (
	Clump    Form = "clump"
	Division Form = "division"
	Corm     Form = "corm"
	Seed     Form = "seed" // counted in packets
	Cutting  Form = "cutting"
	Tray     Form = "tray"
	Pot      Form = "pot"
	Plant    Form = "plant"
)

// Variety is a named variety of a kind of plant, such as a dahlia.
type Variety struct {
	Name   string
	Kind   string
	Timing Timing
	Colour string          // #rrggbb, or empty
	Height quantity.Length // 0 if unknown
}

// Holding is a number of individuals of one lot in one place and form. A season starts from
// holdings.
type Holding struct {
	Code    string // the lot's code, or empty
	Variety Variety
	Form    Form
	Count   int
	Place   string
	Crate   string
	Bed     string // in open ground
	Row     string // within the bed
	Pack    string // what it is packed in: bare, vermiculite, dry …
	Plant   int    // how many are wanted in the patch
	Reserve int    // how many are kept back as insurance
	Note    string
	Since   civil.Date // since when any of it stands there; zero if read from a list
	Line    int        // of the stock list, from 1; 0 if not read from a list
}
