// Package plans holds a garden's season: it has the plans made or proved, follows the one that was
// decided on, and tells them as a report, a picture, a calendar or tables. How a plan is made is the
// matter of package season.
package plans
