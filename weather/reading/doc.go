// Package reading is what all readers of weather files share: lines, whatever ends
// them; numbers and fields read from bytes; refusals that carry their line and say what
// to do; and Drafts, in which records grow day by day and are looked over before they
// are let go.
//
// The rules it keeps for every format: what is missing stays missing; a day whose
// extremes stand in the wrong order loses both and is reported, never swapped; a value
// that cannot be is taken as missing and reported; two unlike values for one day are both
// left out and reported; like findings are counted together; memory has a bound.
package reading
