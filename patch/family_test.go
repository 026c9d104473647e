package patch

import (
	"math"
	"testing"
)

// Blue as a screen makes it (#0000ff) lies among the purples of L*a*b* and is left out: no
// flower has it. The words of CSS are an outside witness of what people call colours.
// Source: W3C, CSS Color Module Level 4, section 6.1 (named colours).
func TestFamilyAgreesWithNamedColours(t *testing.T) {
	for _, c := range []struct{ code, name, family string }{
		{"#ffffff", "white", "white"},
		{"#fffff0", "ivory", "white"},
		{"#fffafa", "snow", "white"},
		{"#faf0e6", "linen", "white"},
		{"#ffff00", "yellow", "yellow"},
		{"#ffd700", "gold", "yellow"},
		{"#ffa500", "orange", "orange"},
		{"#ff8c00", "darkorange", "orange"},
		{"#ff0000", "red", "red"},
		{"#dc143c", "crimson", "red"},
		{"#b22222", "firebrick", "red"},
		{"#8b0000", "darkred", "red"},
		{"#ffc0cb", "pink", "pink"},
		{"#ff69b4", "hotpink", "pink"},
		{"#ff1493", "deeppink", "pink"},
		{"#ffb6c1", "lightpink", "pink"},
		{"#800080", "purple", "purple"},
		{"#dda0dd", "plum", "purple"},
		{"#da70d6", "orchid", "purple"},
		{"#663399", "rebeccapurple", "purple"},
		{"#008000", "green", "green"},
		{"#32cd32", "limegreen", "green"},
		{"#4682b4", "steelblue", "blue"},
		{"#4169e1", "royalblue", "blue"},
		{"#808080", "grey", "grey"},
		{"#000000", "black", "dark"},
	} {
		if got, err := FamilyOf(c.code); err != nil || got != c.family {
			t.Errorf("%s (%s) is %q, want %q; %v", c.name, c.code, got, c.family, err)
		}
	}
	for _, no := range []string{"red", "#12", "#gggggg", "b3261e#"} {
		if _, err := FamilyOf(no); err == nil {
			t.Errorf("%q was taken for a colour", no)
		}
	}
}

// By the definition of L*a*b* (CIE 15) white is 100, black 0, and no grey has any chroma.
func TestGreysHaveNoChroma(t *testing.T) {
	last := -1.0
	for i := range uint32(256) {
		light, chroma, _ := lightChromaHue(i<<16 | i<<8 | i)
		if chroma > 0.05 || light <= last {
			t.Errorf("grey %d: chroma %v, lightness %v after %v", i, chroma, light, last)
		}
		last = light
	}
	if black, _, _ := lightChromaHue(0); math.Abs(black) > 1e-9 || math.Abs(last-100) > 0.01 {
		t.Errorf("black is %v, white %v; want 0 and 100", black, last)
	}
}
