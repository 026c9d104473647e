package page

import (
	"encoding/json"
	"fmt"
	"html"
	"io/fs"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"eyeup/internal/demo"
	"eyeup/internal/desk"
	"eyeup/stock"
)

// said is what a page says, without its marks.
func said(body string) string {
	return html.UnescapeString(regexp.MustCompile(`\s+`).ReplaceAllString(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(body, " "), " "))
}

// lineFor is the row of a table for a variety, without its marks.
func lineFor(t *testing.T, table, variety string) string {
	t.Helper()
	_, after, found := strings.Cut(table, ">"+variety+"</a>")
	row, _, ended := strings.Cut(after, "</tr>")
	if !found || !ended {
		t.Fatalf("no row for %s", variety)
	}
	return strings.TrimSpace(said(row))
}

// TestPatchShowsTheListAskedFor holds the page of the invented garden to the answer: every
// variety with its counts, why, the mix, what is to be got, and every row with its labels.
func TestPatchShowsTheListAskedFor(t *testing.T) {
	h := reading(t)
	d, err := shared()
	if err != nil {
		t.Fatal(err)
	}
	a, err := d.Chosen(testDay)
	if err != nil || a == nil || len(a.List) == 0 || len(a.Rows) == 0 || len(a.Mix) == 0 {
		t.Fatalf("%v %+v", err, a)
	}
	status, body := get(t, h, "/patch")
	if status != http.StatusOK {
		t.Fatal(status, gist(body))
	}
	from, to := strings.Index(body, ">Planting list</h2>"), strings.Index(body, ">Wanted, raised, planted</h2>")
	if from < 0 || to < from {
		t.Fatalf("the planting list stands at %d, what the plan raises at %d", from, to)
	}
	list := body[from:to]
	changed := 0
	for _, l := range a.List {
		cut := l.ToCut()
		if cut == "" {
			cut = "–"
		}
		want := strings.Join(strings.Fields(fmt.Sprint(l.Kind, ", ", l.Wish, " ", l.Wanted, " ", l.Places, " ", l.Kept(), " ", l.Counted(), " ", cut, " ", over(l.Balance()))), " ")
		if got := lineFor(t, list, l.Variety); got != want {
			t.Errorf("%s: %q for %q", l.Variety, got, want)
		}
		if l.Changed() {
			changed++
			if !strings.Contains(said(list), l.Variety+" "+l.Why+".") {
				t.Errorf("nothing says why %s has %d places", l.Variety, l.Places)
			}
		}
	}
	for _, o := range a.Over {
		if got, want := lineFor(t, list, o.Variety), fmt.Sprintf(" %d spare", o.Plants); !strings.HasSuffix(got, want) {
			t.Errorf("%s: %q for %q", o.Variety, got, want)
		}
	}
	for _, o := range a.Short {
		if got, want := lineFor(t, list, o.Variety), fmt.Sprintf(" %d short", o.Plants); !strings.HasSuffix(got, want) {
			t.Errorf("%s: %q for %q", o.Variety, got, want)
		}
	}
	if changed == 0 || len(a.Over) == 0 || len(a.Short) == 0 {
		t.Error("nothing gives way: the list tells nothing")
	}
	words := said(list)
	for _, want := range []string{a.Goodness(), a.KeptBack(), a.ToGive(), "Missing, get these first: " + a.ToGet(), fmt.Sprintf("%d plants of %d varieties", a.Planted, a.Varieties()), "left out of this list: 9"} {
		if want == "" || !strings.Contains(words, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	for _, m := range a.Mix {
		if want := fmt.Sprintf("%s, %s %s %s", m.Kind, m.Name, m.Wished(), m.Got()); !strings.Contains(words, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	for _, r := range a.Rows {
		for _, p := range r.Parts {
			if want := fmt.Sprintf("%d %s %s", p.Label, p.Variety, p.At()); !strings.Contains(words, want) {
				t.Errorf("row %d lacks %q", r.Row, want)
			}
		}
	}
	for _, word := range []string{"optim", "solver", "infeasib", "objective", "constraint", "programme", "bound "} {
		if strings.Contains(said(body), word) {
			t.Errorf("the page says %q", word)
		}
	}
}

// describedAs describes the section [patch] of the garden, and waits for the list it asks for.
func describedAs(t *testing.T, d *desk.Desk, patch map[string]any) {
	t.Helper()
	body, err := json.Marshal(map[string]any{"what": "garden", "name": "patch", "body": patch})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := d.Append(stock.Entry{ID: stock.ID{15: 9, 0: byte(len(body))}, Kind: "described", Version: 1, On: testDay, Body: body}); err != nil {
		t.Fatal(err)
	}
	_, _ = d.Chosen(testDay) // the one before, while a new one is worked out
	d.Rest()
}

// TestPatchFollowsWhatIsAsked asks for less room: the list follows, once it is worked out; what
// cannot be is told, and the rest of the page stands.
func TestPatchFollowsWhatIsAsked(t *testing.T) {
	h, d := writing(t)
	if _, body := get(t, h, "/patch"); !strings.Contains(body, ">232 plants</a> of ") {
		t.Fatal(gist(body))
	}
	describedAs(t, d, map[string]any{"place": "patch", "kinds": []string{"dahlia"}, "places": 120})
	if _, body := get(t, h, "/patch"); !strings.Contains(body, ">120 plants</a> of ") || strings.Contains(body, ">Rows</h3>") || strings.Contains(body, "The mix you wished") {
		t.Error(gist(body))
	}
	describedAs(t, d, map[string]any{"place": "patch", "variety": []map[string]any{{"name": "Nobody's Own", "kind": "dahlia"}}})
	status, body := get(t, h, "/patch")
	if status != http.StatusOK || !strings.Contains(said(body), "There is no planting list. Wishes for the patch: there is no Nobody's Own of kind dahlia in stock") || !strings.Contains(body, ">Wanted, raised, planted</h2>") {
		t.Error(status, gist(body))
	}
}

// TestPatchWithoutAList leaves [patch] out: the page says how a list is asked for, and asks.
func TestPatchWithoutAList(t *testing.T) {
	folder := fstest.MapFS{}
	for _, name := range []string{"garden.toml", "stock.csv"} {
		text, err := fs.ReadFile(demo.Garden(), name)
		if err != nil {
			t.Fatal(err)
		}
		if before, _, found := strings.Cut(string(text), "[patch]"); found {
			text = []byte(before)
		}
		folder[name] = &fstest.MapFile{Data: text}
	}
	d, err := desk.FolderDesk(folder, "a folder", testDay, testNow)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = d.Close() })
	if a, err := d.Chosen(testDay); a != nil || err != nil {
		t.Fatal("a list that nobody asked for", err)
	}
	h := handler(t, d.Desk, Options{})
	_, body := get(t, h, "/patch")
	if !strings.Contains(body, "Ask for the list here.") || strings.Contains(body, "places. A better") || !strings.Contains(body, ">Wanted, raised, planted</h2>") {
		t.Error(gist(body))
	}
	form := url.Values{}
	for _, m := range regexp.MustCompile(`<input type="hidden" name="([^"]*)" value="([^"]*)">`).FindAllStringSubmatch(body, -1) {
		form.Set(m[1], m[2])
	}
	status, body, to := post(t, h, "/garden", form)
	if status != http.StatusSeeOther || to != "/patch" {
		t.Fatal(status, to, gist(body))
	}
	if _, body := get(t, h, to); !strings.Contains(said(body), "Every wish fits; there is no better list.") {
		t.Error(gist(body))
	}
}

// TestBedAndRowAreKept takes stock in that stands in the ground already: the page tells the bed
// and the row that were typed, and a crate beside them is refused.
func TestBedAndRowAreKept(t *testing.T) {
	h, d := writing(t)
	form := url.Values{"variety": {"Far Furrow"}, "kind": {"dahlia"}, "form": {"plant"}, "count": {"3"}, "place": {"patch"}, "bed": {"9"}, "row": {"4"}}
	_, page := get(t, h, "/write/taken-in")
	for _, field := range []string{"bed", "row"} {
		if !strings.Contains(page, `name="`+field+`"`) {
			t.Errorf("the form of taking in does not ask for the %s", field)
		}
	}
	if status, body, _ := post(t, h, "/write/taken-in", form); status != http.StatusSeeOther {
		t.Fatal(status, gist(body))
	}
	d.Rest()
	_, body := get(t, h, "/patch")
	_, beds, _ := strings.Cut(body, ">Beds and rows</h2>")
	row := regexp.MustCompile(`(?s)<tr><th scope="row">[^\n]*Far Furrow.*?</tr>`).FindString(beds)
	for _, cell := range []string{`"place">patch<`, `"bed">9<`, `"row">4<`, `"count">3<`} {
		if !strings.Contains(row, cell) {
			t.Errorf("the page has no %s in %q", cell, row)
		}
	}
	form.Set("crate", "2")
	if status, body, _ := post(t, h, "/write/taken-in", form); status != http.StatusUnprocessableEntity || !strings.Contains(said(body), "crate 2 and bed 9 exclude each other") {
		t.Error(status, gist(body))
	}
}
