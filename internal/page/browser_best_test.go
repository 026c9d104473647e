package page

import (
	"context"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// until asks the page again and again whether something is so.
func (b *tab) until(is string) {
	b.t.Helper()
	for range 2000 {
		now, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool](is))
		if err == nil && now {
			return
		}
		time.Sleep(20 * time.Millisecond)
	}
	b.t.Fatalf("never on %s: %s; it says: %s", script[string](b, "location.href"), is, b.text())
}

// TestBrowserChange changes a price and sees what the plans answer.
func TestBrowserChange(t *testing.T) {
	b := open(t, reading(t))
	b.to("/season")
	before := script[string](b, heatRow)
	script[bool](b, "document.querySelector('details.change').open = true")
	b.types("price.propane", "0.5")
	b.press("#change button")
	if says := b.text(); !strings.Contains(says, "This is the season with your change") {
		t.Errorf("after a change the page says: %s", says[:min(len(says), 400)])
	}
	if after := script[string](b, heatRow); after == before || after == "" {
		t.Errorf("at another price heat costs the same: %s", after)
	}
	if wide := script[[]string](b, tooWide); len(wide) > 0 {
		t.Errorf("it is wider than the phone: %q", wide)
	}
}

// heatRow is what heat costs in the table of plans.
const heatRow = `[...document.querySelectorAll("table.side tr")].find(r => r.innerText.startsWith("heat")).innerText`

// TestBrowserBest looks for the best plans: how far it is is told in place, stopping shows
// what was best by then.
func TestBrowserBest(t *testing.T) {
	h, _ := writing(t)
	b := open(t, h)
	b.to("/season")
	b.press(`form[action="/season/best"] button`)
	begun := script[float64](b, "performance.timeOrigin")
	b.until(`/compared so far/.test(document.getElementById("looking").innerText)`)
	if script[float64](b, "performance.timeOrigin") != begun {
		t.Error("the page is loaded anew to tell how far it is")
	}
	b.press(`form[action="/season/best/stop"] button`)
	b.until(`/The search was stopped/.test(document.querySelector("main").innerText)`)
	for _, says := range []string{"the best that the search found", "could be better", "What earlier flowers cost"} {
		if !strings.Contains(b.text(), says) {
			t.Errorf("what was found lacks %q", says)
		}
	}
	if wide := script[[]string](b, tooWide); len(wide) > 0 {
		t.Errorf("it is wider than the phone: %q", wide)
	}
	if small := script[[]string](b, smallTargets); len(small) > 0 {
		t.Errorf("smaller than 44 pixels: %q", small)
	}
	for _, scheme := range []string{"light", "dark"} {
		b.theme(scheme)
		for _, v := range b.violations() {
			if v.Impact == "serious" || v.Impact == "critical" {
				t.Errorf("%s: %s, first %s: %s", scheme, v.ID, v.Nodes[0].HTML, v.Nodes[0].Why)
			}
		}
	}
}

// TestBrowserBestWithoutScripts looks for the best plans in a browser that runs none: the page
// looks again by itself.
func TestBrowserBestWithoutScripts(t *testing.T) {
	h, d := writing(t)
	b := open(t, h)
	b.does(chromedp.Func(func(ctx context.Context, tab *chromedp.Target) error {
		_, err := cdp.Call(ctx, tab, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
		return err
	}))
	b.to("/season")
	b.press(`form[action="/season/best"] button`)
	b.until(`document.readyState === "complete" && performance.timeOrigin !== ` + script[string](b, "String(performance.timeOrigin)"))
	d.StopLooking()
	b.until(`/The search was stopped/.test(document.querySelector("main").innerText)`)
}
