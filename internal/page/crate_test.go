package page

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"eyeup/internal/desk"
)

// crateOf finds a crate of the cellar with so many lots, and its number.
func crateOf(t *testing.T, d *desk.Desk, lots int) (row crateRow) {
	t.Helper()
	p, _ := d.Shelf().Place("cellar")
	for _, row := range crateRows(p) {
		if len(row.Holdings) == lots && row.Crate != "" {
			return row
		}
	}
	t.Fatalf("no crate has %d lots", lots)
	return row
}

// walkForm is the form of a crate's page as the browser would send it.
func walkForm(t *testing.T, h http.Handler, path string) url.Values {
	t.Helper()
	status, body := get(t, h, path)
	if status != http.StatusOK {
		t.Fatalf("%s: status %d: %s", path, status, gist(body))
	}
	form := url.Values{"whole": {"yes"}}
	_, body, _ = strings.Cut(body, `class="entry walk"`)
	for _, tag := range regexp.MustCompile(`<input[^>]*>`).FindAllString(body, -1) {
		name := regexp.MustCompile(`name="([^"]*)"`).FindStringSubmatch(tag)
		value := regexp.MustCompile(`value="([^"]*)"`).FindStringSubmatch(tag)
		if name != nil && value != nil {
			form.Set(name[1], value[1])
		}
	}
	return form
}

// TestACrateIsWalked says that all are firm, goes on to the next crate, and takes it back.
func TestACrateIsWalked(t *testing.T) {
	h, d := writing(t)
	row := crateOf(t, d, 1)
	before := len(d.Shelf().Rounds)
	path := fmt.Sprintf("/rounds/cellar/%d", row.N)
	form := walkForm(t, h, path)
	form.Set("all", "firm")
	status, body, to := post(t, h, path, form)
	if status != http.StatusSeeOther || !strings.HasPrefix(to, fmt.Sprintf("/rounds/cellar/%d?wrote=", row.N+1)) {
		t.Fatalf("status %d, to %s: %s", status, to, gist(body))
	}
	rounds := d.Shelf().Rounds
	if last := rounds[len(rounds)-1]; len(rounds) != before+1 || last.Firm != row.Stood || !last.Whole || last.Unaccounted != 0 || last.Spot.Crate != row.Crate {
		t.Errorf("%d rounds, the last is %+v", len(rounds)-before, last)
	}
	if status, body, _ = post(t, h, "/undo", url.Values{"entry": {wroteIn(t, to)}}); status != http.StatusSeeOther {
		t.Errorf("undoing: status %d: %s", status, gist(body))
	}
	if now := len(d.Shelf().Rounds); now != before {
		t.Errorf("%d rounds are left after undoing", now-before)
	}
}

// TestACrateOfSeveralLots writes the rounds of all lots of a crate in one go, or none, and
// undoes them in one.
func TestACrateOfSeveralLots(t *testing.T) {
	h, d := writing(t)
	for _, name := range []string{"Slow Ferry", "Wet Slate", "Tin Plum"} {
		post(t, h, "/write/taken-in", url.Values{"variety": {name}, "kind": {"dahlia"}, "form": {"clump"}, "count": {"9"}, "place": {"cellar"}, "crate": {"test"}, "on": {"2027-01-04"}})
	}
	row := crateOf(t, d, 3)
	before := len(d.Shelf().Rounds)
	path := fmt.Sprintf("/rounds/cellar/%d", row.N)
	form := walkForm(t, h, path)
	form.Set("soft.1", "2")
	form.Set("lost.2", "10")
	status, body, _ := post(t, h, path, form)
	if status != http.StatusUnprocessableEntity || !strings.Contains(body, "the wrinkled, soft and lost are 1 more than were checked") || !strings.Contains(body, `name="soft.1" value="2"`) {
		t.Fatalf("more lost than there are: status %d: %s", status, gist(body))
	}
	if now := len(d.Shelf().Rounds); now != before {
		t.Fatalf("%d rounds were written all the same", now-before)
	}
	form.Set("lost.2", "1")
	status, body, to := post(t, h, path, form)
	if status != http.StatusSeeOther {
		t.Fatalf("status %d: %s", status, gist(body))
	}
	rounds := d.Shelf().Rounds[before:]
	if len(rounds) != 3 || rounds[1].Firm != 7 || rounds[1].Soft != 2 || rounds[2].Firm != 8 || rounds[2].Lost != 1 {
		t.Fatalf("the rounds are %+v", rounds)
	}
	if _, body = get(t, h, to); !strings.Contains(body, "3 rounds") {
		t.Errorf("the page after does not tell of three rounds: %s", gist(body))
	}
	undo := url.Values{"entry": strings.Split(wroteIn(t, to), ".")}
	if status, body, _ = post(t, h, "/undo", undo); status != http.StatusSeeOther || len(d.Shelf().Rounds) != before {
		t.Errorf("undoing: status %d, %d rounds left: %s", status, len(d.Shelf().Rounds)-before, gist(body))
	}
}

