// Package table reads the plainest weather file there is: a heading that names the
// columns, then a line for each day. Fields are parted by commas, semicolons or tabs;
// with semicolons or tabs a number may have a decimal comma.
//
//	date,low (C),high (C)
//	2026-05-10,3.5,14.0
//
// Columns are known by these names, in capitals or not: date or day; low, min, minimum,
// tmin; high, max, maximum, tmax; sun, radiation; dew point; soil; station. date, a low and a
// high must be there. Units are never guessed: a temperature column says C, F or 0.1 C, the
// sun MJ/m2, kWh/m2, Wh/m2 or J/cm2, in brackets after its name, or each value carries it,
// like 38F. A value that cannot be refuses the file, since whoever wrote it can put it right.
// An empty field, -9999 or NA is missing. Lines that begin with # are passed over.
package table
