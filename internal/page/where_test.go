package page

import (
	"testing"

	"eyeup/internal/sources"
	"eyeup/stock"
)

// TestEveryPageThatSourcesNameHasAnAddress asks for the address of each page that can be named.
func TestEveryPageThatSourcesNameHasAnAddress(t *testing.T) {
	for p := sources.Log; p <= sources.Described; p++ {
		if addressOf(sources.Where{Page: p}) == "" {
			t.Errorf("page %d has no address", p)
		}
	}
	for want, where := range map[string]sources.Where{
		"":                                {},
		"#why-night-cellar":               {Page: sources.Here, Source: "night-cellar"},
		"/stock/MRMM5":                    {Page: sources.Lot, Code: stock.Code("MRMM5")},
		"/garden?part=patch#garden/patch": {Page: sources.Described, Part: "patch"},
	} {
		if got := addressOf(where); got != want {
			t.Errorf("%+v is at %q, not %q", where, got, want)
		}
	}
}
