package testkit

import (
	"encoding/json"
	"slices"
	"testing"

	"eyeup/civil"
	"eyeup/season"
	"eyeup/season/check"
)

// Replayed holds plans against their replay.
func Replayed(t *testing.T, brief season.Brief, plans []*season.Plan) {
	t.Helper()
	for _, p := range plans {
		for i, difference := range check.Plan(brief, p).Differences {
			if i > 10 {
				t.Errorf("%s: and more", p.Name)
				break
			}
			t.Errorf("%s: %v", p.Name, difference)
		}
	}
}

// AllOf is all that a plan tells, its name and what sets it beside others apart.
func AllOf(t *testing.T, p season.Plan) string {
	t.Helper()
	p.Name, p.Held, p.Shared, p.BreakEven, p.Proof, p.DecideBy = "", false, nil, nil, nil, civil.Date{}
	p.Batches = slices.Clone(p.Batches)
	for i := range p.Batches {
		p.Batches[i].NoRoom = nil
	}
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
