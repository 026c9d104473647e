// Package plans works out a garden's season. It makes the plans, or searches for the best ones, follows
// the plan that the grower chose, and writes it as a report, a picture, a calendar or tables. Package
// season holds the rules by which a plan is made.
package plans
