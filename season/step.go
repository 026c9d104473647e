package season

// step is a change of level of a heated place while it is in use.
type Step struct {
	Day   int // from which the second level is held; a Monday
	Level int // of the place's levels
	Up    bool
}
