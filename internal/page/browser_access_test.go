package page

import (
	"context"
	"fmt"
	"net/http"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
)

// TestBrowserAccess looks at every page, light and dark: axe-core finds nothing serious,
// what is pressed is 44 pixels at least, and nothing is wider than the phone, at 200 %
// text neither. Sources: axe-core's rules (WCAG 2.2 A and AA); WCAG 2.5.5 for 44 pixels;
// 1.4.4 and 1.4.10 for text and reflow.
func TestBrowserAccess(t *testing.T) {
	h := reading(t)
	needBrowser(t)
	b := open(t, h)
	for _, path := range every(t, h) {
		b.to(path)
		b.looksWell(path)
	}
}

// TestBrowserAccessElsewhere looks at the pages that are not among those of a garden: the
// steps of first use, a stock list that was read, a form and a crate that were refused,
// what can't be done, and pairing.
func TestBrowserAccessElsewhere(t *testing.T) {
	needBrowser(t)
	share := NewShare(testNow, "127.0.0.1")
	_, d := writing(t)
	h := handler(t, d, Options{Share: share})
	share.NewCode()
	share.devices.add("pocket", "")
	b := open(t, h)
	for _, path := range []string{"/share", "/pair", "/nothing", "/rounds?place=cellar&crate=none"} {
		b.to(path)
		b.looksWell(path)
	}
	b.to("/bring")
	b.types("list", "variety,kind,form,count,place\n"+longName+",dahlia,clump,14,cellar\n")
	b.press(".write")
	b.looksWell("a list that was read")
	b.to("/rounds/cellar/0")
	b.does(chromedp.Click("fieldset summary"))
	b.types("soft.0", "999")
	b.press("form.walk > .write:last-of-type")
	b.looksWell("a crate that was refused")

	b = open(t, emptyBook(t))
	b.to("/begin?find=waterville")
	b.looksWell("first use, where")
	for field, words := range map[string]string{"name": longName, "latitude": "44.55", "longitude": "-69.63", "elevation": "90 ft", "zone": "America/New_York", "currency": "USD"} {
		b.types(field, words)
	}
	b.does(chromedp.Click(`[name=units][value=us]`))
	b.press(".write")
	b.looksWell("first use, climate")
	b.types("low", "9 11 21 32 43 52 57 56 47 37 28 16")
	b.types("high", "28 32 40 52 65 73 78 77 68 57 45 34")
	b.press(".write")
	b.looksWell("first use, places")
	b.press(".write")
	b.looksWell("first use, refused")
}

// looksWell looks at the page that is open: see TestBrowserAccess.
func (b *tab) looksWell(page string) {
	t := b.t
	t.Helper()
	script[bool](b, "document.querySelectorAll('details').forEach(d => d.open = true); true")
	for _, scheme := range []string{"light", "dark"} {
		b.theme(scheme)
		for _, v := range b.violations() {
			if v.Impact == "serious" || v.Impact == "critical" {
				t.Errorf("%s, %s: %s (%s), %d times, first %s: %s", page, scheme, v.ID, v.Impact, len(v.Nodes), v.Nodes[0].HTML, v.Nodes[0].Why)
			}
		}
	}
	if small := script[[]string](b, smallTargets); len(small) > 0 {
		t.Errorf("%s: smaller than 44 pixels: %q", page, small)
	}
	for _, size := range []string{"100%", "200%"} {
		script[bool](b, fmt.Sprintf("document.documentElement.style.fontSize = %q; true", size))
		if wide := script[[]string](b, tooWide); len(wide) > 0 {
			t.Errorf("%s at %s text is wider than the phone: %q", page, size, wide)
		}
	}
	script[bool](b, "document.documentElement.style.fontSize = ''; true")
}

// smallTargets lists what is pressed and is smaller than 44 pixels either way, plain links
// within a sentence apart.
const smallTargets = `[...document.querySelectorAll("button,.button,summary,select,input:not([type=hidden]):not([type=checkbox]):not([type=radio]),textarea,label.tick,nav a,a.row,a.why,td a,th a,footer a,.drawn a")]
.filter(e => e.getClientRects().length)
.map(e => [e, e.getBoundingClientRect()])
.filter(([e, r]) => r.height < 43.5 || r.width < 43.5)
.map(([e, r]) => e.outerHTML.slice(0, 80) + " " + Math.round(r.width) + "x" + Math.round(r.height)).slice(0, 5)`

