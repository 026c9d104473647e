// Package report prints answers, at most 80 columns wide, and writes them as JSON with a schema. It
// holds the wording that several answers share: short dates, rounded amounts, counts. WrittenAnswer is
// the only answer defined here. The package does not depend on gardens, books or plans.
package report
