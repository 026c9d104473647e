// Package air reckons with moist air: how much water it holds, how dry it pulls, where
// dew and frost form, what it weighs and what heat it carries.
//
// Two families stand side by side and are not mixed. The plain formulas of FAO Irrigation
// and Drainage Paper 56 (Allen and others 1998) serve drying, dew point and all that cites
// that paper: Saturation, DewPoint, Deficit and their kin, always over water. The formulas
// of the ASHRAE Handbook of Fundamentals serve frost, wet bulbs, weight and heat:
// OverWater, OverIce, HumidityRatio, WetBulb, Enthalpy, Density. Between -20 and 50 °C the
// two differ by less than one per cent over water.
//
// The functions take plain quantities and give no errors, so that they can stand in long
// loops: outside its stated range a function answers with what is not known (NaN), never
// with a value drawn to the edge. Check tells beforehand, in words, what can't be.
package air
