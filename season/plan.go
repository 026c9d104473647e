package season

import (
	"eyeup/civil"
	"eyeup/odds"
	"eyeup/quantity"
)

// Plan is one worked-out season, beside others. Its amounts of money are in units of its
// cost's currency; areas are in square metres.
type Plan struct {
	Name         string       `json:"name"`
	Says         string       `json:"says" jsonschema_description:"what the plan does, in one sentence"`
	Baseline     string       `json:"baseline" jsonschema_description:"what the weeks gained are counted against"`
	Cost         Cost         `json:"cost"`
	PlantOutFrom civil.Date   `json:"plant_out_from" jsonschema_description:"fixed beforehand from the odds of frost"`
	FirstFlower  civil.When   `json:"first_flower" jsonschema_description:"of all dahlias, or of all batches where there are none"`
	GainWeeks    odds.Amount  `json:"gain_weeks" jsonschema_description:"weeks of flower gained a plant, over the years; of dahlias, or of all batches where there are none"`
	GainAll      odds.Amount  `json:"gain_all_weeks" jsonschema_description:"the same of all batches together, as on the price of early"`
	Batches      []BatchPlan  `json:"batches"`
	Places       []PlacePlan  `json:"places"`
	Work         []WorkWeek   `json:"work_weeks"`
	FitsYears    int          `json:"fits_years" jsonschema_description:"years of the record in which every bench suffices"`
	Years        int          `json:"years"`
	Asked        int          `json:"asked_years" jsonschema_description:"in how many years the benches were to suffice"`
	Worst        *Crowded     `json:"worst_year,omitempty" jsonschema_description:"the year in which a bench lacks the most room; left out where all suffice in every year"`
	Shortfalls   []Shortfall  `json:"shortfalls"`
	ToGet        []Need       `json:"to_get"`
	NotCovered   []NotCovered `json:"not_covered"`
	Growing      []Growing    `json:"growing" jsonschema_description:"what was started already and is not among the batches"`
	Shared       []string     `json:"shared" jsonschema_description:"what all plans have in common: do it now"`
	DecideBy     civil.Date   `json:"decide_by" jsonschema_description:"the Monday on which this plan first parts from the others; null when it never does"`
	BreakEven    *BreakEven   `json:"break_even,omitempty"`
	Dividing     []Dividing   `json:"dividing"`
	Held         bool         `json:"held,omitempty" jsonschema_description:"its decisions are held, and nothing was looked for"`
	Otherwise    []string     `json:"otherwise,omitempty" jsonschema_description:"what can't be held as it was decided, or came otherwise"`
	Proof        *Proof       `json:"proof,omitempty" jsonschema_description:"left out where the season is not proved"`

	Decisions *Decisions `json:"-"`
}

// Crowded is a week in which a bench does not suffice.
type Crowded struct {
	Year    int        `json:"year,omitempty" jsonschema_description:"of the record; left out where it is so by the share of years that the plan is made for"`
	Place   string     `json:"place"`
	Week    civil.Date `json:"week" jsonschema_description:"on the days of the season"`
	ShortM2 float64    `json:"short_m2"`
}

// StretchedDays returns the mean of stretched days of a plant that is raised in a container.
func (p *Plan) StretchedDays() float64 {
	days, plants := 0.0, 0
	for _, b := range p.Batches {
		if b.Container != "" {
			days += float64(b.Count) * b.Stretched.Middle
			plants += b.Count
		}
	}
	return days / float64(max(plants, 1))
}

// BreakEven says when heating pays, against the plan without added heat.
type BreakEven struct {
	Heat         float64  `json:"heat" jsonschema_description:"money for heat"`
	Plants       int      `json:"plants" jsonschema_description:"that gain by it"`
	WeeksGained  float64  `json:"weeks_gained" jsonschema_description:"a plant, more than without heat"`
	PerPlantWeek *float64 `json:"per_plant_week,omitempty" jsonschema_description:"money for a week of one plant; left out where heat gains nothing"`
	PlantWeek    *float64 `json:"plant_week_worth,omitempty" jsonschema_description:"what a week of one plant brings, by stems, price and share sold; left out where not known"`
	PaysFrom     *int     `json:"pays_from_plants,omitempty" jsonschema_description:"plants from which the same heat pays; left out where it never does"`
}

// Dividing sets cutting clumps in autumn beside cutting them in spring.
type Dividing struct {
	Variety string    `json:"variety"`
	Clumps  int       `json:"clumps"`
	Pieces  int       `json:"pieces"`
	Spring  CutSeason `json:"spring"`
	Autumn  CutSeason `json:"autumn"`
	Choice  string    `json:"choice" jsonschema:"enum=spring,enum=autumn"`
	Why     string    `json:"why"`
}

