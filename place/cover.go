package place

import (
	"slices"

	"eyeup/quantity"
)

// Cover is the material that covers a place.
type Cover struct {
	Name  string
	U     quantity.Transmittance // U value: heat loss
	Light quantity.Share         // of the outside light that reaches the plants, after losses by frame and dirt
	// FrostLift is the most by which an unheated house with it is assumed to be warmer than
	// outside on a frost night.
	FrostLift quantity.Difference
}

// CoverNames returns the names in the covers table.
func CoverNames() []string { return names("covers") }

// CoverNamed returns the cover with that name, and whether the table has it.
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
