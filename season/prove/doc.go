// Package prove finds the best plans of a season, or nearly, and says by how much any other could
// be better.
//
// Why it exists: the settings of heated places cost money however many plants use them. A plain
// mixed-integer programme with the settings as whole-number variables was measured on this problem:
// it is left 24-41 % open. This package keeps the settings out of the programme. It goes through
// them by branch and bound, best bound first, and solves programmes only for fixed settings.
//
//	all levels of the places
//	├── glass off
//	├── glass 10 °C, on between 1 Feb and 1 Apr, off between 1 May and 1 Jun
//	│   ├── on before 3 Mar      bound 212.40   (branched again)
//	│   └── on from 3 Mar        bound 231.10   (no better than the incumbent: left)
//	└── glass 16 °C, ...
//
// A node is a set of settings: every place at its level, each heater switched on within one range of
// days, off within another, its level stepped within a third. A branch halves one range.
//
// A node's bound is Lagrangian. Each limit (bench room, hours, shared lamps) gets a dual price; then
// every group of plants takes its cheapest way on its own. For up to two houses the bound goes
// through all days on and off one by one. Any prices give a true bound, so they may come from
// anywhere: from a programme without whole numbers, from subgradient steps, or mixed from others.
// Which mix bounds the worst setting best is a game between prices and settings, solved by
// fictitious play. The ways are the programme's columns; package season makes them (season.Columns).
//
// Plans come from rounding those programmes, and, where that is not near enough, from a programme in
// whole plants at one setting. The best so far is the incumbent. The search stops when the gap
// between it and the least open bound is at most TargetGap. The leaves and their prices go into a
// certificate, which package season/certificate checks without any code from here.
//
// Two provers share a problem and work at two weights of a week of flower at once, always two, so
// that one core and two give the same bytes.
//
// Two heated houses: bounds and searches handle two. That half is frozen; don't extend it.
//
// Sources, from memory: Land & Doig 1960 (branch and bound); Geoffrion 1974 and Fisher 1981
// (Lagrangian relaxation); Held, Wolfe & Crowder 1974 (subgradient); Camerini, Fratta & Maffioli 1975
// (kept direction); Brown 1951 (fictitious play).
//
// Read on in this order: prover.go, subproblem.go, node.go, search.go, lagrangian.go, duals.go,
// mixing.go, programme.go, relax.go, whole.go, curve.go, season.go.
package prove
