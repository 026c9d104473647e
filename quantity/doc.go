// Package quantity gives every measured thing a type of its own, so that a
// temperature cannot be added to a number of litres by accident.
//
// A temperature (a point on a scale) and a temperature difference are different
// types, and neither adds to itself by mistake: t.Sub(u) is a Difference,
// t.Add(d) a Temperature. All other quantities are defined floats in one unit of
// the SI, with named constants (3 * quantity.Kilowatt) and methods where one
// quantity crosses into another (Power.For is an Energy). Money is whole minor
// units and carries its currency.
//
// Degrees Fahrenheit, feet and gallons are a matter of reading and showing alone:
// see the Parse functions and the System type. Nothing here holds a default.
package quantity
