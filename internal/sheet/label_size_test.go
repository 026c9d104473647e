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

// ruled is a layout as a ruler would find it, worked out by hand, in millimetres.
type ruled struct {
	typed           string
	across, down    int
	left, top       float64 // of the first label
	stepX, stepY    float64 // from label to label
	wide, tall      float64
	edgesCanBeFound bool // those of a page can't be seen upon it
}

// by hand: (210 - 2×8 - 2×2)/3 = 63.333 and a step of 2 more; (297 - 2×8 - 7×2)/8 = 33.375;
// (210 - 2×7.2 - 2×2.5)/3 = 63.533, (297 - 2×15.1)/7 = 38.114; (215.9 - 2×12.7 - 4.826)/2 =
// 92.837, (279.4 - 2×12.7 - 4×1)/5 = 50.
var byHand = []ruled{
	{"a4:3x8", 3, 8, 8, 8, 65.333, 35.375, 63.333, 33.375, true},
	{"a4:3x7,left=7.2mm,right=7.2mm,top=15.1mm,bottom=15.1mm,across=2.5mm,down=0mm", 3, 7, 7.2, 15.1, 66.033, 38.114, 63.533, 38.114, true},
	{"letter:2x5,margin=0.5in,across=0.19in,down=1mm", 2, 5, 12.7, 12.7, 97.663, 51, 92.837, 50, true},
	{"roll:62x40mm", 1, 1, 0, 0, 0, 0, 62, 40, false},
	{"stake:125x15mm", 1, 1, 0, 0, 0, 0, 125, 15, false},
}

// corner is that of the n-th label, from 0.
func (r ruled) corner(n int) (x, y float64) {
	return r.left + float64(n%r.across)*r.stepX, r.top + float64(n/r.across)*r.stepY
}

// TestAlignment holds labels to their measures as two other programs see the page: each
// number stands in the very middle of its label, and each label's edge is drawn where the
// measures say.
func TestAlignment(t *testing.T) {
	need(t, "pdftoppm", "pdftotext")
	for _, r := range byHand {
		var pdf bytes.Buffer
		if _, err := Alignment(&pdf, layout(t, r.typed), day); err != nil {
			t.Fatal(err)
		}
		seen := map[int]bool{}
		for _, b := range boxesOf(t, pdf.Bytes()) {
			n, err := strconv.Atoi(b.word)
			if err != nil || n < 1 || n > r.across*r.down || b.right-b.left > 5 {
				continue
			}
			x, y := r.corner(n - 1)
			if middle := (b.left + b.right) / 2; math.Abs(middle-x-r.wide/2) > within {
				t.Errorf("%s: the middle of label %d lies at %.2f mm across, want %.2f", r.typed, n, middle, x+r.wide/2)
			}
			if b.top > y+r.tall/2 || b.bottom < y+r.tall/2 {
				t.Errorf("%s: label %d lies from %.2f to %.2f mm down, want %.2f within", r.typed, n, b.top, b.bottom, y+r.tall/2)
			}
			seen[n] = true
		}
		if len(seen) != r.across*r.down {
			t.Errorf("%s: %d numbers were read, want %d", r.typed, len(seen), r.across*r.down)
		}
		if r.edgesCanBeFound {
			edges(t, r, pdf.Bytes())
		}
	}
}

// edges looks for the drawn edges of every label, pixel by pixel.
func edges(t *testing.T, r ruled, pdf []byte) {
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
	for n := range r.across * r.down {
		x, y := r.corner(n)
		for what, found := range map[string]bool{
			"left": near(x, y+7, 1, 0), "right": near(x+r.wide, y+7, 1, 0),
			"upper": near(x+r.wide*0.6, y, 0, 1), "lower": near(x+r.wide*0.1, y+r.tall, 0, 1),
		} {
			if !found {
				t.Errorf("%s: the %s edge of label %d is not where it should be", r.typed, what, n+1)
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
		"":                         "is not a layout",
		"a4":                       "is not a layout",
		"a4:3":                     "the number across and down",
		"a4:0x8":                   "1 to 50 labels",
		"a4:51x8":                  "1 to 50 labels",
		"a5:3x8":                   `there is no "a5"`,
		"a4:3x8,margin=8":          "unit",
		"a4:3x8,edge=8mm":          `there is no "edge"`,
		"a4:3x8,margin=-8mm":       "is not plausible",
		"a4:3x8,margin=200mm":      "the least is",
		"a4:20x30":                 "the least is",
		"roll:5mm":                 "the least is",
		"roll:62":                  "unit",
		"roll:62mm,margin=2mm":     "no margins",
		"roll:5000m":               "is not plausible",
		"stake:125mm":              "a length and a width",
		"stake:20x9mm":             "the least is",
		"a4:3x8,margin=NaNmm":      "NaN",
		"a4:3x8x2":                 "the number across and down",
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
