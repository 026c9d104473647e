package place

import "eyeup/quantity"

// Cover is what a place is covered with.
type Cover struct {
	Name  string
	U     quantity.Transmittance // heat that goes through
	Light quantity.Share         // of the outside light that reaches the plants, frame and dirt included
	// FrostLift is the most that an unheated house of it is promised to be warmer than
	// outside on a frost night.
	FrostLift quantity.Difference
}

// CoverNamed returns the row of the covers table of that name.
func CoverNamed(name string) (Cover, bool) {
	c, ok := map[string]Cover{
		"single-glass": {"single-glass", 6.53, 0.80, 2},
		"twin-wall":    {"twin-wall", 3.5, 0.70, 2},
		"single-film":  {"single-film", 7.10, 0.75, 1.3},
		"double-film":  {"double-film", 4.54, 0.65, 1.3},
	}[name]
	return c, ok
}
