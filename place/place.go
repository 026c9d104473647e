package place

import (
	"eyeup/sun"
	"eyeup/weather"
)

// Place is a place where stock can stand.
type Place interface {
	// Run returns the conditions inside over the span of h at the given setting. The weather
	// must be complete: an hour for every hour of its span, none unknown.
	Run(h *weather.Hours, site sun.Site, s Setting) *Course
}
