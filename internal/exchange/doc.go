// Package exchange reads and writes files: the garden folder, weather files, tables.
//
// A garden folder describes a garden in plain text. garden.toml gives its location, its places
// and the settings of its season; stock.csv lists the stock. ReadGarden reads a folder from
// any fs.FS, and WriteGarden writes one that reads back the same. Nothing is guessed: every
// measure has its unit and an unknown key is an error. Errors give file, line and column, up
// to ten at once.
package exchange
