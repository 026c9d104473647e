// Package exchange brings files in and out: the garden folder, weather files, tables.
//
// A garden folder is a garden in plain text. garden.toml says where it lies, what its
// places are and what the season is to reckon with; stock.csv lists what stands in them.
// ReadGarden reads one from any fs.FS, and WriteGarden writes one that reads the same.
// Nothing in a file is guessed: every measure carries its unit, an unknown key is
// refused, and what is wrong is told with its file, line and column, up to ten things at
// once.
package exchange
