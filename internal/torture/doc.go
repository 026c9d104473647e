// Command torture treats stock books as badly as it can and counts what is lost. It kills
// programs that write in one (SIGKILL, at random moments), cuts the power under one (what
// was not synced is gone, or half of it), fills the disk at every write, flips bytes in a
// book, its write-ahead log, its journal and its copy, lets the clock jump by years, moves,
// deletes, replaces and links the file of an open book, and lets four programs write at
// once, one of them with its clock a day behind.
//
// It ends with a table: how often each was tried and how often nothing came of it, how many
// entries were acknowledged, lost without being told, and doubled. Its exit code is other
// than 0 where anything was lost or doubled. It is an aid of the tests; see docs/book.md.
//
//	go run ./internal/torture -for 60s
package main
