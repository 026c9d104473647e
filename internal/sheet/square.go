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

// quiet is the empty margin round a square code, in modules. Source: ISO/IEC 18004:2015,
// 6.3.8 asks for four.
const quiet = 4

// Address checks the fixed address of a garden's pages, under which a square code may
// lead to a lot. It fails for an address that would not stay the same: one of digits, of
// this machine alone, or without a name.
func Address(typed string) (string, error) {
	u, err := url.Parse(typed)
	if err != nil || u.Host == "" || u.Scheme != "http" && u.Scheme != "https" {
		return "", fmt.Errorf("%q is no address; give one such as https://garden.example/l/, or leave it out and the square code holds the lot's code alone", typed)
	}
	host := u.Hostname()
	if _, err := netip.ParseAddr(host); err == nil || host == "localhost" || !strings.Contains(host, ".") {
		return "", fmt.Errorf("%q changes with the network and would make labels void; give an address with a fixed name, or leave it out", typed)
	}
	if u.RawQuery != "" || u.Fragment != "" || u.User != nil {
		return "", fmt.Errorf("%q must be plain: scheme, name and path alone", typed)
	}
	upper := strings.ToUpper(strings.TrimSuffix(typed, "/") + "/")
	if err := coding.Alpha(upper).Check(); err != nil {
		return "", fmt.Errorf("%q has signs that a square code holds only at twice the size; use letters, digits, dots and dashes", typed)
	}
	return upper, nil
}

// square makes the square code of a text of capitals and digits. The most damage that
// still lets it be read is asked for, as labels weather.
func square(text string) (*qr.Code, error) {
	if err := coding.Alpha(text).Check(); err != nil {
		return nil, fmt.Errorf("%q can't stand in a square code: capitals and digits alone go there", text)
	}
	level := qr.H
	if len(text) > 16 {
		level = qr.M // an address: larger modules are read better than many small ones
	}
	return qr.Encode(text, level)
}

// dot is that of a coarse printer, 150 to the inch, in millimetres. Modules are a whole
// number of dots wide and begin on one, so that this printer and all whose dots divide it
// (300, 600, 1200) make them alike; uneven ones were misread one time in six.
const dot = 25.4 / 150

// leastModule is the least width of a module that is read from a print of 150 dots to the
// inch, in millimetres: two dots, by trial.
const leastModule = 1.9 * dot

// drawSquare draws a square code with its quiet margin into the middle of a square of
// paper. Modules of one row that touch are drawn as one, so that no hairlines part them.
func (p *paper) drawSquare(text string, x, y, side float64) {
	code, err := square(text)
	if err != nil {
		p.fail(err)
		return
	}
	all := float64(code.Size + 2*quiet)
	module := math.Floor(side/all/dot) * dot
	if module < leastModule {
		p.fail(fmt.Errorf("a square code of %.0f mm is too small to be read with %q in it; take a larger label, or leave the address out", side, text))
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
