package season

import (
	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/stock"
)

// Decisions are all that is decided in a plan: what is raised by which way, how many and from
// when, and which places are held at what level, and when. All else follows from rules, and
// from the weather. See Follow.
type Decisions struct {
	Plan    string     `json:"plan"`
	Says    string     `json:"says"`
	OutFrom civil.Date `json:"out_from" jsonschema_description:"the Monday before which nothing leafy is planted out"`
	Batches []Decided  `json:"batches"`
	Places  []Held     `json:"places" jsonschema_description:"what is heated, at what level, and when"`
}

// Decided is what is decided of so many plants of a batch.
type Decided struct {
	ID      string     `json:"id" jsonschema_description:"of the batch; after a stroke the number of the way, where it is raised in several"`
	Code    string     `json:"code,omitempty"`
	Kind    string     `json:"kind"`
	Variety string     `json:"variety"`
	Form    stock.Form `json:"form" jsonschema_description:"in which the stock waits"`
	How     How        `json:"how"`
	Place   string     `json:"place,omitempty" jsonschema_description:"where the stock waits; left out of seed"`
	Pack    string     `json:"pack,omitempty" jsonschema_description:"what it is packed in"`
	Parents int        `json:"parents,omitempty" jsonschema_description:"clumps that are cut, or mothers of cuttings, of the whole batch"`
	Of      int        `json:"of" jsonschema_description:"plants of the whole batch"`
	Plant   int        `json:"plant" jsonschema_description:"of its lot, wanted in the patch"`
	Reserve int        `json:"reserve" jsonschema_description:"of its lot, kept back"`
	Count   int        `json:"count" jsonschema_description:"plants raised in this way"`
	Start   civil.Date `json:"start,omitzero" jsonschema_description:"the Monday of the week in which it is woken, started or sown; left out of what goes straight into the ground"`
	OutFrom civil.Date `json:"out_from,omitzero" jsonschema_description:"the Monday before which it is not planted out"`
	Way     Way        `json:"way"`
}

// Held is a place held at a level, or at one and then at another, from one day to the day
// before another.
type Held struct {
	Place string               `json:"place"`
	Level quantity.Temperature `json:"level_c"`
	Then  *LevelStep           `json:"then,omitempty" jsonschema_description:"the step of level while it is in use"`
	From  civil.Date           `json:"from"`
	To    civil.Date           `json:"to"`
}

// Way is the places that plants pass, by their names. All are empty for what goes straight
// into the ground.
type Way struct {
	First   string `json:"first,omitempty" jsonschema_description:"where it is started"`
	On      string `json:"on,omitempty" jsonschema_description:"where it stands once it is up; the same where it is not handed on"`
	Frame   string `json:"frame,omitempty" jsonschema_description:"where it hardens; left out where it is carried out and in"`
	Pot     string `json:"pot,omitempty" jsonschema_description:"the small pot from which it is potted up"`
	ForGood bool   `json:"for_good,omitempty" jsonschema_description:"it stays under cover and flowers there"`
}

// IsDirect reports whether the stock goes straight into the ground.
func (w Way) IsDirect() bool { return w.First == "" }
