package desk

import (
	"fmt"
	"slices"

	"eyeup/season"
	"eyeup/stock"
)

// follows is the plan that the book says is followed.
type follows struct {
	decided
	decisions *season.Decisions // with what was started otherwise; nil where it goes by the plan's name
	stock     []stock.Holding   // as it was before anything of what is decided was started
	otherwise []string          // what came otherwise than was decided
}

// followsOf holds what is decided against what the book has come to since.
func followsOf(last *decided, b *stock.Book, holdings []stock.Holding) *follows {
	if last == nil || last.said.Plan == "" {
		return nil
	}
	f := &follows{decided: *last, decisions: last.said.decisions(), stock: holdings}
	if f.decisions != nil {
		fitBegun(f, b)
	}
	return f
}

// follow works out the plan that is followed, with its decisions held.
func (f *follows) follow(g *Garden, brief season.Brief) (*season.Result, error) {
	brief.Given.Stock, brief.Given.Growing = g.stockOf(f.stock)
	r, err := season.Follow(brief, *f.decisions)
	if err != nil {
		return nil, fmt.Errorf("%q, decided on %s, can't be followed: %w", f.said.Plan, shortDate(f.on), err)
	}
	p := r.Plans[0]
	p.Otherwise = append(slices.Clone(f.otherwise), p.Otherwise...)
	return r, nil
}

// held works out the plan whose decisions are held; nil where none is followed, and where it can't
// be, with why.
func (f *follows) held(g *Garden, brief season.Brief) (*season.Result, string) {
	if f == nil || f.decisions == nil {
		return nil, ""
	}
	r, err := f.follow(g, brief)
	if err != nil {
		return nil, err.Error()
	}
	return r, ""
}

// isBefore reports whether a season was worked out before the plan whose decisions are held now.
func (a *SeasonAnswer) isBefore(last *decided) bool { return last.isHeld() && a.decision != last.id }

// by is a season that goes by the plan that is followed by its name now, even where it was worked
// out before that was decided.
func (a *SeasonAnswer) by(last *decided) *SeasonAnswer {
	if last.isHeld() {
		return a
	}
	name := last.nameIn(a)
	if name == a.Followed {
		return a
	}
	other := *a
	other.Followed = name
	plan, _ := other.followed()
	other.Jobs = other.jobs[plan.Name]
	other.ThisWeek = thisWeek(other.Jobs, other.Today)
	return &other
}

// DefaultPlan is the name of the plan that is followed, or of the usual one; of a proved season of
// one that has a proof.
func (a *SeasonAnswer) DefaultPlan(proved bool) string {
	plan, _ := a.followed()
	if proved && plan.Proof == nil {
		return season.Usual
	}
	return plan.Name
}
