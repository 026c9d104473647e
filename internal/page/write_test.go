package page

import (
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"sync"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/desk"
	"eyeup/stock"
)

// clumps returns a lot of which so many clumps or more stand at one spot of the cellar.
func clumps(t *testing.T, d *desk.Desk, most int) (stock.Lot, stock.Standing) {
	t.Helper()
	for _, l := range d.Shelf().Lots {
		if len(l.Standing) == 1 && l.Standing[0].Spot.Form == stock.Clump && l.Standing[0].Count >= most {
			return l, l.Standing[0]
		}
	}
	t.Fatalf("no lot has %d clumps", most)
	return stock.Lot{}, stock.Standing{}
}

// standing says how many of a lot stand, by form.
func standing(t *testing.T, d *desk.Desk, code stock.Code) map[stock.Form]int {
	t.Helper()
	all := map[stock.Form]int{}
	d.Read(func(b *stock.Book) {
		l, err := b.Find(string(code))
		if err != nil {
			t.Error(err)
		}
		for _, s := range l.Standing {
			all[s.Spot.Form] += s.Count
		}
	})
	return all
}

// TestAnAfternoonOfPotting divides, starts thirty pots, moves them, and takes one back.
func TestAnAfternoonOfPotting(t *testing.T) {
	h, d := writing(t)
	mother, at := clumps(t, d, 8)
	status, body, to := post(t, h, "/write/divided", url.Values{
		"lot": {string(mother.Code)}, "clumps": {"8"}, "good": {"30"}, "doubtful": {"4"}, "waste": {"2"}, "sitting": {"the kitchen table"}, "on": {"2027-01-19"}})
	if status != http.StatusSeeOther {
		t.Fatalf("dividing: status %d: %s", status, gist(body))
	}
	if left := standing(t, d, mother.Code)[stock.Clump]; left != at.Count-8 {
		t.Errorf("%d clumps are left, want %d", left, at.Count-8)
	}
	_, body = get(t, h, to)
	born := strings.Index(body, "New lot")
	if born < 0 {
		t.Fatalf("the page after does not tell the new lots: %s", body)
	}
	code := stock.Code(body[strings.Index(body[born:], "/stock/")+born+len("/stock/"):][:5])

	status, body, to = post(t, h, "/write/started", url.Values{"lot": {string(code)}, "count": {"30"}, "to.form": {"pot"}, "to.place": {"warm room"}, "container": {"no1"}})
	if status != http.StatusSeeOther {
		t.Fatalf("starting: status %d: %s", status, gist(body))
	}
	if pots := standing(t, d, code)[stock.Pot]; pots != 30 {
		t.Errorf("%d pots stand, want 30", pots)
	}

	entry := wroteIn(t, to)
	status, body, to = post(t, h, "/undo", url.Values{"entry": {entry}, "next": {"/stock/" + string(code)}})
	if status != http.StatusSeeOther {
		t.Fatalf("undoing: status %d: %s", status, gist(body))
	}
	if pots := standing(t, d, code); pots[stock.Pot] != 0 || pots[stock.Division] != 30 {
		t.Errorf("after undoing there stand %v", pots)
	}
	u, err := url.Parse(to)
	if err != nil {
		t.Fatal(err)
	}
	if status, body, _ = post(t, h, "/undo", url.Values{"entry": {u.Query().Get("undid")}}); status != http.StatusSeeOther {
		t.Fatalf("bringing back: status %d: %s", status, gist(body))
	}
	if pots := standing(t, d, code)[stock.Pot]; pots != 30 {
		t.Errorf("brought back there stand %d pots, want 30", pots)
	}
}

func wroteIn(t *testing.T, location string) string {
	t.Helper()
	u, err := url.Parse(location)
	if err != nil || u.Query().Get("wrote") == "" {
		t.Fatalf("%s does not say what was written", location)
	}
	return u.Query().Get("wrote")
}

// TestSentTwiceCountsOnce sends the same form twice, as an impatient thumb does.
func TestSentTwiceCountsOnce(t *testing.T) {
	h, d := writing(t)
	lot, at := clumps(t, d, 4)
	form := url.Values{"id": {"01900000-0000-7000-8000-000000000001"}, "lot": {string(lot.Code)}, "count": {"1"}, "why": {"rotten"}}
	for range 2 {
		if status, body, _ := post(t, h, "/write/destroyed", form); status != http.StatusSeeOther {
			t.Fatalf("status %d: %s", status, gist(body))
		}
	}
	if left := standing(t, d, lot.Code)[stock.Clump]; left != at.Count-1 {
		t.Errorf("%d are left of %d, want one fewer", left, at.Count)
	}
	form.Set("count", "2")
	if status, _, _ := post(t, h, "/write/destroyed", form); status != http.StatusUnprocessableEntity {
		t.Errorf("the same id with other words: status %d, want it refused", status)
	}
}

