// Package reading holds what all readers of weather files share: lines with any line ending;
// numbers and fields from bytes; errors with their line and advice; and Drafts, in which
// records are collected day by day and checked before they are returned.
//
// Its rules for every format: what is missing stays missing; a day with reversed extremes
// loses both and is reported; an impossible value is taken as missing and reported; two
// different values for one day are both dropped and reported; equal findings are counted
// together; memory is limited.
package reading
