package sheet

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// layouts are labels of every shape: plates, strips, tall ones, the least there is.
var layouts = []string{"a4:3x8", "a4:6x2", "a4:4x16,margin=5mm,gap=1mm", "roll:62mm", "roll:28x10mm", "stake:125x15mm"}

// TestSquareCodes asks another program to read every square code of whole pages, at the
// resolutions of an office printer and of a poor one.
func TestSquareCodes(t *testing.T) {
	need(t, "pdftoppm", "zbarimg")
	for _, typed := range append(layouts, "a4:4x4,gap=0mm", "letter:3x10,gap=0mm") {
		t.Run(typed, func(t *testing.T) {
			l := layout(t, typed)
			labels := someLabels(max(3, l.PerPage()))
			pdf, _ := printed(t, LabelJob{Layout: l, Labels: labels, Outline: true})
			var want []string
			for _, label := range labels {
				want = append(want, label.Code)
			}
			slices.Sort(want)
			for _, dpi := range []int{300, 150} {
				if got := scanned(t, pdf, dpi); !slices.Equal(got, want) {
					t.Errorf("at %d dpi %d of %d codes were read: %v, want %v", dpi, len(got), len(want), got, want)
				}
			}
		})
	}
}

// scanned are the square codes that zbarimg reads on whole pages, sorted.
func scanned(t testing.TB, pdf []byte, dpi int) []string {
	t.Helper()
	stem := strings.TrimSuffix(file(t, pdf), ".pdf")
	tool(t, nil, "pdftoppm", "-gray", "-png", "-r", strconv.Itoa(dpi), stem+".pdf", stem)
	pages, err := filepath.Glob(stem + "-*.png")
	if err != nil || len(pages) == 0 {
		t.Fatalf("no pages: %v", err)
	}
	c := exec.Command("zbarimg", append([]string{"-q", "--raw", "-Sdisable", "-Sqrcode.enable"}, pages...)...)
	out, err := c.Output()
	if code := new(exec.ExitError); errors.As(err, &code) && code.ExitCode() == 4 { // some page has none
		err = nil
	}
	if err != nil {
		t.Fatal(err)
	}
	codes := strings.Fields(string(out))
	slices.Sort(codes)
	return codes
}

func TestSquareCodesLeadToAnAddress(t *testing.T) {
	need(t, "pdftoppm", "zbarimg")
	address, err := Address("https://garden.example/l")
	if err != nil {
		t.Fatal(err)
	}
	l := layout(t, "a4:3x8")
	pdf, _ := printed(t, LabelJob{Layout: l, Labels: someLabels(1), Address: address})
	if got := scanned(t, pdf, 300); !slices.Equal(got, []string{address + someLabels(1)[0].Code}) {
		t.Errorf("read %v", got)
	}
}

// TestAddressesThatPass refuses what would make labels void when the network changes.
func TestAddressesThatPass(t *testing.T) {
	for _, typed := range []string{"http://192.168.1.5/", "https://[fe80::1]/", "http://localhost/", "http://cellar/", "garden.example", "ftp://garden.example/", "https://garden.example/?a=1", "https://garden.example/ü"} {
		if got, err := Address(typed); err == nil {
			t.Errorf("%s was taken, as %s", typed, got)
		}
	}
}

// names are hard ones; each must stand on every label whole.
var names = []string{
	"Tallow Bell",
	"The Last Light over the Long Meadow before the Autumn Storms",
	"Donaudampfschifffahrtsgesellschaftskapitänsmützenabzeichenrot",
	"Białe Łąki w Śniegu", "Η Λευκή Αυγή του Χειμώνα", "Осенний Ёжик", "Ձմեռային Վարդ", "ზამთრის ვარდი",
	"白い鷺の歌", "하얀 왜가리", "ורד לבן מאוד", "زهرة الشتاء البيضاء", `O'Hara "the Old"; ½ & 100 °`,
}

