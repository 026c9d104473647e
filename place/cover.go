package place

import (
	"slices"

	"eyeup/quantity"
)

// Cover is what a place is covered with.
type Cover struct {
	Name  string
	U     quantity.Transmittance // heat that goes through
	Light quantity.Share         // of the outside light that reaches the plants, frame and dirt included
	// FrostLift is the most that an unheated house of it is promised to be warmer than
	// outside on a frost night.
	FrostLift quantity.Difference
}

// CoverNames returns the rows of the covers table.
func CoverNames() []string { return names("covers") }

// CoverNamed returns the cover of that name, and whether the table has it.
func CoverNamed(name string) (Cover, bool) {
	if !slices.Contains(CoverNames(), name) {
		return Cover{}, false
	}
	return Cover{
		Name:      name,
		U:         quantity.Transmittance(value("covers", name+".u")),
		Light:     quantity.Share(value("covers", name+".light")),
		FrostLift: quantity.Difference(value("covers", name+".frost_lift")),
	}, true
}
