package desk

import (
	"math"
	"testing"
)

// TestPlacesNamed looks up towns whose positions are printed elsewhere: airports and
// observatories within the town, from memory to half a degree, which asserts no more than
// that latitude and longitude are where they belong.
func TestPlacesNamed(t *testing.T) {
	for asked, want := range map[string][2]float64{
		"waterville maine": {44.5, -69.6}, "Cork, IE": {51.9, -8.5}, "łódź": {51.8, 19.5}, "christchurch canterbury": {-43.5, 172.6},
	} {
		found, err := PlacesNamed(asked)
		if err != nil || len(found) == 0 {
			t.Errorf("%q: %v, %v", asked, found, err)
			continue
		}
		if p := found[0]; math.Abs(p.Latitude-want[0]) > 0.5 || math.Abs(p.Longitude-want[1]) > 0.5 {
			t.Errorf("%q is %v at %g, %g, want about %v", asked, p, p.Latitude, p.Longitude, want)
		}
	}
	if found, err := PlacesNamed("san"); err != nil || len(found) != mostNamed {
		t.Errorf("%d places, %v", len(found), err)
	}
	if _, err := PlacesNamed("x"); err == nil {
		t.Error("one letter is taken")
	}
	if found, err := PlacesNamed("zzzzyx"); err != nil || len(found) != 0 {
		t.Errorf("%v, %v", found, err)
	}
}
