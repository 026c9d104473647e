// Package picture draws how full the benches are and the course of the season. Drawings are
// SVG, 390 pixels wide to fit a phone. Colours are those of the flowers; every shape has an
// outline and a name, so that the drawings work in greyscale.
package picture
