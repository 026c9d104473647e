// Package sheet prints labels for lots and pots, cards for crates, and the lists for the
// potting bench, as PDF.
//
// It draws from its own small types and computes nothing. Typefaces for most scripts in use
// are embedded (see furtherFaces). A text is ordered from left to right (order.go), split by
// typeface and script (script.go), and shaped into glyphs (shape.go). A letter that no
// typeface has is an error that names it; pictograms are left out and reported. The same input
// gives the same bytes: the only date in a file is the one passed in.
package sheet
