// Package weather holds weather records, daily or hourly: what was measured, what is missing,
// and what was found while reading them.
//
// A Record is one station's days. A Member is one real year of it placed on the days of a
// future season: every forecast is computed once for each member, so "one year in ten" means
// one year in ten of the record. Hours is a member's hourly weather. The packages below read
// one file format each.
package weather
