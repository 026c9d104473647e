// Package civil reckons in days of the calendar, free of clocks and time zones.
//
// A Date is a day, Days a number of them; the two do not mix. A Week begins on
// Monday (ISO 8601). The Gregorian calendar is taken to hold at all times.
package civil
