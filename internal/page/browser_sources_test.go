package page

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestBrowserSources asks figures on a phone: their sources open beneath them and fold up
// again; without scripts the link leads to them, and they are unfolded.
func TestBrowserSources(t *testing.T) {
	b := open(t, reading(t))
	for path, link := range map[string]string{
		"/":             `td a.why[href="#why-night-glass"]`,
		"/season":       `.side a.why[href="#why-heat"]`,
		"/weather":      `p a.why[href="#why-odds"]`,
		"/patch":        `.batches thead a.why[href="#why-places"]`,
		"/stock":        `p a.why[href="#why-count"]`,
		"/places":       `li a.why[href="#why-heat-glass"]`,
		"/rounds":       `figcaption a.why[href="#why-weight"]`,
		"/places/glass": `thead a.why[href="#why-asked"]`,
	} {
		b.to(path)
		b.does(chromedp.ScrollIntoView(link), chromedp.Click(link))
		if opened := script[string](b, `document.querySelector(".opened")?.innerText || ""`); !strings.Contains(opened, "record") {
			t.Errorf("%s: beneath %s stands %q", path, link, opened)
		}
		if place := script[string](b, "location.hash"); place != "" {
			t.Errorf("%s: %s leads away to %s", path, link, place)
		}
		b.looksWell(path + ", asked")
		script[bool](b, fmt.Sprintf("document.querySelector(%q).click(); true", link))
		if left := script[[]string](b, `[...document.querySelectorAll(".opened, .opened-row, [aria-expanded]")].map(e => e.outerHTML.slice(0, 200))`); len(left) != 0 {
			t.Errorf("%s: asked again, it leaves open %q", path, left)
		}
	}
	b.to("/season#why-heat")
	if seen := script[bool](b, `document.getElementById("why-heat").checkVisibility()`); !seen {
		t.Error("an address that names sources does not unfold them")
	}
}