// tooWide lists what sticks out of the page, unless it scrolls in a box of its own.
const tooWide = `document.documentElement.scrollWidth <= innerWidth + 1 ? [] :
[...document.querySelectorAll("main *, nav *, header *")].filter(e => !e.closest(".wide") && e.getBoundingClientRect().right > innerWidth + 1)
.map(e => e.outerHTML.slice(0, 80)).slice(0, 5).concat(["page " + document.documentElement.scrollWidth])`

// TestBrowserKeyboard walks every page by the tab key: it reaches all that can be pressed
// or typed into.
func TestBrowserKeyboard(t *testing.T) {
	h := reading(t)
	needBrowser(t)
	b := open(t, h)
	for _, path := range []string{"/", "/stock?q=bell", "/season", "/weather", "/write/taken-in", "/rounds", "/rounds/cellar/0", "/places/glass", "/log", "/share"} {
		b.to(path)
		count := script[int](b, `(() => { window.reached = new Set(); document.addEventListener("focusin", e => reached.add(e.target));
			window.wanted = [...document.querySelectorAll("a[href],button,input:not([type=hidden]),select,summary,textarea")].filter(e => e.checkVisibility() && e.tabIndex >= 0); return wanted.length })()`)
		for range count*4 + 10 { // a date field has parts
			b.does(chromedp.KeyEvent("\t"))
		}
		if missed := script[[]string](b, `wanted.filter(e => !reached.has(e) && !(e.type === "radio" && !e.checked)).map(e => e.outerHTML.slice(0, 80))`); len(missed) > 0 {
			t.Errorf("%s: the tab key does not reach %q", path, missed)
		}
	}
}

// TestBrowserDrawings sees that the drawings' own style passes the policy.
func TestBrowserDrawings(t *testing.T) {
	b := open(t, reading(t))
	b.theme("light")
	b.to("/season")
	if fill := script[string](b, `getComputedStyle(document.querySelector("figure svg .paper")).fill`); fill != "rgb(255, 253, 248)" {
		t.Errorf("the drawing's paper is %s", fill)
	}
	b.to("/weather")
	if fill := script[string](b, `getComputedStyle(document.querySelector(".drawn .curve")).fill`); fill != "none" {
		t.Errorf("the curve is filled with %s", fill)
	}
}

// slowNetwork are the parameters of Network.emulateNetworkConditionsByRule: browsers until
// 148 ask for offline beside the rules, which later ones and their library have dropped.
type slowNetwork struct {
	Offline bool                  `json:"offline"`
	Rules   []*network.Conditions `json:"matchedNetworkConditions"`
}

var slowly = cdp.Command[slowNetwork, network.EmulateNetworkConditionsByRuleResult]{Method: network.CommandEmulateNetworkConditionsByRule}

// TestBrowserUsableSoon tells how soon pages are usable on a slow phone: 1.6 Mbit/s, 150 ms
// there and back, a processor four times slower. It asserts nothing of time, which is not
// a test's to keep; what is told goes into BENCHMARKS.md.
func TestBrowserUsableSoon(t *testing.T) {
	needBrowser(t)
	h := reading(t)
	usableSoon(t, "the invented garden", h)
	if !testing.Short() {
		h, _ = grown(t, 10_000)
		usableSoon(t, "10,000 lots more", h)
	}
}

func usableSoon(t *testing.T, garden string, h http.Handler) {
	t.Helper()
	paths := []string{"/", "/stock", "/stock?by=lot", "/rounds", "/rounds/cellar/0", "/season", "/patch", "/places", "/weather", "/write/taken-in"}
	for _, path := range paths { // all is reckoned before
		get(t, h, path)
	}
	b := open(t, h)
	b.does(chromedp.Func(func(ctx context.Context, tab *chromedp.Target) error {
		if _, err := cdp.Call(ctx, tab, network.Enable, network.EnableParams{}); err != nil {
			return err
		}
		slow := slowNetwork{Rules: []*network.Conditions{{Latency: 150, DownloadThroughput: 200_000, UploadThroughput: 90_000}}}
		if _, err := cdp.Call(ctx, tab, slowly, slow); err != nil {
			return err
		}
		_, err := cdp.Call(ctx, tab, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: 4})
		return err
	}))
	for _, path := range paths {
		b.to(path)
		ms := script[float64](b, `performance.getEntriesByType("navigation")[0].domContentLoadedEventEnd`)
		t.Logf("%s, %-16s usable after %4.0f ms", garden, path, ms)
	}
}
