// Package testkit holds what tests of several rooms share: it checks answers against their schema and
// their width, replays plans, and has the example garden, a folder in memory and a stand-in for the
// weather archive. No program imports it.
package testkit
