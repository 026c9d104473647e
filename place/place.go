package place

import (
	"eyeup/sun"
	"eyeup/weather"
)

// Place is somewhere stock can stand.
type Place interface {
	// Run returns what it is like inside through the span of h at the given setting.
	// The weather must be complete: as many hours as its span has, none unknown.
	Run(h *weather.Hours, site sun.Site, s Setting) *Course
}
