// Package stock is the record of all that a garden holds: varieties, lots, and the entries
// from which every count is computed.
//
// An Entry is one thing that happened, on a day. Entries are only ever added; a mistake is
// corrected by another entry. A Book is the state that results from the entries. It takes them
// a batch at a time, in the order of writing, and applies them in the order of events. No
// count is ever negative at any moment; an entry that would make it so is refused, in the
// grower's words.
//
// A lot is a group of individuals of one descent and one name, wherever they stand. Where they
// stand is a Spot; moving them makes no new lot. An entry creates a lot when individuals arise
// (taken in, divided, struck, sown) or are set apart (sick, promised, mixed).
//
// Not in this package: what places are like, how stock keeps and grows, where entries are
// stored. A kind is a name whose meaning this package does not know.
package stock
