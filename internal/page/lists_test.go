package page

import (
	"html"
	"net/http"
	"regexp"
	"strings"
	"testing"

	"eyeup/internal/desk"
	"eyeup/quantity"
)

// TestListsAsPages shows on a page every cell that the list has on paper, but for what is
// filled in by hand.
func TestListsAsPages(t *testing.T) {
	h, d := writing(t)
	for _, name := range listPages {
		status, body := get(t, h, "/lists/"+name)
		if status != http.StatusOK {
			t.Fatalf("%s: status %d: %s", name, status, gist(body))
		}
		listing, err := d.Listing(desk.PaperQuestion{Name: name, Units: quantity.US}, testDay)
		if err != nil {
			t.Fatal(err)
		}
		shown := html.UnescapeString(body)
		rows := 0
		for _, g := range listing.Groups {
			for _, row := range g.Rows {
				rows++
				for i, cell := range row {
					if !listing.Columns[i].Sort.ByHand() && !strings.Contains(shown, cell) {
						t.Errorf("%s: %q is not on the page", name, cell)
					}
				}
			}
		}
		if got := strings.Count(body, "<tr>") - strings.Count(body, "<thead>"); rows == 0 || got != rows {
			t.Errorf("%s: %d rows on the page, %d on paper", name, got, rows)
		}
		if !strings.Contains(body, `href="/paper/`+name+`"`) {
			t.Errorf("%s does not lead to paper", name)
		}
	}
	for _, path := range []string{"/lists/season", "/lists/nothing"} {
		if status, _ := get(t, h, path); status != http.StatusNotFound {
			t.Errorf("%s: status %d", path, status)
		}
	}
}

// TestLabelsOfASession follows the link of a potting session to a label for each pot.
func TestLabelsOfASession(t *testing.T) {
	h, _ := writing(t)
	_, body := get(t, h, "/lists/potting")
	at := hrefIn(t, body, "labels for these pots")
	section := body[strings.LastIndex(body[:strings.Index(body, "labels for these pots")], "<section>"):]
	first := regexp.MustCompile(`<strong>(\w{5})</strong>`).FindStringSubmatch(section)
	if first == nil {
		t.Fatalf("no code is in the session: %s", gist(section))
	}
	if said := printed(t, h, at); !strings.Contains(said, first[1]) {
		t.Errorf("%s has no label of %s", at, first[1])
	}
}