// TestWhatIsRefusedKeepsWhatWasTyped sends what can't be: nothing is written, the form
// comes back as it was typed, and says why.
func TestWhatIsRefusedKeepsWhatWasTyped(t *testing.T) {
	h, d := writing(t)
	lot, at := clumps(t, d, 4)
	for _, c := range []struct {
		kind, says string
		form       url.Values
	}{
		{"moved", "not 4000", url.Values{"count": {"4000"}, "to.place": {"glass"}, "note": {"too many"}}},
		{"moved", "is not a whole number", url.Values{"count": {"four"}, "to.place": {"glass"}, "note": {"a word"}}},
		{"moved", "to: fill this in", url.Values{"count": {"1"}, "note": {"whither"}}},
		{"moved", "is in the future", url.Values{"count": {"1"}, "to.place": {"glass"}, "on": {"2031-01-01"}, "note": {"early"}}},
		{"moved", "not a date", url.Values{"count": {"1"}, "to.place": {"glass"}, "on": {"tomorrow"}, "note": {"day"}}},
		{"round", "no unit", url.Values{"firm": {"4"}, "whole": {"yes"}, "weight": {"12"}, "note": {"heavy"}}},
	} {
		c.form.Set("lot", string(lot.Code))
		status, body, _ := post(t, h, "/write/"+c.kind, c.form)
		if status != http.StatusUnprocessableEntity {
			t.Errorf("%s %v: status %d", c.kind, c.form, status)
		}
		if !strings.Contains(strings.ToLower(body), strings.ToLower(c.says)) {
			t.Errorf("%s %v does not say %q: %s", c.kind, c.form, c.says, body)
		}
		if !strings.Contains(body, `value="`+c.form.Get("note")+`"`) {
			t.Errorf("%s %v lost the note that was typed", c.kind, c.form)
		}
	}
	if left := standing(t, d, lot.Code)[stock.Clump]; left != at.Count {
		t.Errorf("%d clumps stand, want %d: something was written", left, at.Count)
	}
}

// TestTallyWithoutScripts taps the large buttons as a browser without scripts sends them.
func TestTallyWithoutScripts(t *testing.T) {
	h, d := writing(t)
	lot, _ := clumps(t, d, 4)
	path := fmt.Sprintf("/write/round?lot=%s&firm=7&soft=1&note=mould&id=01900000-0000-7000-8000-000000000002", lot.Code)
	for tap, want := range map[string]string{
		"firm%2B1": `name="firm" value="8"`, "firm%2B10": `name="firm" value="17"`, "soft-1": `name="soft" value="0"`, "lost-1": `name="lost" value="0"`,
	} {
		_, body := get(t, h, path+"&tap="+tap)
		for _, kept := range []string{want, `value="mould"`, `value="01900000-0000-7000-8000-000000000002"`} {
			if !strings.Contains(body, kept) {
				t.Errorf("after %s the form lacks %s", tap, kept)
			}
		}
		if strings.Contains(body, " checked>") {
			t.Errorf("after %s the box that was not ticked is ticked", tap)
		}
	}
}

// TestARoundIsGone walks a crate and sees it on the rounds page.
func TestARoundIsGone(t *testing.T) {
	h, d := writing(t)
	lot, at := clumps(t, d, 6)
	status, body, _ := post(t, h, "/write/round", url.Values{"lot": {string(lot.Code)}, "whole": {"yes"},
		"firm": {fmt.Sprint(at.Count - 3)}, "wrinkled": {"1"}, "soft": {"1"}, "lost": {"1"}, "weight": {"4.2 kg"}})
	if status != http.StatusSeeOther {
		t.Fatalf("status %d: %s", status, gist(body))
	}
	rounds := d.Shelf().Rounds
	if last := rounds[len(rounds)-1]; last.Lot != lot.ID || last.Soft != 1 || !last.Whole || last.Spot != at.Spot {
		t.Errorf("the last round is %+v", last)
	}
	if _, body = get(t, h, "/rounds"); !strings.Contains(body, "2 soft or lost") {
		t.Error("the rounds page does not tell what was soft or lost")
	}
}

// TestSickKinAreFound marks a lot sick and destroys one of its kin.
func TestSickKinAreFound(t *testing.T) {
	h, d := writing(t)
	mother, _ := clumps(t, d, 6)
	_, _, to := post(t, h, "/write/divided", url.Values{"lot": {string(mother.Code)}, "clumps": {"2"}, "good": {"5"}})
	_, body := get(t, h, to)
	born := body[strings.Index(body, "New lot"):]
	code := born[strings.Index(born, "/stock/")+len("/stock/"):][:5]
	if status, body, _ := post(t, h, "/write/marked-sick", url.Values{"lot": {string(mother.Code)}, "what": {"mosaic on the leaves"}, "count": {"1"}}); status != http.StatusSeeOther {
		t.Fatalf("status %d: %s", status, gist(body))
	}
	_, page := get(t, h, "/stock/"+string(mother.Code))
	if !strings.Contains(page, "Marked sick: mosaic") || !strings.Contains(page, "/write/destroyed?lot="+code) {
		t.Error("the sick lot's page does not offer to destroy what came of it")
	}
	if status, body, _ := post(t, h, "/write/destroyed", url.Values{"lot": {code}, "count": {"5"}, "why": {"kin of sick"}}); status != http.StatusSeeOther {
		t.Fatalf("status %d: %s", status, gist(body))
	}
	if left := standing(t, d, stock.Code(code)); len(left) != 0 {
		t.Errorf("of the kin %v are left", left)
	}
}

