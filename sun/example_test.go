package sun_test

import (
	"fmt"
	"time"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
)

// Example 8 of FAO 56 (Allen and others 1998): the sun above the air at 20 S on 3 September.
func ExampleExtraterrestrial() {
	fmt.Printf("%.1f MJ/m²\n", sun.Extraterrestrial(-20, civil.MustOn(2025, 9, 3)).Megajoules())
	// Output: 32.2 MJ/m²
}

// Example 9 of FAO 56: daylight at 20 S on 3 September.
func ExampleDayLength() {
	fmt.Printf("%.1f h\n", sun.DayLength(-20, civil.MustOn(2025, 9, 3)).Hours())
	// Output: 11.7 h
}

// Example 15 of FAO 56: July near Lyon, between 14.8 and 26.6 °C.
func ExampleFromRange() {
	lyon := sun.Site{Latitude: 45 + 43.0/60, Longitude: 5, Elevation: 200 * quantity.Metre}
	day := sun.FromRange(0.16, quantity.Celsius(14.8), quantity.Celsius(26.6), lyon, civil.MustOn(2025, 7, 15))
	fmt.Printf("%.1f MJ/m²\n", day.Megajoules())
	// Output: 22.3 MJ/m²
}

// The case of NREL/TP-560-34302: Golden on 17 October 2003; its zenith is 50.11.
func ExamplePosition() {
	site := sun.Site{Latitude: 39.742476, Longitude: -105.1786, Elevation: 1830.14 * quantity.Metre}
	s := sun.Position(site, time.Date(2003, 10, 17, 19, 30, 30, 0, time.UTC))
	fmt.Printf("%.2f° from overhead\n", s.Zenith)
	// Output: 50.11° from overhead
}
