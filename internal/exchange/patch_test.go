package exchange

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"eyeup/patch"
	"eyeup/quantity"
)

// goodPatch is a patch that asks for all there is to ask for.
const goodPatch = `
[patch]
kinds = ["dahlia", "anemone"]
places = 240
low = "80 cm"
tall = "120 cm"
bed_width = "4 ft"
row_length = "10 m"

[patch.spacing]
dahlia = "18 in"

[[patch.variety]]
name = "Fen Candle"
kind = "dahlia"
wish = "must have"
least = 3
most = 12
flower = "ball"
colour_word = "red"
spacing = "50 cm"

[[patch.variety]]
name = "Newcomer"
kind = "dahlia"
plant = 5
reserve = 1
bought = 6
timing = "late"
colour = "#b3261e"
height = "110 cm"

[[patch.mix]]
kind = "dahlia"
by = "colour"
slack = "5%"
want = { red = "30%", white = "25%" }

[[patch.mix]]
kind = "dahlia"
by = "height"
slack = "0%"
want = { tall = "40%" }
`

func TestPatchIsRead(t *testing.T) {
	g := mustRead(t, folder(goodGarden+goodPatch, goodStock))
	want := &Patch{
		Kinds: []string{"dahlia", "anemone"}, Places: 240, Low: 0.8, Tall: 1.2, Width: 4 * quantity.Foot, Length: 10,
		Spacing: map[string]quantity.Length{"dahlia": 18 * quantity.Inch},
		Varieties: []PatchVariety{
			{Name: "Fen Candle", Kind: "dahlia", Wish: patch.Must, Least: 3, Most: 12, Flower: "ball", Family: "red", Spacing: 0.5},
			{Name: "Newcomer", Kind: "dahlia", New: &NewVariety{Plant: 5, Reserve: 1, Bought: 6, Timing: "late", Colour: "#b3261e", Height: 1.1}},
		},
		Mixes: []patch.Mix{
			{Kind: "dahlia", By: patch.Colour, Slack: 0.05, Want: []patch.Share{{Name: "red", Of: 0.3}, {Name: "white", Of: 0.25}}},
			{Kind: "dahlia", By: patch.Height, Want: []patch.Share{{Name: "tall", Of: 0.4}}},
		},
	}
	for i := range g.Patch.Varieties {
		if g.Patch.Varieties[i].Line == 0 {
			t.Errorf("%s stands in no line", g.Patch.Varieties[i].Name)
		}
		g.Patch.Varieties[i].Line = 0
	}
	if diff := cmp.Diff(want, g.Patch, same); diff != "" {
		t.Error(diff)
	}
}

func TestPatchIsWrittenAsItIsRead(t *testing.T) {
	was := mustRead(t, folder(goodGarden+goodPatch, goodStock))
	is := mustRead(t, writtenFolder(t, was))
	for _, g := range []*Garden{was, is} {
		for i := range g.Patch.Varieties {
			g.Patch.Varieties[i].Line = 0
		}
	}
	if diff := cmp.Diff(was.Patch, is.Patch, same); diff != "" {
		t.Error(diff)
	}
}

// Each row changes one thing in the good patch. The fault must stand at the text and say
// the words.
func TestPatchRefusals(t *testing.T) {
	if n := len(mustRead(t, folder(goodGarden, goodStock)).Places); n == 0 {
		t.Fatal("a garden without [patch] is to be read as before")
	}
	for _, c := range []struct{ old, new, at, says string }{
		{`places = 240`, `places = "240"`, `"240"`, "without quotes"},
		{`places = 240`, `placse = 240`, `placse`, "did you mean place"},
		{`places = 240`, `place = "nowhere"`, `"nowhere"`, "open ground"},
		{`"anemone"]`, `"anenome"]`, `"anenome"`, "did you mean anemone"},
		{`low = "80 cm"`, `low = 80`, `80` + "\ntall", "unit"},
		{`low = "80 cm"`, `low = "130 cm"`, `"120 cm"`, "low below tall"},
		{`bed_width = "4 ft"`, ``, `patch]`, "bed_width and row_length"},
		{`dahlia = "18 in"`, `dahlai = "18 in"`, `dahlai`, "did you mean dahlia"},
		{`dahlia = "18 in"`, `dahlia = "-18 in"`, `"-18 in"`, "is not plausible"},
		{`wish = "must have"`, `wish = "must hvae"`, `"must hvae"`, "did you mean must have"},
		{`least = 3`, `least = 13`, `13` + "\nmost", "swap them"},
		{`plant = 5`, `least = 5`, `1` + "\nbought", "for a new variety add plant"},
		{`colour = "#b3261e"`, `colour = "red"`, `"red"` + "\nheight", "#b3261e"},
		{`name = "Newcomer"`, `name = "Fen Candle"`, `"Fen Candle"` + "\nkind = \"dahlia\"\nplant", "has the same variety"},
		{`by = "colour"`, `by = "color"`, `"color"`, "did you mean colour"},
		{`slack = "5%"`, `slack = 5`, `5` + "\nwant", "unit"},
		{`want = { red`, `want = { rde = 3, red`, `3, red`, ""},
		{`want = { tall`, `want = { tal`, `tal =`, "did you mean tall"},
		{`want = { tall = "40%" }`, ``, `mix]]` + "\nkind = \"dahlia\"\nby = \"height\"", "want is missing"},
	} {
		changed := strings.Replace(goodPatch, c.old, c.new, 1)
		line, _ := spotOf(t, changed, c.at)
		line += strings.Count(goodGarden, "\n")
		found := false
		faults := told(t, goodGarden+changed, goodStock)
		for _, f := range faults {
			found = found || f.Line == line && strings.Contains(f.What, c.says)
			inForm(t, f)
		}
		if !found {
			t.Errorf("%q for %q: want line %d to say %q, got %v", c.new, c.old, line, c.says, faults)
		}
	}
}
