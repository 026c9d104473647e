// Package paper holds labels, crate cards and lists as they are asked for: which lots, which jobs, in
// which words. How they are laid out as PDF is the matter of package sheet.
package paper
