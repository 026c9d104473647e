// Package logger reads the file of a temperature logger in a cellar, a store or a room: a
// heading that names the columns, then a line for each reading. Fields are separated by
// commas, semicolons or tabs; with semicolons or tabs a number may have a decimal comma.
//
//	time,temperature (F),humidity (%)
//	2026-11-03 14:10,42.6,54
//
// Columns are recognised by the first word of their name, in any case: time, date,
// temperature, humidity; date and time may be one column or two. Other columns are ignored and
// reported. The unit of the temperature, C or F, is in brackets in the heading or after each
// value; it is never guessed. Humidity is in percent. Readings may have any interval, in order
// of time; an hour is the mean of its readings, and gaps of up to three hours are interpolated
// linearly. Longer gaps stay empty. Empty fields, NA and -9999 are missing. Lines that begin
// with # and lines before the heading are ignored.
//
// Clock times are used as they are: the hour of summer time makes no difference in a place
// with a steady temperature.
package logger
