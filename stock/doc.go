// Package stock is the record of all that a garden holds: varieties, lots, and the
// entries from which every count is folded.
package stock
