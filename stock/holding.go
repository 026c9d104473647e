package stock

import (
	"eyeup/civil"
	"eyeup/quantity"
)

// Timing is how soon a variety flowers beside others of its kind; empty is not known.
type Timing string

// The timings the trade tells apart.
const (
	Early Timing = "early"
	Mid   Timing = "mid"
	Late  Timing = "late"
)

// Form is what a plant is at the moment, as the grower handles it.
type Form string

// The forms in which stock stands.
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

// Variety is a named sort of a kind. A kind is a name that stock never reads.
type Variety struct {
	Name   string
	Kind   string
	Timing Timing
	Colour string          // #rrggbb, or empty
	Height quantity.Length // 0 where not known
}

// Holding is so many of one lot in one place and form: what a season starts from.
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
	Plant   int    // how many places it is wanted in the patch
	Reserve int    // how many are kept back as insurance
	Note    string
	Since   civil.Date // when any of it came to stand there; none where a list tells of it
	Line    int        // of the file it was read from; 0 otherwise
}
