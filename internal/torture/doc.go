// Command torture treats a stock book as badly as it can and counts what is lost. It
// kills programs that write in one (SIGKILL, at random moments), cuts the power under one
// (what was not synced is gone, or half of it), fills the disk at every write, flips
// bytes, and lets four programs write at once, one of them with its clock a day behind.
//
// It ends with "acknowledged N, lost 0, doubled 0", and with an exit code other than 0
// where that is not so. It is an aid of the tests; see docs/book.md.
//
//	go run ./internal/torture -for 60s
package main
