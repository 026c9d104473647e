package sheet

import (
	"strings"
	"testing"
)

// TestColourWords holds the words to the named colours of CSS Color 4, section 6.1: where
// a name is a colour's common name, our words hold it or one of the same meaning.
func TestColourWords(t *testing.T) {
	for hex, want := range map[string]string{
		"#ff0000": "red", "#8b0000": "dark red", "#ffc0cb": "pink", "#ff69b4": "pink", "#ffa500": "orange|golden", "#ff8c00": "orange",
		"#ffd700": "yellow", "#ffff00": "yellow", "#ffffff": "white", "#000000": "black", "#808080": "grey", "#d3d3d3": "pale grey",
		"#8b4513": "brown", "#008000": "green", "#006400": "dark green", "#0000ff": "blue", "#00008b": "dark blue", "#add8e6": "blue",
		"#800080": "purple", "#ee82ee": "lilac", "#fa8072": "salmon", "#ffdab9": "peach", "#808000": "olive", "#fff8dc": "cream", "#ffe4c4": "cream|peach",
		"#d2b48c": "buff", "#8a2be2": "violet", "#dc143c": "red", "#c71585": "red|purple", "#008080": "blue-green", "#9acd32": "yellow-green",
	} {
		got := ColourWords(hex)
		found := false
		for _, one := range strings.Split(want, "|") {
			found = found || strings.Contains(got, one)
		}
		if !found {
			t.Errorf("%s is said %q, want %q", hex, got, want)
		}
	}
	for _, none := range []string{"", "red", "#12345", "#gggggg", "#1234567"} {
		if got := ColourWords(none); got != "" {
			t.Errorf("%q is said %q", none, got)
		}
	}
}

// TestEveryColourHasWords goes through the cube.
func TestEveryColourHasWords(t *testing.T) {
	for r := 0; r < 256; r += 15 {
		for g := 0; g < 256; g += 15 {
			for b := 0; b < 256; b += 15 {
				light, strong, hue := oklch(ink{r, g, b})
				if hueWords(light, strong, hue) == "" {
					t.Errorf("%d %d %d has no words", r, g, b)
				}
			}
		}
	}
}

// TestOKLab holds the colour space to the values published with it: white, and the first
// primary. Source: CSS Color 4, examples in section 10; white by definition.
func TestOKLab(t *testing.T) {
	light, strong, _ := oklch(ink{255, 255, 255})
	if light < 0.999 || light > 1.001 || strong > 0.001 {
		t.Errorf("white is %.4f light, %.4f strong", light, strong)
	}
	light, strong, hue := oklch(ink{255, 0, 0}) // oklch(62.8% 0.25768 29.234)
	if light < 0.627 || light > 0.629 || strong < 0.256 || strong > 0.259 || hue < 29.1 || hue > 29.4 {
		t.Errorf("red is %.4f, %.4f, %.2f°", light, strong, hue)
	}
}
