package sheet

import (
	"bytes"
	"math"
	"strconv"
	"strings"
	"testing"
)

// within is how far a label may lie from where its measures say, in millimetres.
const within = 0.3

// TestAlignment holds labels to their measures as two other programs see the page: each
// number stands in the very middle of its label, and each label's edge is drawn where the
// measures say.
func TestAlignment(t *testing.T) {
	need(t, "pdftoppm", "pdftotext")
	for _, typed := range []string{"a4:3x8", "a4:3x7,left=7.2mm,right=7.2mm,top=15.1mm,bottom=15.1mm,across=2.5mm,down=0mm", "letter:2x5,margin=0.5in,gap=0.19in", "roll:62x40mm", "stake:125x15mm"} {
		l := layout(t, typed)
		var pdf bytes.Buffer
		if _, err := Alignment(&pdf, l, day); err != nil {
			t.Fatal(err)
		}
		size := l.Label()
		seen := 0
		for _, b := range boxesOf(t, pdf.Bytes()) {
			n, err := strconv.Atoi(b.word)
			if err != nil || n > l.PerPage() || b.right-b.left > 5 {
				continue
			}
			x, _ := l.corner(n - 1)
			if middle := (b.left + b.right) / 2; math.Abs(middle-x-size.Width/2) > within {
				t.Errorf("%s: the middle of label %d lies at %.2f mm, want %.2f", typed, n, middle, x+size.Width/2)
			}
			seen++
		}
		if seen < l.PerPage() {
			t.Errorf("%s: %d numbers were read, want %d", typed, seen, l.PerPage())
		}
		edges(t, typed, l, pdf.Bytes())
	}
}

// edges looks for the drawn edges of the first and the last label, pixel by pixel.
func edges(t *testing.T, typed string, l Layout, pdf []byte) {
	const dpi = 300
	stem := strings.TrimSuffix(file(t, pdf), ".pdf")
	tool(t, nil, "pdftoppm", "-png", "-gray", "-singlefile", "-r", strconv.Itoa(dpi), stem+".pdf", stem)
	page := pixels(t, stem+".png")
	dark := func(x, y float64) bool {
		r, _, _, _ := page.At(int(math.Round(x/25.4*dpi)), int(math.Round(y/25.4*dpi))).RGBA()
		return r < 0x8000
	}
	near := func(x, y, dx, dy float64) bool { // whether an edge lies within the allowance
		for d := -within; d <= within; d += 0.02 {
			if dark(x+d*dx, y+d*dy) {
				return true
			}
		}
		return false
	}
	size := l.Label()
	for _, n := range []int{0, l.PerPage() - 1} {
		x, y := l.corner(n)
		for what, found := range map[string]bool{
			"left": near(x, y+7, 1, 0), "right": near(x+size.Width, y+7, 1, 0),
			"upper": near(x+size.Width*0.6, y, 0, 1), "lower": near(x+size.Width*0.1, y+size.Height, 0, 1),
		} {
			onPage := l.PerPage() > 1 // the edges of a page can't be seen upon it
			if onPage && !found {
				t.Errorf("%s: the %s edge of label %d is not where it should be", typed, what, n+1)
			}
		}
	}
}

// TestLayouts reckons sizes by hand: (210 - 2×8 - 2×2)/3 and (297 - 2×8 - 7×2)/8, and so on.
func TestLayouts(t *testing.T) {
	for typed, want := range map[string]Size{
		"a4:3x8":                                        {63.333, 33.375},
		"A4: 3 x 8, margin = 8mm, gap=2mm":              {63.333, 33.375},
		"letter:2x5,margin=0.5in,gap=0in":               {95.25, 50.8},
		"a4:2x4,margin=1cm,across=4mm,down=0mm,top=2cm": {93, 66.75},
		"roll:62mm":                                     {62, rollLength},
		"roll:62x40mm":                                  {62, 40},
		"stake:125x15mm":                                {125, 15},
		"stake:5inx15mm":                                {127, 15},
		"roll:2.4in":                                    {60.96, rollLength},
	} {
		l, err := ParseLayout(typed)
		if err != nil {
			t.Errorf("%s: %v", typed, err)
			continue
		}
		if got := l.Label(); math.Abs(got.Width-want.Width) > 0.01 || math.Abs(got.Height-want.Height) > 0.01 {
			t.Errorf("%s: %.3f by %.3f mm, want %.3f by %.3f", typed, got.Width, got.Height, want.Width, want.Height)
		}
	}
}

// TestLayoutsRefused says what is wrong with a layout, and how one is written.
func TestLayoutsRefused(t *testing.T) {
	for typed, want := range map[string]string{
		"":                         "is no layout",
		"a4":                       "is no layout",
		"a4:3":                     "how many across and down",
		"a4:0x8":                   "1 to 50 labels",
		"a4:51x8":                  "1 to 50 labels",
		"a5:3x8":                   `there is no "a5"`,
		"a4:3x8,margin=8":          "unit",
		"a4:3x8,edge=8mm":          `there is no "edge"`,
		"a4:3x8,margin=-8mm":       "can't be meant",
		"a4:3x8,margin=200mm":      "the least is",
		"a4:20x30":                 "the least is",
		"roll:5mm":                 "the least is",
		"roll:62":                  "unit",
		"roll:62mm,margin=2mm":     "no margins",
		"roll:5000m":               "can't be meant",
		"stake:125mm":              "a length and a width",
		"stake:20x9mm":             "the least is",
		"a4:3x8,margin=NaNmm":      "NaN",
		"a4:3x8x2":                 "how many across and down",
		"letter:2x5,gap=1mm,,":     "there is no",
		"a4:3x8,left=1e400mm":      "1e400",
		"stake:125x15mm,margin=1m": "no margins",
	} {
		_, err := ParseLayout(typed)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: want %q, got: %v", typed, want, err)
		}
	}
}

func FuzzParseLayout(f *testing.F) {
	for _, typed := range layouts {
		f.Add(typed)
	}
	f.Fuzz(func(t *testing.T, typed string) {
		l, err := ParseLayout(typed)
		if err != nil {
			return
		}
		size := l.Label()
		x, y := l.corner(l.PerPage() - 1)
		if x+size.Width > l.Page.Width-l.Right+1e-6 || y+size.Height > l.Page.Height-l.Bottom+1e-6 {
			t.Errorf("%q: the last label leaves the page", typed)
		}
	})
}
