package page

import (
	"fmt"
	"net"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"eyeup/stock"
)

// TestBrowserPotting divides on a phone, starts thirty pots by the large buttons, and
// takes one entry back and brings it in again.
func TestBrowserPotting(t *testing.T) {
	needBrowser(t)
	h, d := writing(t)
	b := open(t, h)
	mother, at := clumps(t, d, 8)
	b.to("/stock/" + string(mother.Code))
	b.press(`a[href^="/write/divided"]`)
	taps(b, "clumps", "+1", 3)
	taps(b, "good", "+10", 3)
	taps(b, "waste", "+1", 2)
	b.press(".write")
	if says := b.text(); !strings.Contains(says, "Written down: divided") {
		t.Fatalf("after dividing: %s", says)
	}
	if left := standing(t, d, mother.Code)[stock.Clump]; left != at.Count-4 {
		t.Errorf("%d clumps are left, want %d", left, at.Count-4)
	}
	b.press(".done a.code")
	code := strings.TrimPrefix(script[string](b, "location.pathname"), "/stock/")
	b.press(`a[href^="/write/started"]`)
	if n := script[string](b, `document.querySelector("[name=count]").value`); n != "30" {
		t.Errorf("the form offers %s, want all 30", n)
	}
	b.types("to.place", "glass")
	b.press(".write")
	if pots := standing(t, d, stock.Code(code))[stock.Pot]; pots != 30 {
		t.Errorf("%d pots stand", pots)
	}
	b.press(".done button")
	if left := standing(t, d, stock.Code(code))[stock.Division]; left != 30 {
		t.Errorf("after undoing %d divisions stand", left)
	}
	b.press(".done button")
	if pots := standing(t, d, stock.Code(code))[stock.Pot]; pots != 30 {
		t.Errorf("brought back %d pots stand", pots)
	}
}

// taps presses a tally's button so many times; the page stays.
func taps(b *tab, field, by string, times int) {
	b.t.Helper()
	for range times {
		b.does(chromedp.Click(fmt.Sprintf(`button[value="%s%s"]`, field, by)))
	}
}

// TestBrowserRound walks from the rounds page into a crate and writes a round.
func TestBrowserRound(t *testing.T) {
	needBrowser(t)
	h, d := writing(t)
	b := open(t, h)
	before := len(d.Shelf().Rounds)
	b.to("/rounds")
	b.press(`section a.button[href^="/rounds/cellar/"]`)
	b.does(chromedp.Click("fieldset summary"))
	taps(b, "soft.0", "+1", 1)
	b.press("form.walk > .write:last-of-type")
	rounds := d.Shelf().Rounds
	if len(rounds) != before+1 || rounds[len(rounds)-1].Soft != 1 || rounds[len(rounds)-1].Unaccounted != 0 {
		t.Errorf("%d rounds, the last %+v", len(rounds), rounds[len(rounds)-1])
	}
	if path := script[string](b, "location.pathname"); !strings.HasPrefix(path, "/rounds/cellar/") {
		t.Errorf("after the round the page is %s", path)
	}
}

// TestBrowserSeason changes the season and follows a plan.
func TestBrowserSeason(t *testing.T) {
	needBrowser(t)
	h, d := writing(t)
	b := open(t, h)
	b.to("/season")
	b.does(chromedp.Click("details.change summary"))
	b.types("risk", "30%")
	b.press("#change button")
	if says := b.text(); !strings.Contains(says, "This is the season with your change") {
		t.Errorf("the changed season says: %s", says[:min(len(says), 400)])
	}
	b.press(`a[href="/season"]`)
	b.press(`.side a[href*="no+added"]`)
	b.press(`form[action="/season/follow"] button`)
	if d.Decided() != "no added heat" {
		t.Errorf("the plan decided on is %q", d.Decided())
	}
}

// TestBrowserSearch finds as the grower types.
func TestBrowserSearch(t *testing.T) {
	b := open(t, reading(t))
	b.to("/stock")
	b.does(chromedp.SendKeys("[name=q]", "kiln"))
	for range 100 {
		if n := script[int](b, `document.querySelectorAll("#found li").length`); n == 1 {
			return
		}
		time.Sleep(30 * time.Millisecond)
	}
	t.Errorf("typing kiln leaves: %s", b.text())
}

// TestBrowserSickKin marks a lot sick and destroys its kin from its own page.
func TestBrowserSickKin(t *testing.T) {
	needBrowser(t)
	h, d := writing(t)
	b := open(t, h)
	mother, _ := clumps(t, d, 6)
	post(t, h, "/write/divided", url.Values{"lot": {string(mother.Code)}, "clumps": {"2"}, "good": {"5"}})
	b.to("/stock/" + string(mother.Code))
	b.press(`a[href^="/write/marked-sick"]`)
	b.types("what", "mosaic")
	b.press(".write")
	b.press(`a[href^="/write/destroyed"][href*="kin"]`)
	code := script[string](b, `document.querySelector("[name=lot]").value`)
	b.press(".write")
	if left := standing(t, d, stock.Code(code)); len(left) != 0 {
		t.Errorf("of the kin %v are left", left)
	}
	if path := script[string](b, "location.pathname"); path != "/stock/"+string(mother.Code) {
		t.Errorf("after destroying the page is %s", path)
	}
}

