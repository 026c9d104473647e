package patch

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Families lists the words that FamilyOf uses.
func Families() []string {
	return []string{"white", "yellow", "orange", "red", "pink", "purple", "blue", "green", "grey", "dark"}
}

// FamilyOf returns the name of the colour #rrggbb, one of Families; empty for empty, an error
// for anything else. The borders between families are our choice, by lightness, chroma and hue
// of CIE L*a*b* under D65. A grower may name the colour of any variety.
//
// Source of the conversion: IEC 61966-2-1 (sRGB) and CIE 15 (L*a*b*).
func FamilyOf(colour string) (string, error) {
	if colour == "" {
		return "", nil
	}
	code, err := strconv.ParseUint(strings.TrimPrefix(colour, "#"), 16, 32)
	if err != nil || colour[0] != '#' || len(colour) != 7 {
		return "", fmt.Errorf("%q is not a colour; write it as # and six of 0-9 and a-f, such as #b3261e", colour)
	}
	light, chroma, hue := lightChromaHue(uint32(code))
	switch {
	case chroma < 18 && light >= 85, chroma < 12 && light >= 80:
		return "white", nil
	case light < 25 && chroma < 40:
		return "dark", nil
	case chroma < 8:
		return "grey", nil
	case hue < 20 || hue >= 335:
		if light < 42 && hue < 20 {
			return "red", nil
		} else if light < 42 {
			return "purple", nil
		}
		return "pink", nil
	case hue < 50 && light >= 55 && chroma < 45:
		return "pink", nil
	}
	for _, band := range []struct {
		to   float64
		name string
	}{{50, "red"}, {80, "orange"}, {115, "yellow"}, {200, "green"}, {300, "blue"}} {
		if hue < band.to {
			return band.name, nil
		}
	}
	return "purple", nil
}

// lightChromaHue converts sRGB to L* (0 to 100), C* and the hue in degrees (0 to 360).
func lightChromaHue(code uint32) (light, chroma, hue float64) {
	var rgb [3]float64
	for i := range rgb {
		c := float64(code>>(16-8*i)&0xff) / 255
		if c <= 0.04045 {
			rgb[i] = c / 12.92
		} else {
			rgb[i] = math.Pow((c+0.055)/1.055, 2.4)
		}
	}
	x := (0.4124*rgb[0] + 0.3576*rgb[1] + 0.1805*rgb[2]) / 0.9505
	y := 0.2126*rgb[0] + 0.7152*rgb[1] + 0.0722*rgb[2]
	z := (0.0193*rgb[0] + 0.1192*rgb[1] + 0.9505*rgb[2]) / 1.089
	fx, fy, fz := cubic(x), cubic(y), cubic(z)
	a, b := 500*(fx-fy), 200*(fy-fz)
	return 116*fy - 16, math.Hypot(a, b), math.Mod(math.Atan2(b, a)*180/math.Pi+360, 360)
}

// cubic is the function f of CIE L*a*b*.
func cubic(t float64) float64 {
	if t > 216.0/24389 {
		return math.Cbrt(t)
	}
	return (24389.0/27*t + 16) / 116
}
