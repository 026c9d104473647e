// Package week lists the jobs of a season's plan, week by week, from checking the store in
// winter to lifting and packing in autumn, with the time they take and the reason for each.
package week
