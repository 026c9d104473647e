// Package sheet puts things on paper: labels for lots and pots, cards for crates, and the
// lists that go to the potting bench, as PDF.
//
// It draws from small types of its own and reckons nothing. Type is embedded for Latin,
// Greek, Cyrillic, Armenian, Georgian, Hebrew and Arabic letters, for Han, kana and Hangul;
// right-to-left names are ordered and their letters joined. A letter that no typeface
// here holds, or a script whose letters it can't join, is refused by name; pictograms are
// left out and told. The same input gives the same bytes: the only date in a file is the
// one that was handed in.
package sheet
