package sheet

import (
	"bytes"
	"fmt"
	"image"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// TestDrawn compares what comes onto paper with the picture that hb-view draws of the same
// name, dot by dot.
func TestDrawn(t *testing.T) {
	need(t, "hb-view", "pdftoppm")
	const size, dpi = 48.0, 72 // a point is a dot
	p := newPaper("names", Size{200, 40}, day)
	var all []string
	for _, name := range inEveryScript() {
		if len(p.runs(name, plain)) != 1 || slices.Contains(cutByView, name) {
			continue // hb-view takes one typeface
		}
		all = append(all, name)
		p.page()
		p.text(20, 25, name, size, plain, black)
	}
	var pdf bytes.Buffer
	if _, err := p.finish(&pdf); err != nil {
		t.Fatal(err)
	}
	stem := strings.TrimSuffix(file(t, pdf.Bytes()), ".pdf")
	tool(t, nil, "pdftoppm", "-gray", "-png", "-r", fmt.Sprint(dpi), stem+".pdf", stem)
	pages, err := filepath.Glob(stem + "-*.png")
	if err != nil || len(pages) != len(all) || len(all) < 40 {
		t.Fatalf("%d pages of %d names: %v", len(pages), len(all), err)
	}
	slices.Sort(pages)
	folder := t.TempDir()
	for i, name := range all {
		f := p.runs(name, plain)[0].face
		want := filepath.Join(folder, "want.png")
		kept, _ := readable(name)
		tool(t, []byte(string(kept)), "hb-view", "--language=und", "--font-size="+fmt.Sprint(size), "--font-file="+unpackedTo(t, folder, f), "--output-format=png", "--output-file="+want)
		if off := apart(inked(pixels(t, pages[i])), inked(pixels(t, want))); off > 0.03 {
			t.Errorf("%s in %s: %.1f of 100 dots of ink are not near one of hb-view's, or the other way round", name, f.id, 100*off)
		}
	}
}

// cutByView are names with glyphs whose typeface states their bounds too small: hb-view
// cuts off what reaches out of them, other programs don't.
var cutByView = []string{"ශ්\u200dරී ක්\u200dෂ", "ນ້ຳຄ້າງ", "མེ་ཏོག་དཀར་པོ"}

// TestLinesDoNotTouch draws each name twice, one line below the other: the ink of the first
// ends above that of the second, however tall and deep its letters are.
func TestLinesDoNotTouch(t *testing.T) {
	need(t, "pdftoppm")
	p := newPaper("names", Size{100, 40}, day)
	all := inEveryScript()
	for _, name := range all {
		b := p.block([]string{name}, 24, plain)
		p.page()
		p.draw(b, 5, 5, black)
		p.page()
		p.draw(b, 5, 5+b.height(), black)
	}
	var pdf bytes.Buffer
	if _, err := p.finish(&pdf); err != nil {
		t.Fatal(err)
	}
	stem := strings.TrimSuffix(file(t, pdf.Bytes()), ".pdf")
	tool(t, nil, "pdftoppm", "-gray", "-png", "-r", "72", stem+".pdf", stem)
	pages, err := filepath.Glob(stem + "-*.png")
	if err != nil || len(pages) != 2*len(all) {
		t.Fatalf("%d pages of %d names: %v", len(pages), len(all), err)
	}
	slices.Sort(pages)
	for i, name := range all {
		_, foot := inkedRows(pixels(t, pages[2*i]))
		if top, _ := inkedRows(pixels(t, pages[2*i+1])); top <= foot-1 { // tails of Latin letters may reach the dots below
			t.Errorf("%s: the first line ends at dot %d, the second begins at %d", name, foot, top)
		}
	}
}

// inkedRows returns the first and the last row of a picture with something dark.
func inkedRows(picture image.Image) (top, foot int) {
	b := picture.Bounds()
	top, foot = -1, -1
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			if r, _, _, _ := picture.At(x, y).RGBA(); r < 0x8000 {
				if foot = y; top < 0 {
					top = y
				}
				break
			}
		}
	}
	return top, foot
}

// inked are the dark dots of a picture, from the upper left of all that is dark.
func inked(picture image.Image) map[image.Point]bool {
	b := picture.Bounds()
	least := image.Pt(math.MaxInt, math.MaxInt)
	var dark []image.Point
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			if r, _, _, _ := picture.At(x, y).RGBA(); r < 0x8000 {
				dark = append(dark, image.Pt(x, y))
				least = image.Pt(min(least.X, x), min(least.Y, y))
			}
		}
	}
	set := map[image.Point]bool{}
	for _, d := range dark {
		set[d.Sub(least)] = true
	}
	return set
}

// apart returns the share of dots of either picture that have none of the other beside
// it.
func apart(a, b map[image.Point]bool) float64 {
	far := 0
	for _, pair := range [][2]map[image.Point]bool{{a, b}, {b, a}} {
		for at := range pair[0] {
			near := false
			for dx := -1; dx <= 1 && !near; dx++ {
				for dy := -1; dy <= 1 && !near; dy++ {
					near = pair[1][at.Add(image.Pt(dx, dy))]
				}
			}
			if !near {
				far++
			}
		}
	}
	return float64(far) / float64(max(1, len(a)+len(b)))
}
