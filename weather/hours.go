package weather

import "eyeup/civil"

// Hours is the weather of a span hour by hour, by the sun's clock: noon is when the sun
// stands highest. The slices are as long as the span has hours and are in the units of
// the hot loops that read them; hour i covers the time from i to i+1.
type Hours struct {
	Span     civil.Span
	Air      []float64 // mean air temperature of the hour, °C
	DewPoint []float64 // mean dew point of the hour, °C
	Sun      []float64 // mean irradiance on the level ground, W/m²
	Days     []Day     // the days they were made from
}
