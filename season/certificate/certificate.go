package certificate

import "math"

// never stands for a day that never comes, in the season's data.
const never = math.MaxInt32

// Certificate is the proof of one plan. Days count from the first day of the season; limits,
// groups, heaters and prices are named by their number in the lists here.
type Certificate struct {
	Plan      string            `json:"plan"`
	Currency  string            `json:"currency"`
	WeekWorth float64           `json:"week_worth" jsonschema_description:"what a week of one plant in flower counts for"`
	LeftOut   float64           `json:"left_out" jsonschema_description:"what leaving a plant out counts for"`
	Hired     float64           `json:"hired" jsonschema_description:"an hour of hired hands; 0 where hours do not bind"`
	Hours     int               `json:"hours_from" jsonschema_description:"limits from this number on are hours of one's own; those before are square metres"`
	Limits    []float64         `json:"limits" jsonschema_description:"by number"`
	Groups    []Group           `json:"groups"`
	Levels    []Levels          `json:"levels"`
	Prices    []map[int]float64 `json:"prices" jsonschema_description:"what one more of a limit is worth, by its number"`
	Shared    [][]HeaterPrices  `json:"dues" jsonschema_description:"the prices of shared heaters and lamps that go with each of prices"`
	Monday    int               `json:"first_monday" jsonschema_description:"the first day of the first week; days of the season's span"`
	Leaves    []Leaf            `json:"leaves"`
	Cost      float64           `json:"cost" jsonschema_description:"of the plan: its money less the worth of its flowers"`
	Bound     float64           `json:"bound" jsonschema_description:"the least of the leaves' bounds"`
}

// Group is plants that are raised alike.
type Group struct {
	Name   string `json:"name"`
	Plants int    `json:"plants"`
}

// Levels is what may be chosen while every place is held in one way. A heater is the heating
// or the lamps of one place.
type Levels struct {
	Held  []string        `json:"held" jsonschema_description:"the setting of every place"`
	On    [][]int         `json:"lit" jsonschema_description:"by heater: days on which it may be switched on, from the latest"`
	Off   [][]int         `json:"out" jsonschema_description:"by heater: days on which it may be switched off, from the first"`
	Step  [][]int         `json:"step" jsonschema_description:"by heater: days on which its level may step; 2147483647 alone where it does not"`
	Costs [][][][]float64 `json:"burns" jsonschema_description:"by heater, day of step, day on and day off: what heat or light costs"`
	Ways  [][]Way         `json:"ways" jsonschema_description:"by group"`
}

// Way is one way for a plant of a group.
type Way struct {
	Start  int             `json:"start"`
	Route  string          `json:"route"`
	Direct bool            `json:"direct,omitempty" jsonschema_description:"straight into the ground, so that a plant need never be left out"`
	Money  float64         `json:"money"`
	Gain   float64         `json:"gain"`
	Takes  map[int]float64 `json:"takes" jsonschema_description:"of each limit, by its number"`
	Wanted [][2]int        `json:"wanted" jsonschema_description:"by heater: from this day to the day before that one; from is 2147483647 where it is not wanted"`
	Steps  *Steps          `json:"steps,omitempty" jsonschema_description:"of a level that it takes; left out where any will do"`
}

// Steps are the days on which a heater's level may step so that a way is as it is. First and
// Last are places in the list of days.
type Steps struct {
	Heater int `json:"burner"`
	First  int `json:"first"`
	Last   int `json:"last"`
}

// Leaf is a leaf of the tree: by heater, ranges of days on which it is switched on, switched
// off and stepped. Each range names its first and last place in the list of days.
type Leaf struct {
	Levels int      `json:"levels" jsonschema_description:"which of levels"`
	On     [][2]int `json:"lit" jsonschema_description:"by heater: first and last"`
	Off    [][2]int `json:"out" jsonschema_description:"by heater: first and last"`
	Step   [][2]int `json:"step" jsonschema_description:"by heater: first and last"`
	Houses []int    `json:"swept,omitempty" jsonschema_description:"the heaters of houses whose days the bound goes through one by one"`
	Prices int      `json:"prices" jsonschema_description:"which of prices"`
	Bound  float64  `json:"bound" jsonschema_description:"no plan in it costs less, by these prices"`
	Search *float64 `json:"search,omitempty" jsonschema_description:"the bound that a search in whole plants found, where it did; not added up here"`
}

// HeaterPrices are the dual prices of one heater that many plants share, week by week from the
// first Monday. Each plant that wants it pays its price; what all plants could pay is taken off
// what the heater costs. They serve for lamps and for houses that are not in Leaf.Houses.
type HeaterPrices struct {
	Heater int         `json:"burner"`
	Plants [][]float64 `json:"plants" jsonschema_description:"by group and week: each plant that wants it in the week"`
	Room   []float64   `json:"room" jsonschema_description:"by week: each square metre that is taken under it by plants that want it in the week"`
	Limit  int         `json:"limit" jsonschema_description:"the number of the limit of that room in the first week"`
}