// TestNamesAreWhole reads every name back from every shape of label: nothing is cut.
func TestNamesAreWhole(t *testing.T) {
	for _, typed := range layouts {
		if typed == "a4:6x2" || typed == "roll:28x10mm" {
			continue // pdftotext tells text that stands letter by letter; the least label takes short names alone
		}
		l := layout(t, typed)
		for _, name := range names {
			label := someLabels(1)[0]
			label.Variety, label.Date = name, day
			pdf, told := printed(t, LabelJob{Layout: l, Labels: []Label{label}})
			if len(told.LeftOut) > 0 {
				t.Errorf("%s: left out %v", name, told.LeftOut)
			}
			if got := packed(textOf(t, pdf)); !strings.Contains(got, packed(name)) {
				t.Errorf("%s on %s: read %q", name, typed, got)
			}
		}
	}
}

// TestEveryScriptIsRead reads names of every script back, a page each. pdftotext orders
// what is read from the right by rules of its own: of these it tells the letters alone.
func TestEveryScriptIsRead(t *testing.T) {
	all := inEveryScript()
	var labels []Label
	for _, name := range all {
		labels = append(labels, Label{Code: "FCXEN", Variety: name})
	}
	pdf, _ := printed(t, LabelJob{Layout: layout(t, "roll:62mm"), Labels: labels})
	for i, page := range strings.Split(strings.Trim(textOf(t, pdf), "\f\n"), "\f") {
		got, want := packed(page), packed(all[i]+"FCXEN")
		if slices.ContainsFunc([]rune(all[i]), isRightToLeft) {
			got, want = sorted(got), sorted(want)
		}
		if got != want {
			t.Errorf("%s: read %q, want %q", all[i], got, want)
		}
	}
}

func sorted(text string) string { return string(slices.Sorted(slices.Values([]rune(text)))) }

// packed drops all but letters and figures, and what joining has done to them.
func packed(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return r
		}
		return -1
	}, norm.NFKC.String(s))
}

// TestLabelsStayWithin holds every word of a label within its edges.
func TestLabelsStayWithin(t *testing.T) {
	for _, typed := range []string{"a4:3x8", "a4:1x18", "roll:62mm", "stake:125x15mm", "roll:28x10mm"} {
		l := layout(t, typed)
		for _, name := range names[:3] {
			label := someLabels(1)[0]
			if label.Variety = name; typed == "roll:28x10mm" {
				label.Variety = names[0]
			}
			label.Place, label.Note = "the cold frame behind the barn, crate 104", "12 of 144"
			pdf, _ := printed(t, LabelJob{Layout: l, Labels: []Label{label}})
			x, y := l.corner(0)
			size := l.Label()
			for _, b := range boxesOf(t, pdf) {
				// A word's box is as tall as its typeface, not as its letters: half a millimetre is allowed.
				if b.left < x || b.right > x+size.Width || b.top < y-0.5 || b.bottom > y+size.Height+0.5 {
					t.Errorf("%s on %s: %q lies at %.1f to %.1f, %.1f to %.1f mm", name, typed, b.word, b.left, b.right, b.top, b.bottom)
				}
			}
		}
	}
}

func TestPictogramsAreLeftOutAndTold(t *testing.T) {
	label := someLabels(1)[0]
	label.Variety = "Moth 🌸👩‍🌾 Hour ❄️"
	pdf, told := printed(t, LabelJob{Layout: layout(t, "a4:3x8"), Labels: []Label{label}})
	if want := []string{"❄ (U+2744)", "🌸 (U+1F338)", "🌾 (U+1F33E)", "👩 (U+1F469)"}; !slices.Equal(told.LeftOut, want) {
		t.Errorf("told %v, want %v", told.LeftOut, want)
	}
	if got := textOf(t, pdf); !strings.Contains(got, "Moth Hour") {
		t.Errorf("read %q", got)
	}
}

