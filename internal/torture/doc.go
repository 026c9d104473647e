// Command torture stresses a stock book and counts lost entries. It kills programs that write
// to it (SIGKILL, at random moments), simulates power failures (what was not synced is lost,
// or half of it), fills the disk at every write, flips bytes, and lets four programs write at
// once, one of them with its clock a day behind.
//
// It ends with "acknowledged N, lost 0, doubled 0", and with a non-zero exit code otherwise.
// It is a test tool; see docs/book.md.
//
//	go run ./internal/torture -for 60s
package main
