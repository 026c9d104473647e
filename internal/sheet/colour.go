package sheet

import "math"

// ColourWords describes a flower's colour #rrggbb in words, such as "dark red" or "cream", for
// those who read a label in poor light or greyscale, or are colour-blind. It returns an empty
// string for an invalid colour.
//
// Lightness, chroma and hue are those of OKLab (Ottosson 2020); the borders between words are
// our choice, checked against the names of CSS Color 4.
func ColourWords(hex string) string {
	c, ok := inkOf(hex)
	if !ok {
		return ""
	}
	light, strong, hue := oklch(c)
	switch {
	case strong < 0.025 && light > 0.93 && (strong < 0.012 || hue < 60 || hue > 120):
		return "white"
	case strong < 0.045 && light > 0.92 && hue >= 60 && hue <= 120:
		return "cream white"
	case light < 0.28 && strong < 0.075:
		return "near black"
	case strong < 0.022:
		return depth(light, "grey")
	}
	return hueWords(light, strong, hue)
}

// depth prefixes a colour's name by how light or dark it is.
func depth(light float64, name string) string {
	switch {
	case light > 0.84:
		return "pale " + name
	case light > 0.72:
		return "light " + name
	case light < 0.33:
		return "very dark " + name
	case light < 0.47:
		return "dark " + name
	}
	return name
}

// hues are the words around the colour circle, each up to an angle in degrees.
var hues = []struct {
	to   float64
	name func(light, strong float64) string
}{
	{14, rosy}, {42, red}, {72, orange}, {93, amber}, {118, yellow},
	{136, plainly("yellow-green")}, {166, plainly("green")}, {212, plainly("blue-green")}, {277, plainly("blue")},
	{306, plainly("violet")}, {343, purple}, {360, rosy},
}

func hueWords(light, strong, hue float64) string {
	for _, h := range hues {
		if hue < h.to {
			return h.name(light, strong)
		}
	}
	return ""
}

func plainly(name string) func(light, strong float64) string {
	return func(light, _ float64) string { return depth(light, name) }
}

func rosy(light, strong float64) string {
	switch {
	case light > 0.85:
		return "pale pink"
	case light > 0.62 && strong < 0.07:
		return "dusty pink"
	case light > 0.62:
		return "pink"
	case light < 0.36 || light < 0.45 && strong < 0.09:
		return "wine red"
	}
	return "rose red"
}

func red(light, strong float64) string {
	switch {
	case light > 0.85:
		return "pale pink"
	case light > 0.68:
		return "salmon pink"
	case light < 0.30:
		return "very dark red"
	case light < 0.47:
		if strong < 0.07 {
			return "dark brown"
		}
		return "dark red"
	case strong < 0.09:
		return "brown"
	}
	return "red"
}

func orange(light, strong float64) string {
	switch {
	case light > 0.83:
		return "peach"
	case light > 0.72 && strong < 0.11:
		return "apricot"
	case light < 0.45:
		return "dark brown"
	case light < 0.60 && strong < 0.135, light < 0.56:
		return "brown"
	}
	return "orange"
}

func amber(light, strong float64) string {
	switch {
	case light > 0.86 && strong < 0.09:
		return "cream"
	case light > 0.70 && strong < 0.09:
		return "buff"
	case light > 0.70:
		return "golden yellow"
	case light < 0.45:
		return "dark brown"
	case light < 0.60:
		return "brown"
	}
	return "bronze"
}

func yellow(light, strong float64) string {
	switch {
	case light > 0.86 && strong < 0.08:
		return "cream"
	case light < 0.66:
		return "olive"
	case light > 0.9 && strong < 0.13:
		return "pale yellow"
	}
	return "yellow"
}

func purple(light, strong float64) string {
	switch {
	case light > 0.70 && strong < 0.25 || light > 0.62 && strong < 0.09:
		return "lilac"
	case light < 0.33:
		return "very dark purple"
	case light < 0.40:
		return "dark purple"
	}
	return "purple"
}

// oklch returns lightness (0 to 1), chroma (0 to about 0.32) and hue in degrees. Source:
// Ottosson 2020, "A perceptual color space for image processing"; CSS Color 4, section 10.
func oklch(c ink) (light, strong, hue float64) {
	linear := func(v int) float64 {
		s := float64(v) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	r, g, b := linear(c[0]), linear(c[1]), linear(c[2])
	l := math.Cbrt(0.4122214708*r + 0.5363325363*g + 0.0514459929*b)
	m := math.Cbrt(0.2119034982*r + 0.6806995451*g + 0.1073969566*b)
	s := math.Cbrt(0.0883024619*r + 0.2817188376*g + 0.6299787005*b)
	light = 0.2104542553*l + 0.7936177850*m - 0.0040720468*s
	x := 1.9779984951*l - 2.4285922050*m + 0.4505937099*s
	y := 0.0259040371*l + 0.7827717662*m - 0.8086757660*s
	hue = math.Atan2(y, x) * 180 / math.Pi
	if hue < 0 {
		hue += 360
	}
	return light, math.Hypot(x, y), hue
}
