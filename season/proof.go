package season

import "eyeup/civil"

// Proof says how good a plan is at best and at worst. Its money is in units of the plan's
// currency.
type Proof struct {
	Gap       float64 `json:"gap" jsonschema_description:"money a better plan could save at most, as a share of the plan's money and the worth of its flowers"`
	Money     float64 `json:"money" jsonschema_description:"no plan on these figures is better by more"`
	Bound     float64 `json:"bound" jsonschema_description:"no plan's money less the worth of its weeks of flower is less"`
	Cost      float64 `json:"cost" jsonschema_description:"the plan's money less the worth of its weeks of flower, in the figures it was weighed by"`
	WeekWorth float64 `json:"week_worth" jsonschema_description:"what a week of one plant in flower counts for"`
	Settings  string  `json:"settings" jsonschema:"enum=all,enum=unheated,enum=its own" jsonschema_description:"among which settings of heat and lamps no plan is better"`
	Stopped   bool    `json:"stopped,omitempty" jsonschema_description:"it was not looked for long enough to come as near as is aimed at"`
	Says      string  `json:"says"`
}

// The settings among which a plan is held to be best.
const (
	AllSettings = "all"
	Unheated    = "unheated"
	ItsOwn      = "its own"
)

// LimitWorth is what a little more of something that is short would be worth in one week.
type LimitWorth struct {
	Of    string     `json:"of"`
	Week  civil.Date `json:"week"`
	Unit  string     `json:"unit" jsonschema:"enum=m2,enum=hour"`
	Worth float64    `json:"worth" jsonschema_description:"money for the next little bit of one more, with heat and lamps as they are"`
}
