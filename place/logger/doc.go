// Package logger reads what a thermometer that writes down its readings recorded in a cellar,
// a store or a room: a heading that names the columns, then a line for each reading. Fields
// are parted by commas, semicolons or tabs; with semicolons or tabs a number may have a
// decimal comma.
//
//	time,temperature (F),humidity (%)
//	2026-11-03 14:10,42.6,54
//
// Columns are known by the first word of their name, in capitals or not: time, date,
// temperature, humidity; date and time may be one column or two. Other columns are passed
// over and named. The unit of the temperature, C or F, stands in brackets in the heading or
// behind each value; it is never guessed. Humidity is in percent. Readings may come at any
// interval, in the order of time; an hour is the mean of its readings, and where readings lie
// up to three hours apart the hours between lie on the line from one to the other. Beyond
// that nothing was recorded. Empty fields, NA and -9999 are missing. Lines that begin with #
// are passed over, as are lines before the heading.
//
// Clocks are taken as they stand: that a summer clock is an hour ahead makes no difference in
// places that are steady.
package logger
