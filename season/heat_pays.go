package season

// HeatPays says from how many plants on the best plan heats: found by halving, with the best plan
// looked for anew at each number of plants, among heating as one plan does and not at all. All
// sorts keep their shares, and benches and hands are as they are.
type HeatPays struct {
	Held      []Held  `json:"held" jsonschema_description:"how the plan in question heats; on which days is looked for anew"`
	WeekWorth float64 `json:"week_worth" jsonschema_description:"what a week of one plant in flower counts for"`
	Plants    int     `json:"plants" jsonschema_description:"of the garden as it is"`
	From      *int    `json:"from_plants,omitempty" jsonschema_description:"with so many it pays; left out where it does not even with the most that were tried"`
	NotWith   int     `json:"not_with_plants" jsonschema_description:"with so many it does not"`
	Tried     int     `json:"tried" jsonschema_description:"numbers of plants that were tried"`
	Money     float64 `json:"money" jsonschema_description:"at no number that was tried is any plan better than the one found by more"`
	Stopped   bool    `json:"stopped,omitempty" jsonschema_description:"it was stopped before it was found"`
}
