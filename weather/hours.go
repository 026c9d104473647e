package weather

import (
	"eyeup/civil"
	"eyeup/quantity"
)

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

// Site is where on Earth the weather is met.
type Site struct {
	Latitude  float64 // degrees north, -90 to 90
	Longitude float64 // degrees east, -180 to 180
	Elevation quantity.Length
}
