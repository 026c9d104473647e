// Package house holds the test of the house plan: which room may enter which, and that
// the pure rooms see neither files nor network nor the clock. It has no code of its own.
package house