// TestACrateChangedMeanwhile sends the form of a crate whose lot was moved away since.
func TestACrateChangedMeanwhile(t *testing.T) {
	h, d := writing(t)
	row := crateOf(t, d, 1)
	path := fmt.Sprintf("/rounds/cellar/%d", row.N)
	form := walkForm(t, h, path)
	lot := d.Shelf().Lots[row.Holdings[0].Lot]
	post(t, h, "/write/moved", url.Values{"lot": {string(lot.Code)}, "crate": {row.Crate}, "count": {fmt.Sprint(row.Stood)}, "to.place": {"warm room"}})
	before := len(d.Shelf().Rounds)
	if status, body, _ := post(t, h, path, form); status < 400 || len(d.Shelf().Rounds) != before {
		t.Errorf("status %d, %d rounds: %s", status, len(d.Shelf().Rounds)-before, gist(body))
	}
}

// TestACrateTellsWhatChanged moves some into a crate after its round, and out again.
func TestACrateTellsWhatChanged(t *testing.T) {
	h, d := writing(t)
	row := crateOf(t, d, 1)
	lot := d.Shelf().Lots[row.Holdings[0].Lot]
	path := fmt.Sprintf("/rounds/cellar/%d", row.N)
	form := walkForm(t, h, path)
	form.Set("all", "firm")
	post(t, h, path, form)
	if _, body := get(t, h, path); strings.Contains(body, "Changed since the last round") {
		t.Error("something is said to have changed right after the round")
	}
	post(t, h, "/write/destroyed", url.Values{"lot": {string(lot.Code)}, "crate": {row.Crate}, "count": {"2"}})
	if _, body := get(t, h, path); !strings.Contains(body, "Changed since the last round") || !strings.Contains(body, "-2 "+lot.Name()) || !strings.Contains(body, "destroyed") {
		t.Error("the crate does not tell that two were destroyed")
	}
}

// TestWeighingCounts packs 9 clumps of 9 kg and weighs 8 of them, at 7.2 kg, later: by the
// piece 1 kg became 0.9 kg, so 10 % is lost.
func TestWeighingCounts(t *testing.T) {
	h, d := writing(t)
	_, _, to := post(t, h, "/write/taken-in", url.Values{"variety": {"Slow Ferry"}, "kind": {"dahlia"}, "form": {"clump"}, "count": {"9"}, "place": {"cellar"}, "crate": {"test"}, "on": {"2026-11-02"}})
	_, body := get(t, h, to)
	code := body[strings.Index(body, "/stock/")+len("/stock/"):][:5]
	post(t, h, "/write/packed", url.Values{"lot": {code}, "count": {"9"}, "medium": {"bare"}, "weight": {"9 kg"}, "on": {"2026-11-03"}})
	row := rowNamed(t, d, "test")
	path := fmt.Sprintf("/rounds/cellar/%d", row.N)
	if _, body := get(t, h, path); strings.Contains(body, "weighed:") {
		t.Error("one weighing is said to tell of a loss")
	}
	form := walkForm(t, h, path)
	form.Set("seen.0", "8")
	form.Del("whole")
	form.Set("weight.0", "7.2 kg")
	status, body, to := post(t, h, path, form)
	if status != http.StatusSeeOther {
		t.Fatalf("status %d: %s", status, gist(body))
	}
	if _, body := get(t, h, path); !strings.Contains(said(body), "weighed: 10.0 % from 3 Nov to 20 Jan") {
		t.Error("the crate does not tell what the scales say")
	}
	if _, body := get(t, h, "/rounds"); !strings.Contains(body, "10.0 %, weighed") {
		t.Error("the rounds page does not tell what the scales say")
	}
	post(t, h, "/undo", url.Values{"entry": {wroteIn(t, to)}})
	if _, body := get(t, h, path); strings.Contains(body, "weighed:") {
		t.Error("a weighing that was undone counts still")
	}
}

