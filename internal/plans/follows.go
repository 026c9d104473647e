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
	Decisions *season.Decisions // with what was started otherwise; nil where it goes by the plan's name
	Stock     []stock.Holding   // as it was before anything of what is decided was started
	otherwise []string          // what came otherwise than was decided
}

// FollowedBy holds what is decided against what the book has come to since.
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

// Follow works out the plan that is followed, with its decisions held.
func (f *Followed) Follow(g *garden.Garden, brief season.Brief) (*season.Result, error) {
	brief.Given.Stock, brief.Given.Growing = g.StockOf(f.Stock)
	r, err := season.Follow(brief, *f.Decisions)
	if err != nil {
		return nil, fmt.Errorf("%q, decided on %s, can't be followed: %w", f.Said.Plan, report.ShortDate(f.On), err)
	}
	p := r.Plans[0]
	p.Otherwise = append(slices.Clone(f.otherwise), p.Otherwise...)
	return r, nil
}

// held works out the plan whose decisions are held; nil where none is followed, and where it can't
// be, with why.
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

// IsBefore reports whether a season was worked out before the plan whose decisions are held now.
func (a *SeasonAnswer) IsBefore(last *Decided) bool { return last.isHeld() && a.decision != last.ID }

// By is a season that goes by the plan that is followed by its name now, even where it was worked
// out before that was decided.
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

// DefaultPlan is the name of the plan that is followed, or of the usual one; of a proved season of
// one that has a proof.
func (a *SeasonAnswer) DefaultPlan(proved bool) string {
	plan, _ := a.PlanFollowed()
	if proved && plan.Proof == nil {
		return season.Usual
	}
	return plan.Name
}
