// Package outlook estimates what to count on at a date: how many of each variety survive the
// store, and how many good divisions they give.
//
// Survival is computed by package keeping and updated by the garden's own rounds: first for
// the kind, then for the variety, which is shrunk towards its kind. Good divisions from a
// clump follow a gamma-Poisson model: the kind's figure from package culture, updated by this
// garden's divisions, then the variety's own.
//
// It also proposes the rounds that would tell most, and computes what each crate has lost so
// far.
//
// Not included: seed, and stock in pots and beds, which is counted as it stands.
package outlook
