package page

import (
	"net/http"
	"net/url"
	"os/exec"
	"strings"
	"testing"

	"eyeup/stock"
)

// printed is what the page at an address says on paper.
func printed(t *testing.T, h http.Handler, path string) string {
	t.Helper()
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("left out: pdftotext is not installed")
	}
	status, body := get(t, h, path)
	if status != http.StatusOK || !strings.HasPrefix(body, "%PDF") {
		t.Fatalf("%s: status %d: %s", path, status, gist(body))
	}
	read := exec.Command("pdftotext", "-layout", "-", "-")
	read.Stdin = strings.NewReader(body)
	said, err := read.Output()
	if err != nil {
		t.Fatal(err)
	}
	return string(said)
}

// hrefIn finds the address of a link that says something.
func hrefIn(t *testing.T, body, says string) string {
	t.Helper()
	to, _, found := strings.Cut(body, `">`+says+"</a>")
	if !found {
		t.Fatalf("no link says %q: %s", says, gist(body))
	}
	return strings.ReplaceAll(to[strings.LastIndex(to, `href="`)+len(`href="`):], "&amp;", "&")
}

// TestLabelsAfterPotting prints labels for exactly the pots that were filled: from what is
// told after writing, and from the page of papers for the whole day.
func TestLabelsAfterPotting(t *testing.T) {
	h, d := writing(t)
	one, _ := clumps(t, d, 8)
	status, body, to := post(t, h, "/write/started", url.Values{"lot": {string(one.Code)}, "count": {"5"}, "to.form": {"pot"}, "to.place": {"glass"}, "on": {testDay.String()}})
	if status != http.StatusSeeOther {
		t.Fatalf("status %d: %s", status, gist(body))
	}
	var other stock.Lot
	for _, l := range d.Shelf().Lots {
		if l.ID != one.ID && len(l.Standing) == 1 && l.Standing[0].Spot.Form == stock.Clump && l.Standing[0].Count >= 3 {
			other = l
		}
	}
	post(t, h, "/write/started", url.Values{"lot": {string(other.Code)}, "count": {"3"}, "to.form": {"tray"}, "to.place": {"glass"}, "on": {testDay.String()}})

	_, body = get(t, h, to)
	said := printed(t, h, hrefIn(t, body, "labels for these"))
	if n := strings.Count(said, string(one.Code)); n != 5 || !strings.Contains(said, "5 of 5") || strings.Contains(said, string(other.Code)) {
		t.Errorf("%d labels of %s: %s", n, one.Code, said)
	}
	_, body = get(t, h, "/paper")
	if !strings.Contains(body, "5 pots, 1 tray") || !strings.Contains(body, `name="potted" value="`+testDay.String()) {
		t.Errorf("the page of papers does not offer the day's pots: %s", gist(body))
	}
	said = printed(t, h, "/paper/labels?layout=a4:3x8&potted="+testDay.String())
	if n, trays := strings.Count(said, string(one.Code)), strings.Count(said, string(other.Code)); n != 5 || trays != 1 || !strings.Contains(said, "3 in it") {
		t.Errorf("%d labels of %s, %d of %s: %s", n, one.Code, trays, other.Code, said)
	}

	post(t, h, "/undo", url.Values{"entry": {wroteIn(t, to)}})
	if said = printed(t, h, "/paper/labels?potted="+testDay.String()); strings.Contains(said, string(one.Code)) {
		t.Errorf("what was undone has labels still: %s", said)
	}
	for path, want := range map[string]string{"/paper/labels?potted=2019-01-01": "no pot or tray was filled", "/paper/labels?potted=soon": "potted", "/paper/labels?entry=x": "x"} {
		if status, body := get(t, h, path); status != http.StatusUnprocessableEntity && status != http.StatusBadRequest || !strings.Contains(strings.ToLower(body), want) {
			t.Errorf("%s: status %d: %s", path, status, gist(body))
		}
	}
}

// TestLabelsDueAfterRenaming lists the lots that got another name, and prints theirs alone.
func TestLabelsDueAfterRenaming(t *testing.T) {
	h, d := writing(t)
	lot, _ := clumps(t, d, 8)
	_, body := get(t, h, "/paper")
	if strings.Contains(body, "Late Ferry") {
		t.Fatal("it is listed before")
	}
	status, body, to := post(t, h, "/write/named", url.Values{"lot": {string(lot.Code)}, "variety": {"Late Ferry"}, "reach": {"lot"}, "on": {testDay.String()}})
	if status != http.StatusSeeOther {
		t.Fatalf("status %d: %s", status, gist(body))
	}
	_, body = get(t, h, "/paper")
	if !strings.Contains(body, "print these labels again") || !strings.Contains(body, "Late Ferry") {
		t.Errorf("it is not listed: %s", gist(body))
	}
	_, body = get(t, h, to)
	said := printed(t, h, hrefIn(t, body, "labels with the new name"))
	if !strings.Contains(said, "Late Ferry") || strings.Count(said, string(lot.Code)) != 1 {
		t.Errorf("printed: %s", said)
	}
}
