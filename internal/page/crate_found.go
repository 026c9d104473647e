package page

import (
	"encoding/json"
	"fmt"
	"html"
	"html/template"
	"net/url"
	"strconv"
	"strings"
)

// body is the body of the round of one lot. Those checked that are not wrinkled, soft or
// lost are firm.
func (w *walked) body(allFirm, whole bool) ([]byte, error) {
	said := map[string]any{"lot": w.Lot.ID.String(), "whole": whole || allFirm}
	for name, value := range spotFields(w.Spot) {
		said[name] = value
	}
	if allFirm {
		said["firm"] = w.Count
		return json.Marshal(said)
	}
	seen := 0
	for i, in := range w.Inputs {
		f := walkFields[i]
		value, err := f.read(strings.TrimSpace(in.Value), "")
		if err != nil {
			return nil, fmt.Errorf("%s, %s: %w", w.Lot.Name(), f.Label, err)
		}
		switch n, isCount := value.(int); {
		case f.Name == "seen":
			seen = n
		case isCount:
			said[f.Name] = n
		case value != nil:
			said[f.Name] = value
		}
	}
	firm := seen
	for _, name := range []string{"wrinkled", "soft", "lost"} {
		n, _ := said[name].(int)
		firm -= n
	}
	if firm < 0 {
		return nil, fmt.Errorf("%s: the wrinkled, soft and lost are %d more than were checked. Correct one of the numbers", w.Lot.Name(), -firm)
	}
	said["firm"] = firm
	return json.Marshal(said)
}

// Measures of the drawing of a store, in its own pixels.
const (
	cratesAcross = 7
	crateWide    = 49.0
	crateTall    = 50.0
	crateGap     = 3.0
)

// fullShade is the share of weight lost at which a crate is drawn in full shade: skin is
// wrinkled by then.
const fullShade = 0.1

// drawCrates draws a store's crates as they stand, each a link: shaded the more of its
// weight it has lost, and dark from the foot up by the share found soft or lost.
func drawCrates(place string, crates []crateRow) template.HTML {
	rows := (len(crates) + cratesAcross - 1) / cratesAcross
	d := begin("drawn crates", "group", upper(place)+" by crate", float64(rows)*(crateTall+crateGap)+2)
	for i, c := range crates {
		x, y := 1+float64(i%cratesAcross)*(crateWide+crateGap), 1+float64(i/cratesAcross)*(crateTall+crateGap)
		fmt.Fprintf(d, `<a href="/rounds/%s/%d">`, html.EscapeString(url.PathEscape(place)), c.N)
		d.crate(c, x, y)
		d.WriteString("</a>")
	}
	return d.end()
}

// crate draws one crate, its upper left corner at x, y.
func (d *drawing) crate(c crateRow, x, y float64) {
	name, class := cut(c.Crate, longestOnCrate), "crate"
	if name == "" {
		name = "–"
	}
	if c.Now.Seen > 0 {
		class = "crate seen"
	}
	fmt.Fprintf(d, `<title>%s</title><rect class="%s" x="%.0f" y="%.0f" width="%.0f" height="%.0f"/>`, html.EscapeString(c.says()), class, x, y, crateWide, crateTall)
	lost, known := c.Lost()
	if known && lost > 0 {
		fmt.Fprintf(d, `<rect class="dry" fill-opacity="%.2f" x="%.0f" y="%.0f" width="%.0f" height="%.0f"/>`, 0.5*min(1, lost/fullShade), x, y, crateWide, crateTall)
	}
	if c.Worst() > 0 {
		fmt.Fprintf(d, `<rect class="lost" x="%.0f" y="%.1f" width="%.0f" height="%.1f"/>`, x, y+crateTall*(1-c.Worst()), crateWide, crateTall*c.Worst())
	}
	d.words(x+4, y+14, "strong", name)
	if known {
		d.words(x+4, y+30, "", percent(lost))
	}
	d.words(x+crateWide-4, y+crateTall-6, "end", strconv.Itoa(c.Stood))
}

// longestOnCrate is how many letters of a name go on a drawn crate.
const longestOnCrate = 6

// cut cuts a name to so many letters.
func cut(name string, most int) string {
	letters := []rune(name)
	if len(letters) <= most {
		return name
	}
	return string(letters[:most-1]) + "…"
}

// says puts into words what a drawn crate shows.
func (c crateRow) says() string {
	says := fmt.Sprintf("%s: %d", c.Name(), c.Stood)
	if lost, known := c.Lost(); known {
		says += fmt.Sprintf("; %s of its weight lost", percent(lost))
	}
	if c.Now.Seen > 0 {
		says += fmt.Sprintf("; %d checked, %d soft or lost", c.Now.Seen, c.Now.Bad)
	}
	return says
}
