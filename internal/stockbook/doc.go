// Package stockbook answers questions about the stock book: lots, related lots, people, and the stock to
// expect at a date. It also makes entries: from words typed after a command, from a stock list, from a
// garden's folder, or to undo others. Package book stores a book on disk; package stock defines what
// entries mean.
package stockbook
