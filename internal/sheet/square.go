package sheet

import (
	"fmt"
	"math"
	"net/netip"
	"net/url"
	"strings"

	"rsc.io/qr"
	"rsc.io/qr/coding"
)

// quiet is the width of the quiet zone around a square code, in modules. Source: ISO/IEC
// 18004:2015, 6.3.8, asks for four.
const quiet = 4

// Address checks the fixed address of a garden's pages, which a square code can combine with a
// lot's code. It fails for an address that would not stay the same: one of digits, of this
// machine only, or without a name.
func Address(typed string) (string, error) {
	u, err := url.Parse(typed)
	if err != nil || u.Host == "" || u.Scheme != "http" && u.Scheme != "https" {
		return "", fmt.Errorf("%q is not an address; give one such as https://garden.example/l/, or leave it out for a square code with only the lot's code", typed)
	}
	host := u.Hostname()
	if _, err := netip.ParseAddr(host); err == nil || host == "localhost" || !strings.Contains(host, ".") {
		return "", fmt.Errorf("%q changes with the network and would make labels useless; give an address with a fixed name, or leave it out", typed)
	}
	if u.RawQuery != "" || u.Fragment != "" || u.User != nil {
		return "", fmt.Errorf("%q must consist of scheme, name and path only", typed)
	}
	upper := strings.ToUpper(strings.TrimSuffix(typed, "/") + "/")
	if err := coding.Alpha(upper).Check(); err != nil {
		return "", fmt.Errorf("%q has characters that would double the size of the square code; use letters, digits, dots and dashes", typed)
	}
	return upper, nil
}

// square makes the square code of a text of capitals and digits, with the highest error
// correction, because labels weather.
func square(text string) (*qr.Code, error) {
	if err := coding.Alpha(text).Check(); err != nil {
		return nil, fmt.Errorf("%q can't be put in a square code: use capitals and digits only", text)
	}
	level := qr.H
	if len(text) > 16 {
		level = qr.M // an address: fewer, larger modules are easier to read
	}
	return qr.Encode(text, level)
}

// dot is the dot of a coarse printer, 150 per inch, in millimetres. Modules are a whole number
// of dots wide and start on a dot, so that this printer and finer ones (300, 600, 1200) print
// them alike; uneven ones were misread one time in six.
const dot = 25.4 / 150

// leastModule is the smallest width of a module that can be read from a print at 150 dots per
// inch, in millimetres: two dots, by trial.
const leastModule = 1.9 * dot

// drawSquare draws a square code with its quiet zone in the middle of a square. Adjacent
// modules of a row are drawn as one, so that no hairlines separate them.
func (p *paper) drawSquare(text string, x, y, side float64) {
	code, err := square(text)
	if err != nil {
		p.fail(err)
		return
	}
	all := float64(code.Size + 2*quiet)
	module := math.Floor(side/all/dot) * dot
	if module < leastModule {
		p.fail(fmt.Errorf("a square code of %.0f mm with %q is too small to read; use a larger label, or leave the address out", side, text))
		return
	}
	margin := (side - module*all) / 2
	x, y = math.Round((x+margin)/dot)*dot, math.Round((y+margin)/dot)*dot
	p.pdf.SetFillColor(0, 0, 0)
	for row := range code.Size {
		for from := 0; from < code.Size; from++ {
			if !code.Black(from, row) {
				continue
			}
			to := from
			for to < code.Size && code.Black(to, row) {
				to++
			}
			p.pdf.Rect(x+float64(quiet+from)*module, y+float64(quiet+row)*module, float64(to-from)*module, module, "F")
			from = to
		}
	}
}
