// Package stockbook answers questions of the stock book (lots, kin, people, what to count on) and makes
// its entries: typed as words, from a list of stock, from a garden's folder, or to undo others. How a
// book is kept on disk is the matter of package book, and what entries mean that of package stock.
package stockbook
