// Package paper makes labels, crate cards and lists: which lots and jobs go on them, and in which words.
// Package sheet lays them out as PDF.
package paper