func rowNamed(t *testing.T, d *desk.Desk, crate string) (row crateRow) {
	t.Helper()
	p, _ := d.Shelf().Place("cellar")
	for _, row := range crateRows(p) {
		if row.Crate == crate {
			return row
		}
	}
	t.Fatalf("there is no crate %q", crate)
	return row
}

// TestRoundsOfOtherWinters sees that a round of before the stock came is none of it.
func TestRoundsOfOtherWinters(t *testing.T) {
	h, d := writing(t)
	row := crateOf(t, d, 1)
	lot := d.Shelf().Lots[row.Holdings[0].Lot]
	move := func(from, to string) {
		t.Helper()
		if status, body, _ := post(t, h, "/write/moved", url.Values{"lot": {string(lot.Code)}, "place": {from}, "count": {fmt.Sprint(row.Stood)}, "to.place": {to}, "to.crate": {row.Crate}}); status != http.StatusSeeOther {
			t.Fatalf("status %d: %s", status, gist(body))
		}
	}
	move("cellar", "warm room")
	move("warm room", "cellar")
	now := rowNamed(t, d, row.Crate)
	if r := now.Holdings[0].Round(); r != nil || now.Holdings[0].Lot != row.Holdings[0].Lot {
		t.Errorf("a round of before they came counts: %+v", r)
	}
}

// TestACrateIsFoundByItsName types a crate's name on the rounds page.
func TestACrateIsFoundByItsName(t *testing.T) {
	h := reading(t)
	if status, _ := get(t, h, "/rounds?place=cellar&crate=no+such"); status != http.StatusNotFound {
		t.Errorf("a crate that is not there: status %d", status)
	}
	res := ask(h, httptest.NewRequest(http.MethodGet, "/rounds?place=cellar&crate=2", nil))
	to := res.Header.Get("Location")
	if res.StatusCode != http.StatusSeeOther || !strings.HasPrefix(to, "/rounds/cellar/") {
		t.Fatalf("status %d, to %q", res.StatusCode, to)
	}
	if _, body := get(t, h, to); !strings.Contains(body, "<h1>Cellar, crate 2</h1>") {
		t.Errorf("%s is another crate", to)
	}
}

// TestACratesTallyWithoutScripts taps a large button as a browser without scripts sends it:
// the lot stays open, and what was typed of another stays.
func TestACratesTallyWithoutScripts(t *testing.T) {
	h, d := writing(t)
	row := crateOf(t, d, 1)
	path := fmt.Sprintf("/rounds/cellar/%d", row.N)
	form := walkForm(t, h, path)
	form.Set("lost.0", "2")
	form.Set("tap", "soft.0+1")
	form.Del("whole")
	_, body := get(t, h, path+"?"+form.Encode())
	for _, kept := range []string{`name="soft.0" value="1"`, `name="lost.0" value="2"`, `name="id.0" value="` + form.Get("id.0") + `"`, "<details open><summary>some are not firm"} {
		if !strings.Contains(body, kept) {
			t.Errorf("after the tap the form lacks %s", kept)
		}
	}
	if strings.Contains(body, " checked>") {
		t.Error("the box that was not ticked is ticked")
	}
}
