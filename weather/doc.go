// Package weather holds records of the weather, day by day or hour by hour: what was
// measured, what was missing, and what reading them brought to light.
//
// A Record is one station's days. A Member is one real year of it laid on the days of a
// season to come: all that is forecast is reckoned once for each member, so that "one
// year in ten" means one year in ten of the record. Hours are a member's weather hour by
// hour. The packages beneath read one file format each.
package weather