// TestEveryFormCanBeWritten writes each kind of entry once, by the fields of its form
// alone, so that no form asks for less or other than the book wants.
func TestEveryFormCanBeWritten(t *testing.T) {
	said := map[string]string{
		"variety": "Test Sort", "kind": "dahlia", "form": "clump", "place": "cellar", "to.place": "glass", "medium": "vermiculite", "to.form": "pot",
		"what": "spots", "why": "to see", "reach": "lot", "mark": "keep", "text": "a note", "weight": "3 lb", "price": "4.50", "how": "bought", "moisture": "damp",
		"stems": "3", "clumps": "1", "good": "3", "count": "1", "seeds": "4", "firm": "1",
	}
	start := map[stock.Form]string{stock.Seed: "seed", stock.Clump: "clump", stock.Pot: "pot", stock.Tray: "tray", stock.Plant: "plant", stock.Division: "division"}
	h, _ := writing(t)
	for _, a := range actions {
		form := url.Values{"next": {"/display"}}
		for _, f := range a.Fields {
			if v, is := said[f.Name]; is {
				form.Set(f.Name, v)
			}
		}
		if a.Kind == "lifted" {
			form.Set("to.form", "clump")
		}
		if !a.NoLot {
			of := stock.Clump
			if len(a.Forms) > 0 {
				of = a.Forms[0]
			}
			_, _, to := post(t, h, "/write/taken-in", url.Values{"variety": {"Test " + a.Kind}, "kind": {"dahlia"}, "form": {start[of]}, "count": {"4"}, "place": {"cellar"}, "next": {"/display"}})
			_, body := get(t, h, to)
			i := strings.Index(body, "New lot")
			if i < 0 {
				t.Fatalf("%s: nothing was taken in as %s: %s", a.Kind, of, body)
			}
			form.Set("lot", body[i:][strings.Index(body[i:], "/stock/")+len("/stock/"):][:5])
		}
		if status, body, _ := post(t, h, "/write/"+strings.ReplaceAll(a.Kind, " ", "-"), form); status != http.StatusSeeOther {
			i := strings.Index(body, "Nothing was written down")
			t.Errorf("%s: status %d: %s", a.Kind, status, body[max(i, 0):min(len(body), max(i, 0)+300)])
		}
	}
}

// TestAPlanIsFollowed follows a plan and sees it on the first page.
func TestAPlanIsFollowed(t *testing.T) {
	h, d := writing(t)
	status, body, to := post(t, h, "/season/follow", url.Values{"plan": {"no added heat"}})
	if status != http.StatusSeeOther {
		t.Fatalf("status %d: %s", status, gist(body))
	}
	if got := d.Decided(); got != "no added heat" {
		t.Errorf("the plan decided on is %q", got)
	}
	if _, body := get(t, h, to); !strings.Contains(body, "By the plan “no added heat”.") {
		t.Error("the first page does not go by the plan that is followed")
	} else if !strings.Contains(body, "You now follow “no added heat”. This week, lists and labels go by it.") {
		t.Errorf("the first page does not say what follows from the choice: %s", gist(body))
	}
	june, err := New(d, Options{Now: testNow, Today: civil.MustOn(2027, time.June, 10)})
	if err != nil {
		t.Fatal(err)
	}
	if _, body := get(t, june, "/"); !strings.Contains(body, "later than promised") || !strings.Contains(body, "promised by") {
		t.Error("in June, with nothing written since, no lot is told to be late")
	}
	if _, body := get(t, june, "/season"); !strings.Contains(body, "Lot by lot") {
		t.Error("the season does not hold the plan against fact lot by lot")
	}
	if status, _, _ := post(t, h, "/season/follow", url.Values{"plan": {"the best"}}); status != http.StatusNotFound {
		t.Errorf("a plan that is not there: status %d", status)
	}
}

// TestManyHandsAtOnce reads every page and writes at the same time: nothing hangs, nothing
// is lost.
func TestManyHandsAtOnce(t *testing.T) {
	h, d := writing(t)
	lot, at := clumps(t, d, 8)
	pages := every(t, h)
	done := make(chan struct{})
	go func() {
		defer close(done)
		var hands sync.WaitGroup
		for n := range 6 {
			hands.Go(func() {
				post(t, h, "/write/destroyed", url.Values{"lot": {string(lot.Code)}, "count": {"1"}})
				for i := range pages {
					get(t, h, pages[(i+n*5)%len(pages)])
				}
			})
		}
		hands.Wait()
	}()
	select {
	case <-done:
	case <-time.After(2 * time.Minute):
		t.Fatal("the pages hang")
	}
	if left := standing(t, d, lot.Code)[stock.Clump]; left != at.Count-6 {
		t.Errorf("%d of %d are left after six were taken", left, at.Count)
	}
}
