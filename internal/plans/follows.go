package plans

import (
	"fmt"
	"slices"

	"eyeup/internal/garden"
	"eyeup/internal/report"
	"eyeup/season"
	"eyeup/stock"
)

// Followed is the plan that the book says is followed.
type Followed struct {
	Decided
	Decisions *season.Decisions // adapted to what was started; nil where the plan is followed by its name
	Stock     []stock.Holding   // as it was before anything in Decisions was started
	otherwise []string          // what happened otherwise than decided, one sentence each
}

// FollowedBy adapts the last decision to what the book says happened since. It is nil where no plan is
// followed.
func FollowedBy(last *Decided, b *stock.Book, holdings []stock.Holding) *Followed {
	if last == nil || last.Said.Plan == "" {
		return nil
	}
	f := &Followed{Decided: *last, Decisions: last.Said.decisions(), Stock: holdings}
	if f.Decisions != nil {
		fitBegun(f, b)
	}
	return f
}

// Follow works out the plan that is followed, with its decisions held. It fails where they can't be
// carried out in the garden as it is.
func (f *Followed) Follow(g *garden.Garden, brief season.Brief) (*season.Result, error) {
	brief.Given.Stock, brief.Given.Growing = g.StockOf(f.Stock)
	r, err := season.Follow(brief, *f.Decisions)
	if err != nil {
		return nil, fmt.Errorf("the plan %q, chosen on %s, can't be followed: %w", f.Said.Plan, report.ShortDate(f.On), err)
	}
	p := r.Plans[0]
	p.Otherwise = append(slices.Clone(f.otherwise), p.Otherwise...)
	return r, nil
}

// held works out the plan whose decisions are held. It is nil where there is none, and where it can't be
// followed; then why says so.
func (f *Followed) held(g *garden.Garden, brief season.Brief) (*season.Result, string) {
	if f == nil || f.Decisions == nil {
		return nil, ""
	}
	r, err := f.Follow(g, brief)
	if err != nil {
		return nil, err.Error()
	}
	return r, ""
}

// IsBefore reports whether the season was worked out before the grower chose the plan whose decisions
// are now held.
func (a *SeasonAnswer) IsBefore(last *Decided) bool { return last.isHeld() && a.decision != last.ID }

// By returns the season with the plan of the last decision marked as followed, where that plan is
// followed by its name. The season may be older than the decision.
func (a *SeasonAnswer) By(last *Decided) *SeasonAnswer {
	if last.isHeld() {
		return a
	}
	name := last.nameIn(a)
	if name == a.Followed {
		return a
	}
	other := *a
	other.Followed = name
	plan, _ := other.PlanFollowed()
	other.Jobs = other.jobs[plan.Name]
	other.ThisWeek = thisWeek(other.Jobs, other.Today)
	return &other
}

// DefaultPlan is the name of the plan that is followed, or of the usual one. Where proved is set, it is
// the usual one unless the plan that is followed has a proof.
func (a *SeasonAnswer) DefaultPlan(proved bool) string {
	plan, _ := a.PlanFollowed()
	if proved && plan.Proof == nil {
		return season.Usual
	}
	return plan.Name
}
