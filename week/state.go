package week

import (
	"slices"

	"eyeup/civil"
)

// JobState is a job with what the book has of it.
type JobState struct {
	Job
	Done int   // how many of Count the book tells of
	Lots []int // those that it can be done with, by their place in the list of all lots
}

// Left returns how many are still to be done.
func (j JobState) Left() int { return max(0, j.Count-j.Done) }

// IsTold reports whether the book can tell that the job is done.
func (j Job) IsTold() bool {
	return slices.Contains([]string{"start", "sow", "wake", "hand on", "plant", "plant out"}, j.What)
}

// IsRound reports whether the job is a round, which is due by the last one gone instead.
func (j Job) IsRound() bool { return j.What == "go through the crates" }

// RoundDue is a store to go through.
type RoundDue struct {
	Place string
	Last  civil.Date // of its last round; none where there was none
	Count int        // individuals there
	Due   bool
}
