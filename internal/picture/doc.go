// Package picture draws what people would rather look at than read: how full the benches
// are, and the course of the season. Drawings are SVG made for a width of 390 pixels, so
// that a phone shows them as they are; colours are the flowers' own, and every shape has
// an outline and a name, so that they can be read in grey.
package picture
