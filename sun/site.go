package sun

import (
	"fmt"

	"eyeup/quantity"
)

// Site is where on Earth the garden lies.
type Site struct {
	Latitude  float64         // degrees north, -90 to 90
	Longitude float64         // degrees east, -180 to 180
	Elevation quantity.Length // above the sea, -430 to 9000 m
}

// Check returns an error that says which part of the site cannot be.
func (s Site) Check() error {
	switch {
	case !(s.Latitude >= -90 && s.Latitude <= 90):
		return fmt.Errorf("latitude %g lies outside -90 to 90; give degrees north, south is negative", s.Latitude)
	case !(s.Longitude >= -180 && s.Longitude <= 180):
		return fmt.Errorf("longitude %g lies outside -180 to 180; give degrees east, west is negative", s.Longitude)
	case !(s.Elevation >= -430 && s.Elevation <= 9000):
		return fmt.Errorf("elevation %g m lies outside -430 to 9000 m", float64(s.Elevation))
	}
	return nil
}

// IsSouthern reports whether the site lies south of the equator, where the seasons are turned round.
func (s Site) IsSouthern() bool { return s.Latitude < 0 }
