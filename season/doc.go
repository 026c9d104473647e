// Package season works out a growing year: from what stands in store, the places there
// are and the weather of many past years, it makes plans that say what to start when and
// where, when to hand it on and plant it out, what that gains and what it costs.
//
// A Brief goes in, Plans come out. A batch is like individuals handled as one; an option
// is one way to raise it: a week to start and a route through the places. Everything else
// is a rule run in every year of the weather, and a rule sees only the past: a batch is
// handed on in the first week after half of it is up, planted out in the first week, not
// before the one fixed beforehand from the odds of frost, whose soil has been warm enough
// over the past seven days.
//
// Dates come with their spread, that of the weather and that of the lot together. Gains
// are weeks of flower before the autumn frost, against dormant stock planted (or seed sown)
// in the open when the soil allows. Make tries every start week and route, and fills the
// benches with the best first.
//
// Package season/prove finds plans that are best, or nearly, and says by how much any other could be
// better; package season/certificate checks its proofs. The rules themselves are stated best in the
// package comment of season/check, which leads every plan through them again.
//
// Read in this order: brief.go, life.go, climate.go, routes.go, walk.go, option.go, choose.go,
// benches.go, planner.go, make.go, realize.go. The columns for season/prove come after: hold.go,
// choice.go, columns.go, ways.go, stepped.go, heater.go.
package season
