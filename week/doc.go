// Package week says what is due: the jobs of a season's plan, week by week, from the
// rounds of the store in winter to lifting and packing in autumn, with the minutes they
// take and why they are due.
package week
