package page

import (
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/season"
)

// TestBestIsLookedFor begins a search by a form, as a browser without scripts would, watches
// it, stops it and reads what was best by then, all with a change kept.
func TestBestIsLookedFor(t *testing.T) {
	h, d := writing(t)
	_, body := get(t, h, "/season?risk=30%25&plan=as+early+as+can+be")
	for _, holds := range []string{`action="/season/best"`, `name="risk" value="30%"`, `name="plan" value="as early as can be"`} {
		if !strings.Contains(body, holds) {
			t.Errorf("the season's page lacks %s", holds)
		}
	}
	form := url.Values{"risk": {"30%"}, "plan": {"as early as can be"}}
	status, body, to := post(t, h, "/season/best", form)
	if status != http.StatusSeeOther || to != "/season?best=yes&plan=as+early+as+can+be&risk=30%25#best" {
		t.Fatalf("the form answers %d, to %s: %s", status, to, gist(body))
	}
	to, _, _ = strings.Cut(to, "#")
	_, body = get(t, h, to)
	for _, holds := range []string{`<noscript><meta http-equiv="refresh" content="1;url=/season?best=again&amp;plan=as&#43;early&#43;as&#43;can&#43;be&amp;risk=30%25#best">`, "data-again", "stop, and show the best so far"} {
		if !strings.Contains(body, holds) {
			t.Errorf("while it is looked for, the page lacks %s: %s", holds, gist(body))
		}
	}
	if _, other := get(t, h, "/season"); strings.Contains(other, "data-again") || strings.Contains(other, "http-equiv") {
		t.Error("the season as it is watches a search that is not about it")
	}
	if status, _, back := post(t, h, "/season/best/stop", form); status != http.StatusSeeOther || !strings.HasPrefix(back, to) {
		t.Errorf("stopping answers %d, to %s", status, back)
	}
	d.Rest()
	_, body = get(t, h, to)
	for _, holds := range []string{"The search was stopped", "no plan on these figures is", "What earlier flowers cost", "search for the best plans", "could be better"} {
		if !strings.Contains(body, holds) {
			t.Errorf("after it was stopped, the page lacks %q: %s", holds, gist(body))
		}
	}
	if strings.Contains(body, "http-equiv") || strings.Contains(body, "follow this plan") {
		t.Error("what was found is reloaded, or can be followed")
	}
	asksWell(t, "the best plans", body, []string{"better", "early", "total"})
	for _, word := range []string{"solver", "MIP", "node", "dual", "programme", "bound"} {
		if strings.Contains(withoutPictures(body), word) {
			t.Errorf("the page says %q", word)
		}
	}
	if _, body = get(t, h, "/season?risk=30%25"); !strings.Contains(body, "A search for the best plans has ended") {
		t.Error("the season does not lead to what was found")
	}
}

// TestBestOfNonsense refuses a change that can't be.
func TestBestOfNonsense(t *testing.T) {
	h, _ := writing(t)
	if status, body, _ := post(t, h, "/season/best", url.Values{"risk": {"95%"}}); status != http.StatusUnprocessableEntity {
		t.Errorf("a risk of 95 %% answers %d: %s", status, gist(body))
	}
	if status, _, _ := post(t, h, "/season/best/stop", nil); status != http.StatusSeeOther {
		t.Errorf("stopping nothing answers %d", status)
	}
}

// TestHeldTellsOfTheStep says what is held on the price of early, its step of level too.
func TestHeldTellsOfTheStep(t *testing.T) {
	held := season.Held{
		Place: "glass", Level: quantity.Celsius(13), From: civil.MustOn(2027, time.March, 1), To: civil.MustOn(2027, time.May, 31),
		Then: &season.LevelStep{From: civil.MustOn(2027, time.April, 5), Level: quantity.Celsius(7)},
	}
	v := seasonView{display: display{Units: quantity.Metric}}
	got := v.HeldBy(season.EarlyPoint{Held: []season.Held{held}})
	if want := "glass 13\u00a0°C, 1 Mar to 31 May, 7\u00a0°C from 5 Apr"; len(got) != 1 || got[0] != want {
		t.Errorf("it says %q, want %q", got, want)
	}
}

// TestABestPlanIsFollowed opens a plan on the price of early in full and follows it: this week,
// the season, the patch and the lists go by it, with its decisions held.
func TestABestPlanIsFollowed(t *testing.T) {
	h, d := writing(t)
	if status, body, _ := post(t, h, "/season/follow", url.Values{"plan": {"as early as can be"}, "best": {"yes"}}); status != http.StatusBadRequest || !strings.Contains(body, "search for them again") {
		t.Errorf("with no best plan at hand one is followed: %d, %s", status, gist(body))
	}
	if status, body, _ := post(t, h, "/season/best", nil); status != http.StatusSeeOther {
		t.Fatalf("the search answers %d: %s", status, gist(body))
	}
	d.StopLooking()
	var body string
	for !strings.Contains(body, "The search was stopped") {
		_, body = get(t, h, "/season?best=yes")
	}
	if !strings.Contains(body, "From how many plants on does heat pay?") {
		t.Errorf("it does not say from how many plants on heat pays: %s", gist(body))
	}
	_, rest, is := strings.Cut(body, ` href="/season?best=yes&amp;plan=`)
	_, rest, is2 := strings.Cut(rest[strings.Index(rest, `class="early"`)+1:], ` href="/season?best=yes&amp;plan=`)
	name, _, _ := strings.Cut(rest, `"`)
	name, err := url.QueryUnescape(strings.ReplaceAll(name, "&#43;", "+"))
	if !is || !is2 || err != nil || !strings.HasPrefix(name, "about ") {
		t.Fatalf("no plan on the price of early can be opened, %q, %v", name, err)
	}
	_, body = get(t, h, "/season?best=yes&plan="+url.QueryEscape(name))
	for _, holds := range []string{"follow this plan", `name="best" value="yes"`, `name="plan" value="` + name + `"`, "its decisions stay", "Bench space", "Every batch"} {
		if !strings.Contains(strings.ToLower(body), strings.ToLower(holds)) {
			t.Errorf("opened, the page lacks %q: %s", holds, gist(body))
		}
	}
	status, body, to := post(t, h, "/season/follow", url.Values{"plan": {name}, "best": {"yes"}})
	if status != http.StatusSeeOther {
		t.Fatalf("following answers %d: %s", status, gist(body))
	}
	if _, body := get(t, h, to); !strings.Contains(body, "By the plan “held: "+name+"”.") {
		t.Errorf("the first page does not go by it: %s", gist(body))
	}
	_, body = get(t, h, "/season")
	for _, holds := range []string{"You follow this plan.", "held: " + name, "Lot by lot"} {
		if !strings.Contains(body, holds) {
			t.Errorf("followed, the season lacks %q: %s", holds, gist(body))
		}
	}
	asksWell(t, "a season that is followed", body, []string{"against", "flower"})
	if _, body := get(t, h, "/lists/potting"); !strings.Contains(body, "held: "+name) {
		t.Errorf("the potting list does not go by it: %s", gist(body))
	}
}