// TestLettersWithoutTypeAreRefused refuses scripts that there is no type for, by their letter.
func TestLettersWithoutTypeAreRefused(t *testing.T) {
	for _, name := range []string{"ꦩꦮꦂ ꦥꦸꦠꦶꦃ", "ᠴᠠᠭᠠᠨ", "ᬩᬸᬗ", "𐎀𐎁"} {
		label := someLabels(1)[0]
		label.Variety = name
		_, err := Labels(io.Discard, LabelJob{Layout: layout(t, "a4:3x8"), Labels: []Label{label}, Today: day})
		if is := new(Unprintable); !errors.As(err, &is) || is.Text != name {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestLabelsRefused(t *testing.T) {
	l := layout(t, "a4:3x8")
	for what, job := range map[string]LabelJob{
		"there are no labels to print": {Layout: l},
		"there is no label 25":         {Layout: l, Labels: someLabels(1), From: 25},
		"there is no label -1":         {Layout: l, Labels: someLabels(1), From: -1},
		"does not fit into":            {Layout: l, Labels: []Label{{Code: "FCXEN", Variety: strings.Repeat("very long ", 300)}}},
		"a label needs a code":         {Layout: l, Labels: []Label{{Variety: "Tallow Bell"}}},
		"can't be put in a square":     {Layout: l, Labels: []Label{{Code: "fcxen", Variety: "Tallow Bell"}}},
		"the label of FCXEN: \"ꦩ\" c":  {Layout: l, Labels: []Label{{Code: "FCXEN", Variety: "ꦩ"}}},
	} {
		if _, err := Labels(io.Discard, job); err == nil || !strings.Contains(err.Error(), what) {
			t.Errorf("want %q, got: %v", what, err)
		}
	}
}

// TestFrom begins where a used sheet is free, and goes on overleaf.
func TestFrom(t *testing.T) {
	l := layout(t, "a4:3x8")
	labels := someLabels(20)
	for i := range labels {
		labels[i].Variety = fmt.Sprintf("Name%d", i)
	}
	pdf, told := printed(t, LabelJob{Layout: l, Labels: labels, From: 10})
	if told.Pages != 2 {
		t.Errorf("%d pages, want 2: 15 labels are left on the first", told.Pages)
	}
	for _, b := range boxesOf(t, pdf) {
		var n int
		if _, err := fmt.Sscanf(b.word, "Name%d", &n); err != nil {
			continue
		}
		at := 9 + n
		x, y := l.corner(at % 24)
		if b.page != at/24+1 || b.left < x || b.left > x+5 || b.top < y || b.top > y+8 {
			t.Errorf("%s stands on page %d at %.1f, %.1f; its label begins at %.1f, %.1f", b.word, b.page, b.left, b.top, x, y)
		}
	}
}

// TestSameBytes writes the same twice, and something else on another day.
func TestSameBytes(t *testing.T) {
	job := LabelJob{Layout: layout(t, "a4:3x8"), Labels: someLabels(8), Today: day}
	var a, b, c bytes.Buffer
	for _, to := range []*bytes.Buffer{&a, &b} {
		if _, err := Labels(to, job); err != nil {
			t.Fatal(err)
		}
	}
	job.Today = day.AddDays(1)
	if _, err := Labels(&c, job); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) || bytes.Equal(a.Bytes(), c.Bytes()) {
		t.Error("the same labels on the same day are the same file, and no other")
	}
}

// TestTypeIsEmbedded asks another program whether the file brings its typefaces along.
func TestTypeIsEmbedded(t *testing.T) {
	need(t, "pdffonts")
	pdf, _ := printed(t, LabelJob{Layout: layout(t, "a4:3x8"), Labels: someLabels(8)})
	lines := strings.Split(strings.TrimSpace(tool(t, nil, "pdffonts", file(t, pdf))), "\n")[2:]
	if len(lines) < 4 {
		t.Errorf("there are %d typefaces", len(lines))
	}
	for _, line := range lines {
		if f := strings.Fields(line); f[len(f)-5] != "yes" {
			t.Errorf("not embedded: %s", line)
		}
	}
}

func BenchmarkLabels(b *testing.B) {
	job := LabelJob{Layout: layout(b, "a4:3x8"), Labels: someLabels(1000), Today: day}
	for b.Loop() {
		if _, err := Labels(io.Discard, job); err != nil {
			b.Fatal(err)
		}
	}
}
