package season

import (
	"encoding/json"
	"errors"
	"slices"
	"strings"
	"testing"
)

// untold is a plan as JSON, without what tells that it is held or sets it beside others.
func untold(t *testing.T, p Plan) string {
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
func sameAgain(t *testing.T, b Brief, p *Plan) {
	t.Helper()
	r, err := Follow(b, *p.Decisions)
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

// TestFollowedPlansComeOutAgain follows every plan of every day.
func TestFollowedPlansComeOutAgain(t *testing.T) {
	for name, b := range map[string]Brief{"waterville": waterville(t), "framed": framed(t, 6), "crowded": crowded(t)} {
		r, err := Make(b)
		if err != nil {
			t.Fatal(err)
		}
		t.Run(name, func(t *testing.T) {
			for _, p := range r.Plans {
				sameAgain(t, b, p)
			}
		})
	}
}

// TestDecisionsOfAnotherSeasonAreRefused follows a plan in the season after its own, and one of whose
// lots nothing is left.
func TestDecisionsOfAnotherSeasonAreRefused(t *testing.T) {
	b := waterville(t)
	b.Given.Weather, b.Given.Years = b.Given.Weather[:4], b.Given.Years[:4]
	r, err := Make(b)
	if err != nil {
		t.Fatal(err)
	}
	d := *r.Plans[2].Decisions
	later := b
	later.Given.Span = Span(2028, b.Given.Site)
	if _, err := Follow(later, d); !errors.Is(err, ErrOtherSeason) {
		t.Errorf("a plan of the season before is followed: %v", err)
	}
	gone := b
	gone.Given.Stock = nil
	if _, err := Follow(gone, d); err == nil || !strings.Contains(err.Error(), "follow another plan") {
		t.Errorf("a plan of nothing is followed: %v", err)
	}
}
