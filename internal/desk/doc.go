// Package desk holds the garden that is open, for the pages: its book, its shelf of stock, what was
// worked out from it, and changes to it. Many may read and write at once; what is worked out is kept
// until an entry or a new day makes it old. It also names every answer with its schema. Questions that
// need no open garden stand in rooms of their own.
package desk
