// Package report holds how an answer is printed, at most 80 columns wide, and how it is written as
// JSON with its schema. It has the words and figures that several answers share: short dates, rounded
// amounts, numbers of things. It knows no answer but the one that says what was written into a file,
// and nothing of gardens, books or plans.
package report
