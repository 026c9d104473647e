package prove

import (
	"encoding/json"
	"slices"
	"testing"

	"eyeup/season"
)

// untold is a plan as JSON, without what tells that it is held or sets it beside others.
func untold(t *testing.T, p season.Plan) string {
	t.Helper()
	p.Held, p.Shared, p.BreakEven, p.Proof = false, nil, nil, nil
	p.DecideBy, p.Batches = p.PlantOutFrom, slices.Clone(p.Batches)
	for i := range p.Batches {
		p.Batches[i].NoRoom = nil
	}
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// sameAgain follows a plan and holds what comes of it to be the same in all it tells.
func sameAgain(t *testing.T, b season.Brief, p *season.Plan) {
	t.Helper()
	r, err := season.Follow(b, *p.Decisions)
	if err != nil {
		t.Fatalf("%s: %v", p.Name, err)
	}
	again := r.Plans[0]
	for _, what := range again.Otherwise {
		t.Errorf("%s: %s", p.Name, what)
	}
	if got, want := untold(t, *again), untold(t, *p); got != want {
		t.Errorf("%s: followed\n%s\nnot\n%s", p.Name, got, want)
	}
}

// TestFollowedBestPlansComeOutAgain follows every plan of a search, those along the price of
// early among them.
func TestFollowedBestPlansComeOutAgain(t *testing.T) {
	b, r := crowded(t), provedCrowd(t)
	for _, p := range r.Season.Plans {
		sameAgain(t, b, p)
	}
	for _, e := range r.Season.Early {
		if e.Decisions == nil {
			t.Fatalf("nothing is decided in %v", e.Levels)
		}
		followed, err := season.Follow(b, *e.Decisions)
		if err != nil {
			t.Fatal(err)
		}
		sameAgain(t, b, followed.Plans[0])
	}
	for _, one := range r.proofs {
		sameAgain(t, b, r.prover.problem.planner.Realize("", "", one.best.at.Levels(), r.prover.assignmentOf(one.best)))
	}
}
