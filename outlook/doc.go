// Package outlook says what to count on at a date: how many of each variety come through
// the store, and how many good divisions they give.
//
// What comes through is reckoned by package keeping, with the garden's own rounds folded
// in: all of a kind first, then the variety's own, which is thereby pulled towards its
// kind. Good divisions from a clump follow a gamma-Poisson law: a kind's figure from
// package culture, pulled by what this garden's dividings gave, then the variety's own.
//
// It also says where a round would tell most, and what each crate has lost so far.
//
// Left out: seed, and what stands in pots and beds, which is counted as it stands.
package outlook
