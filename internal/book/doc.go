// Package book keeps a garden's stock book in one SQLite file.
//
// Guarantees:
//
//   - Entries are only ever added. Triggers forbid changing or deleting them, and each
//     bears the SHA-256 of the hash before it and its own canonical bytes, so that a
//     change shows.
//   - An entry is acknowledged when it is on the disk: one sync for each go, however many
//     entries it has. It survives a killed process and a lost power line.
//   - Several programs may write at once. Each go is looked at against all that others
//     have written; an entry sent twice counts once.
//   - Every page bears a checksum, so that a flipped byte is found where it is read.
//   - A copy is made each day beside the book, by SQLite's own backup.
//   - The log and the papers rebuild the book, to the same last hash.
//
// What a book comes to is in memory, a stock.Book; a snapshot of it is kept in the file
// as a cache, under its own hash. Migrations touch caches and indexes, never entries. A
// book written by a newer program is opened for reading only.
package book
