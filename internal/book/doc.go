// Package book keeps a garden's stock book in one SQLite file.
//
// Guarantees:
//
//   - Entries are only ever added. Triggers forbid changing or deleting them. Each carries the
//     SHA-256 of the previous hash and its own canonical bytes, so that a change is detected.
//   - An acknowledged entry is on the disk: one sync for each batch, however many entries it
//     has. It survives a killed process and a power failure.
//   - Several programs may write at once. Each batch is checked against everything that others
//     have written; an entry sent twice counts once.
//   - Every page has a checksum, so that a flipped bit is detected when the page is read.
//   - A copy is made each day beside the book, by SQLite's own backup.
//   - The log and the papers rebuild the book, to the same last hash.
//
// The state of a book is in memory, a stock.Book. A snapshot of it is kept in the file as a
// cache, under its own hash. Migrations change caches and indexes, never entries. A book
// written by a newer program is opened read-only.
package book
