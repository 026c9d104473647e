// Package keeping computes what a store does to the stock in it: how much weight it loses by
// drying, whether it is firm, wrinkled or dried out, and what share survives.
//
// Water leaves a root through skin and packing, driven by the vapour-pressure deficit of the
// air. Losses by rot are a hazard that rises with temperature and moisture. What the grower
// counts when checking the store, a Round, corrects both.
//
// For dahlia neither drying nor rot has been measured and published. The figures here are
// assumptions that agree with common practice; Figures lists each with its range. Sources
// contradict each other on humidity; Advised lists them.
package keeping
