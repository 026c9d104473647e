package page

import (
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// browserPath finds Debian's Chromium.
func browserPath() string {
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	return ""
}

// chromium is one browser for all tests; each test has a tab of its own.
var chromium = sync.OnceValues(func() (context.Context, error) {
	ctx, _ := chromedp.NewContext(context.Background(), // it ends with the tests
		chromedp.WithAllocatorOptions(chromedp.ExecPath(browserPath()), chromedp.NoSandbox, chromedp.DisableGPU))
	return ctx, chromedp.Do(ctx)
})

// needBrowser leaves the test out unless browser tests were asked for.
func needBrowser(t *testing.T) {
	t.Helper()
	if os.Getenv("EYEUP_BROWSER") == "" {
		t.Skip("left out: browser tests run with EYEUP_BROWSER=1, as make browser does")
	}
	if browserPath() == "" {
		if os.Getenv("CI") == "true" {
			t.Fatal("no Chromium is installed")
		}
		t.Skip("left out: no Chromium is installed")
	}
}

// tab is a tab of the browser at some pages.
type tab struct {
	t    *testing.T
	ctx  context.Context
	base string
}

// open opens a tab of a phone's size at the pages that h serves.
func open(t *testing.T, h http.Handler) *tab {
	t.Helper()
	needBrowser(t)
	srv := httptest.NewServer(h)
	t.Cleanup(srv.Close)
	return another(t, srv.URL)
}

// another opens one more tab, in a window and with cookies of its own.
func another(t *testing.T, base string) *tab {
	t.Helper()
	parent, err := chromium()
	if err != nil {
		t.Fatal(err)
	}
	own, cancel := chromedp.NewContext(parent, chromedp.WithNewBrowserContext())
	t.Cleanup(cancel)
	if err := chromedp.Do(own); err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithTimeout(own, 5*time.Minute)
	t.Cleanup(stop)
	b := &tab{t, ctx, base}
	b.does(chromedp.EmulateViewport(390, 844, chromedp.EmulateMobile, chromedp.EmulateTouch))
	return b
}

func (b *tab) does(steps ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	if err := chromedp.Do(b.ctx, steps...); err != nil {
		b.t.Fatal(err)
	}
}

// to opens a page.
func (b *tab) to(path string) {
	b.t.Helper()
	b.does(chromedp.Navigate(b.base + path))
}

// script evaluates an expression on the page.
func script[T any](b *tab, expression string) T {
	b.t.Helper()
	v, err := chromedp.Run(b.ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	if err != nil {
		b.t.Fatalf("%s: %v", expression[:min(len(expression), 80)], err)
	}
	return v
}

// press clicks what leads to another page, and waits for that page.
func (b *tab) press(selector string) {
	b.t.Helper()
	before := script[float64](b, "performance.timeOrigin")
	b.does(chromedp.ScrollIntoView(selector), chromedp.Click(selector))
	for range 400 {
		now, err := chromedp.Run(b.ctx, chromedp.Evaluate[float64]("document.readyState === 'complete' ? performance.timeOrigin : 0"))
		if err == nil && now != 0 && now != before {
			return
		}
		time.Sleep(20 * time.Millisecond)
	}
	b.t.Fatalf("%s leads nowhere from %s", selector, script[string](b, "location.href"))
}

// types puts words into a field, in place of what stands there.
func (b *tab) types(field, words string) {
	b.t.Helper()
	b.does(chromedp.SetValue(fmt.Sprintf("[name=%q]", field), words))
}

// text is what the page says.
func (b *tab) text() string {
	b.t.Helper()
	return script[string](b, "document.querySelector('main').innerText")
}

// theme makes the browser ask for light or dark pages.
func (b *tab) theme(scheme string) {
	b.t.Helper()
	b.does(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}})
		return err
	}))
}

// axe is the checker of accessibility, fetched when it is first needed.
var axe = sync.OnceValues(func() (string, error) {
	const file = "axe/node_modules/axe-core/axe.min.js"
	if _, err := os.Stat(file); err != nil {
		npm := exec.Command("npm", "ci", "--no-audit", "--no-fund", "--ignore-scripts")
		npm.Dir = "axe"
		if said, err := npm.CombinedOutput(); err != nil {
			return "", fmt.Errorf("npm could not fetch axe-core: %w\n%s", err, said)
		}
	}
	b, err := os.ReadFile(file)
	return string(b), err
})

// violation is something that axe finds wrong.
type violation struct {
	ID     string `json:"id"`
	Impact string `json:"impact"`
	Nodes  []struct {
		HTML string `json:"html"`
		Why  string `json:"failureSummary"`
	} `json:"nodes"`
}

// violations are what axe finds on the page.
func (b *tab) violations() []violation {
	b.t.Helper()
	source, err := axe()
	if err != nil {
		if os.Getenv("CI") == "true" {
			b.t.Fatal(err)
		}
		b.t.Skip("left out: ", err)
	}
	script[bool](b, source+"; true")
	found := script[string](b, `axe.run().then(r => JSON.stringify(r.violations.map(v => ({id: v.id, impact: v.impact, nodes: v.nodes.map(n => ({html: n.html, failureSummary: n.failureSummary}))}))))`)
	var all []violation
	if err := json.Unmarshal([]byte(found), &all); err != nil {
		b.t.Fatal(err)
	}
	return all
}
