// Package sheet puts things on paper: labels for lots and pots, cards for crates, and the
// lists that go to the potting bench, as PDF.
//
// It draws from small types of its own and reckons nothing. Type is embedded for most
// scripts in use (see furtherFaces): a text is ordered from left to right (order.go),
// parted by typeface and script (script.go), and its glyphs are chosen and placed
// (shape.go). A letter that no typeface here holds is refused by name; pictograms are
// left out and told. The same input gives the same bytes: the only date in a file is the
// one that was handed in.
package sheet
