// Package planting holds the planting list: how many places of the patch each variety gets, from what
// there is in hand and what is wished. How a list is chosen is the matter of package patch.
package planting