// CutSeason is what dividing at one time of the year comes to.
type CutSeason struct {
	Through odds.Amount `json:"come_through" jsonschema_description:"share of the stock that comes through the store"`
	Crates  float64     `json:"crates"`
	Packing float64     `json:"packing_litres"`
	Hours   float64     `json:"hours"`
}

// Stored is what the store does to a batch until it is started.
type Stored struct {
	Through     odds.Amount `json:"come_through" jsonschema_description:"share that lives"`
	LostPercent odds.Amount `json:"weight_lost_percent"`
	State       string      `json:"state"`
}

// Cost is what a plan costs beyond what the garden spends anyway. Total is the sum of the
// other amounts.
type Cost struct {
	Currency    string      `json:"currency"`
	Total       float64     `json:"total"`
	Heat        float64     `json:"heat"`
	Light       float64     `json:"light"`
	Mix         float64     `json:"mix" jsonschema_description:"mix and pots"`
	Work        float64     `json:"work" jsonschema_description:"paid hands; own hours cost nothing here"`
	HeatSpread  odds.Amount `json:"heat_spread"`
	WorkHours   float64     `json:"work_hours"`
	PerPot      float64     `json:"per_pot" jsonschema_description:"total divided by the plants raised in pots"`
	Unpriced    []string    `json:"unpriced,omitempty" jsonschema_description:"what has no price in the garden's figures and is not in the total"`
	HeatUnknown bool        `json:"heat_unknown,omitempty" jsonschema_description:"a warm room's own heat is not counted"`
}

// BatchPlan is what a plan does with one batch.
type BatchPlan struct {
	ID         string       `json:"id"`
	Code       string       `json:"code,omitempty"`
	Kind       string       `json:"kind"`
	Variety    string       `json:"variety"`
	Timing     string       `json:"timing,omitempty"`
	Colour     string       `json:"colour,omitempty"`
	Form       string       `json:"form"`
	Place      string       `json:"place,omitempty" jsonschema_description:"where its stock waits; left out of seed"`
	Count      int          `json:"count" jsonschema_description:"plants raised; the sum of the counts of starts"`
	Container  string       `json:"container" jsonschema_description:"what each stands in till it is planted out; empty when planted straight into the ground"`
	BeginsIn   string       `json:"begins_in" jsonschema_description:"the first container: a tray of cells, or a small pot from which it is potted up; empty when planted straight into the ground"`
	How        string       `json:"how" jsonschema:"enum=whole,enum=divided,enum=cuttings"`
	Parents    int          `json:"parents,omitempty" jsonschema_description:"clumps that are cut, or mothers of cuttings"`
	Starts     []Start      `json:"starts"`
	Dates      Dates        `json:"dates"`
	Stays      []Stay       `json:"stays"`
	Gain       odds.Amount  `json:"gain_weeks"`
	NoFlower   int          `json:"years_without_flower" jsonschema_description:"years in which half of the batch does not flower before frost"`
	Lost       int          `json:"years_lost" jsonschema_description:"years in which cold kills the batch"`
	ColdNights odds.Amount  `json:"cold_nights" jsonschema_description:"nights too cold for young leaves, before planting out"`
	Stretched  odds.Amount  `json:"stretched_days" jsonschema_description:"days in leaf under cover on which a plant stands too warm for its light; 0 where the kind's figures do not tell"`
	NoRoom     *Crowded     `json:"no_room,omitempty" jsonschema_description:"where room lacks to raise it as the plan would have it"`
	Stored     *Stored      `json:"stored,omitempty"`
	Steps      []string     `json:"steps,omitempty" jsonschema_description:"where the dates come from, when asked"`
	Assumed    []Assumption `json:"assumptions,omitempty"`

	OutFrom  civil.Date  `json:"-"` // the Monday before which it is not planted out
	SafeFrom civil.Date  `json:"-"` // from when the place it is handed on to is safe for young leaves; none where it is not handed on
	Years    []YearDates `json:"-"` // of its middle plant, in the order of the brief's years
}

// Start is so many of a batch set to grow in one week by one route.
type Start struct {
	Week  civil.Date `json:"week" jsonschema_description:"the Monday of the week"`
	Count int        `json:"count"`
	Route string     `json:"route"`
}

// Dates are those of a batch, with the spread of the weather and of the lot. A date that
// does not come in so many years is null.
type Dates struct {
	Start       civil.Date `json:"start"`
	Eyed        civil.When `json:"eyed"`
	Up          civil.When `json:"up"`
	HandOn      civil.When `json:"hand_on" jsonschema_description:"moved from the warm place to light"`
	PotUp       civil.When `json:"pot_up" jsonschema_description:"moved from a small pot to a larger one"`
	Frame       civil.When `json:"frame" jsonschema_description:"moved to a frame to harden"`
	PlantOut    civil.When `json:"plant_out"`
	FirstFlower civil.When `json:"first_flower"`
}

