package sheet

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"eyeup/civil"
)

// day is the day on which everything in these tests is written.
var day = civil.MustOn(2027, 4, 12)

// need skips a test where a program is not installed, and fails it under CI.
func need(t testing.TB, programs ...string) {
	t.Helper()
	for _, p := range programs {
		if _, err := exec.LookPath(p); err == nil {
			continue
		}
		if os.Getenv("CI") == "true" {
			t.Fatalf("%s is not installed", p)
		}
		t.Skipf("left out: %s is not installed", p)
	}
}

// tool runs a program and returns what it printed.
func tool(t testing.TB, in []byte, name string, args ...string) string {
	t.Helper()
	c := exec.Command(name, args...)
	c.Stdin = bytes.NewReader(in)
	out, err := c.Output()
	if err != nil {
		t.Fatalf("%s %v: %v", name, args, err)
	}
	return string(out)
}

// file keeps a PDF for other programs to read.
func file(t testing.TB, pdf []byte) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "paper.pdf")
	if err := os.WriteFile(name, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	return name
}

// textOf is what a PDF says, as pdftotext reads it.
func textOf(t testing.TB, pdf []byte) string {
	t.Helper()
	need(t, "pdftotext")
	return tool(t, nil, "pdftotext", "-layout", file(t, pdf), "-")
}

// box is a word on a page with its edges in millimetres.
type box struct {
	page                     int
	word                     string
	left, top, right, bottom float64
}

// boxesOf are the words of a PDF and where they stand, as pdftotext -bbox tells them.
func boxesOf(t testing.TB, pdf []byte) []box {
	t.Helper()
	need(t, "pdftotext")
	var doc struct {
		Pages []struct {
			Words []struct {
				XMin float64 `xml:"xMin,attr"`
				YMin float64 `xml:"yMin,attr"`
				XMax float64 `xml:"xMax,attr"`
				YMax float64 `xml:"yMax,attr"`
				Text string  `xml:",chardata"`
			} `xml:"word"`
		} `xml:"body>doc>page"`
	}
	d := xml.NewDecoder(strings.NewReader(tool(t, nil, "pdftotext", "-bbox", file(t, pdf), "-")))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	if err := d.Decode(&doc); err != nil {
		t.Fatal(err)
	}
	var all []box
	for i, page := range doc.Pages {
		for _, w := range page.Words {
			all = append(all, box{i + 1, w.Text, w.XMin * point, w.YMin * point, w.XMax * point, w.YMax * point})
		}
	}
	return all
}

// layout is ParseLayout for layouts that are right.
func layout(t testing.TB, typed string) Layout {
	t.Helper()
	l, err := ParseLayout(typed)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// printed is what Labels writes.
func printed(t testing.TB, job LabelJob) ([]byte, Told) {
	t.Helper()
	var b bytes.Buffer
	job.Today = day
	told, err := Labels(&b, job)
	if err != nil {
		t.Fatal(err)
	}
	return b.Bytes(), told
}

// signs are those of lot codes.
const signs = "23456789ACEFHKMNPRTUWXY"

// someLabels makes labels with codes that all differ, in invented names.
func someLabels(n int) []Label {
	names := []string{"Tallow Bell", "Kiln Brick", "Ünterwell Łąka", "Λευκή Αυγή", "Белый Ёж", "白い鷺", "וורד לבן", "زهرة"}
	var all []Label
	for i := range n {
		code := fmt.Sprintf("%c%c%c%c%c", signs[i%23], signs[i/23%23], signs[i/529%23], signs[(i*7)%23], signs[(i*11+3)%23])
		all = append(all, Label{Code: code, Variety: names[i%len(names)], Kind: "dahlia", Form: "clump", Colour: "#b5482f", Place: "cellar, crate 4", Date: day})
	}
	return all
}

// pixels reads a picture.
func pixels(t testing.TB, name string) image.Image {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	picture, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return picture
}
