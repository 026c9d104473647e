// Package stock is the record of all that a garden holds: varieties, lots, and the
// entries from which every count is folded.
//
// An Entry is one thing that happened, on a day. Entries are only ever added; a mistake
// is put right by another entry. A Book is what the entries come to: it adds them one go
// at a time, in the order in which they were written down, and folds them in the order
// in which they happened. No count is ever below nothing at any moment; what would make
// it so is refused, in the grower's words.
//
// A lot is individuals of one descent and name, not a heap in one place: where they stand
// is a Spot, and moving them makes no lot. A lot is born when individuals come to be
// (taken in, divided, struck, sown) or are set apart (sick, promised, mixed).
//
// Left out: what places are like, how stock keeps and grows, where entries are kept.
// A kind is a name that this package never reads.
package stock
