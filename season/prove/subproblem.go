package prove

import "eyeup/season"

// subproblem is all that may be chosen while the places are held in certain ways.
type subproblem struct {
	at       season.Holds
	heaters  []*season.Heater
	ways     []*season.PlaceWays // whose choices these are
	choices  [][]*season.Choice  // by group
	onDays   [][]int             // by heater: the days on which it may be switched on, from the latest to the first
	offDays  [][]int             // by heater: the days on which it may go out, from the first to the latest
	stepDays [][]int             // by heater: the days on which its level may step; never alone where it does not
}

// newSubproblem gathers what may be chosen while the places are held in some ways, on a basis of
// room: the share of years in which no plant takes more.
func (p *prover) newSubproblem(at season.Holds, basis float64) *subproblem {
	f := &subproblem{at: at, heaters: p.heaters(at), ways: p.problem.columns.Through(at, basis), choices: make([][]*season.Choice, len(p.problem.groups))}
	for _, one := range f.ways {
		for g, all := range one.Choices {
			for i := range all {
				f.choices[g] = append(f.choices[g], &all[i])
			}
		}
	}
	f.listDays(p.problem.columns.StepDays)
	return f
}
