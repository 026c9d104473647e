package sun

import "eyeup/quantity"

// molPerMegajoule is the light that plants use in a megajoule of sunshine, in mol: 2.02.
// Source: Faust & Logan 2018, HortScience 53:1250, who give 7.265 mol for a kilowatt-hour.
// Others reckon with 2.06 (daylight after McCree) to 2.3 (half the energy, 4.6 µmol/J).
const molPerMegajoule = 7.265 / 3.6

// Light returns the light that plants use in a day's sun.
func Light(day quantity.Insolation) quantity.DailyLight {
	return quantity.DailyLight(day.Megajoules() * molPerMegajoule)
}