// YearDates are what the middle plant of a batch came to in one year of the record, on the
// days of the season. A date that does not come in that year is none.
type YearDates struct {
	Year                                                          int
	Start, Eyed, Up, HandOn, PotUp, Frame, PlantOut, First, Ended civil.Date // First is its first flower; Ended the first autumn freeze
}

// Stay is time that a batch spends in one place: the middle dates over the years, and the
// most room that it takes there on the basis on which the benches were filled.
type Stay struct {
	Place  string     `json:"place"`
	From   civil.Date `json:"from"`
	To     civil.Date `json:"to"`
	AreaM2 float64    `json:"area_m2"`
}

// PlacePlan is one place over the season.
type PlacePlan struct {
	Place      string               `json:"place"`
	Sort       string               `json:"sort"`
	Setting    string               `json:"setting,omitempty" jsonschema_description:"the levels of its thermostat over the weeks"`
	Level      quantity.Temperature `json:"level_c,omitzero" jsonschema_description:"at which a heated place is held while it is in use"`
	Then       *LevelStep           `json:"then,omitempty" jsonschema_description:"the step of level while it is in use"`
	HeatedFrom civil.Date           `json:"heated_from,omitzero"`
	HeatedTo   civil.Date           `json:"heated_to,omitzero"`
	Weeks      []PlaceWeek          `json:"weeks"`
	Heat       *PlaceHeat           `json:"heat,omitempty"`
}

// IsHeld reports whether it is held at a level. A room that costs heat is only warm.
func (p PlacePlan) IsHeld() bool { return p.Heat != nil && p.Sort != string(Room) }

// LevelStep is a change of a thermostat's level.
type LevelStep struct {
	From  civil.Date           `json:"from"`
	Level quantity.Temperature `json:"level_c"`
}

// PlaceWeek is one ISO week of a place, from its Monday.
type PlaceWeek struct {
	Week   civil.Date   `json:"week"`
	UsedM2 float64      `json:"used_m2"`
	RoomM2 float64      `json:"room_m2"`
	Cost   *odds.Amount `json:"heat_cost,omitempty"`
}

// PlaceHeat is what holding a place's setting takes.
type PlaceHeat struct {
	AskedKWh       odds.Amount `json:"asked_kwh" jsonschema_description:"what the setting asks for"`
	GivenKWh       odds.Amount `json:"given_kwh" jsonschema_description:"what the heater can give of it"`
	HoursShort     odds.Amount `json:"hours_short" jsonschema_description:"hours more than half a kelvin below the level"`
	WorstShortK    float64     `json:"worst_short_k" jsonschema_description:"in the worst hour of all years"`
	YearsFreezing  int         `json:"years_below_freezing" jsonschema_description:"years in which it freezes inside while the place is in use"`
	YearsBelowFive int         `json:"years_below_5c"`
	ColdestC       float64     `json:"coldest_c"`
}

// WorkWeek is the hands that a week asks for.
type WorkWeek struct {
	Week  civil.Date `json:"week"`
	Hours float64    `json:"hours"`
	Own   float64    `json:"own_hours"`
}

// Shortfall is something there is too little of, and the cheapest cure known.
type Shortfall struct {
	Of      string     `json:"of" jsonschema:"enum=room,enum=crates,enum=hands,enum=stock"`
	Place   string     `json:"place,omitempty" jsonschema_description:"that lacks room"`
	Variety string     `json:"variety,omitempty" jsonschema_description:"of which stock lacks"`
	Wanted  float64    `json:"wanted" jsonschema_description:"square metres of room, crates, hours or plants"`
	There   float64    `json:"there" jsonschema_description:"of the same; plants that are to be counted on"`
	Short   float64    `json:"short"`
	Week    civil.Date `json:"week"`
	Cure    string     `json:"cure,omitempty"`
}

// Assumption is what dates rest on that nobody has measured, or that is not known.
type Assumption struct {
	Kind string `json:"kind"`
	What string `json:"what"`
	Sure string `json:"sure" jsonschema_description:"practice, assumption, memory, or unknown when it is left out"`
}

// Need is something to get before the season needs it.
type Need struct {
	What   string      `json:"what"`
	Amount odds.Amount `json:"amount"`
	Unit   string      `json:"unit"`
	Cost   float64     `json:"cost"`
	By     civil.Date  `json:"by"`
}

// NotCovered is stock that the plan leaves alone, and why: it is never dropped silently.
type NotCovered struct {
	Kind    string `json:"kind"`
	Variety string `json:"variety"`
	Count   int    `json:"count"`
	Form    string `json:"form"`
	Place   string `json:"place,omitempty" jsonschema_description:"where it stands"`
	Why     string `json:"why"`
}
