// Package planting makes the planting list: how many places of the patch each variety gets, given the
// stock in hand and the grower's wishes. Package patch chooses the list.
package planting