// TestBrowserTwoAtOnce lets two people write at the same time: nothing is lost or doubled.
func TestBrowserTwoAtOnce(t *testing.T) {
	needBrowser(t)
	h, d := writing(t)
	one := open(t, h)
	two := another(t, one.base)
	lot, at := clumps(t, d, 8)
	var both sync.WaitGroup
	for _, b := range []*tab{one, two} {
		both.Go(func() {
			for range 3 {
				b.to("/write/destroyed?lot=" + string(lot.Code))
				b.types("count", "1")
				b.press(".write")
			}
		})
	}
	both.Wait()
	if left := standing(t, d, lot.Code)[stock.Clump]; left != at.Count-6 {
		t.Errorf("%d of %d are left after six were taken", left, at.Count)
	}
}

// TestBrowserFirstUse goes from an empty book to a season on a phone.
func TestBrowserFirstUse(t *testing.T) {
	needBrowser(t)
	b := open(t, emptyBook(t))
	b.to("/")
	b.types("find", "waterville maine")
	b.press(".ask button")
	b.press("a.row")
	for field, words := range map[string]string{"name": "Alder Reach", "elevation": "90 ft", "zone": "America/New_York", "currency": "USD"} {
		b.types(field, words)
	}
	b.does(chromedp.Click(`[name=units][value=us]`))
	b.press(".write")
	b.types("low", "9 11 21 32 43 52 57 56 47 37 28 16")
	b.types("high", "28 32 40 52 65 73 78 77 68 57 45 34")
	b.press(".write")
	for _, key := range []string{"cellar", "room", "frame", "patch"} {
		b.does(chromedp.Click(fmt.Sprintf("[name=%s]", key)))
	}
	b.press(".write")
	b.types("list", "variety,kind,form,count,place,plant\nPale Heron,dahlia,clump,14,cellar,16\n")
	b.press(".write")
	b.press(".write")
	if says := b.text(); !strings.Contains(says, "Plans side by side") || !strings.Contains(says, "Pale Heron") {
		t.Errorf("the first season says: %s", says[:min(len(says), 500)])
	}
}

// TestBrowserPairing pairs a phone in the local network by the code on the computer.
func TestBrowserPairing(t *testing.T) {
	needBrowser(t)
	address := localAddress()
	if address == "" {
		t.Skip("left out: this machine has no address in a local network")
	}
	d, err := shared()
	if err != nil {
		t.Fatal(err)
	}
	share := NewShare(testNow, address)
	listener, err := net.Listen("tcp", "0.0.0.0:0")
	if err != nil {
		t.Fatal(err)
	}
	srv := &httptest.Server{Listener: listener, Config: &http.Server{Handler: handler(t, d.Desk, Options{Share: share})}}
	srv.Start()
	t.Cleanup(srv.Close)
	_, port, _ := net.SplitHostPort(listener.Addr().String())
	computer := another(t, "http://127.0.0.1:"+port)
	phone := another(t, "http://"+net.JoinHostPort(address, port))
	phone.to("/stock")
	if says := phone.text(); !strings.Contains(says, "code") || strings.Contains(says, "varieties") {
		t.Errorf("an unpaired phone sees: %s", says)
	}
	computer.to("/share")
	computer.press(`form[action="/share/code"] button`)
	code := script[string](computer, `document.querySelector(".big.code").innerText`)
	phone.types("code", strings.ToLower(code))
	phone.types("name", "pocket")
	phone.press(".write")
	phone.to("/stock")
	if says := phone.text(); !strings.Contains(says, "varieties") {
		t.Errorf("the paired phone sees: %s", says)
	}
	computer.to("/share")
	if says := computer.text(); !strings.Contains(says, "pocket") {
		t.Errorf("the computer does not list the phone: %s", says)
	}
	computer.press(`form[action="/share/end"] button`)
	phone.to("/stock")
	if says := phone.text(); strings.Contains(says, "varieties") {
		t.Error("the phone still sees the stock after its session was ended")
	}
}

// localAddress is an address of this machine that is not loopback.
func localAddress() string {
	addresses, err := net.InterfaceAddrs()
	if err != nil {
		return ""
	}
	for _, a := range addresses {
		if n, ok := a.(*net.IPNet); ok && !n.IP.IsLoopback() && n.IP.To4() != nil {
			return n.IP.String()
		}
	}
	return ""
}
