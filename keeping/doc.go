// Package keeping reckons what a store does to what lies in it: how much weight it loses
// by drying, whether it is firm, wrinkled or dried out, and how much of it comes through.
//
// Water leaves a root by the pull of the air (its vapour-pressure deficit) through skin
// and packing. What is lost to rot is a hazard that rises with warmth and wet. What a
// grower sees on going through the store, a Round, overrules both.
//
// For dahlia neither drying nor rot has been measured and published; the figures here are
// assumptions that agree with common practice, and Figures lists each with its range. The
// advice on humidity conflicts between sources; Advised shows that it does.
package keeping
