package page

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
)

// TestMovedPages holds each old address: GET and POST alike lead to the present one with
// status 308, the query is kept, and there is a page.
func TestMovedPages(t *testing.T) {
	h := reading(t)
	for old, now := range map[string]string{
		"/taste":        "/display",
		"/taste?next=/": "/display?next=/",
		"/stories":      "/gallery",
	} {
		for _, method := range []string{http.MethodGet, http.MethodPost} {
			answer := ask(h, httptest.NewRequest(method, old, nil))
			if to := answer.Header.Get("Location"); answer.StatusCode != http.StatusPermanentRedirect || to != now {
				t.Errorf("%s %s: status %d, to %q; want 308 to %q", method, old, answer.StatusCode, to, now)
			}
		}
		if status, _ := get(t, h, now); status != http.StatusOK {
			t.Errorf("%s: status %d", now, status)
		}
	}
	if len(moved) != 2 {
		t.Errorf("%d addresses have moved; test each", len(moved))
	}
}

// TestDisplayIsKept sets units and dates by the old address, as a page opened before an
// update would, and reads them from cookies of the names they always had.
func TestDisplayIsKept(t *testing.T) {
	h := reading(t)
	form := url.Values{"units": {"metric"}, "dates": {"figures"}, "next": {"/"}}
	r := httptest.NewRequest(http.MethodPost, "/taste", strings.NewReader(form.Encode()))
	to := ask(h, r).Header.Get("Location")
	r = httptest.NewRequest(http.MethodPost, to, strings.NewReader(form.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	answer := ask(h, r)
	if answer.StatusCode != http.StatusSeeOther {
		t.Fatalf("status %d", answer.StatusCode)
	}
	kept := map[string]string{}
	for _, c := range answer.Cookies() {
		kept[c.Name] = c.Value
	}
	if kept["units"] != "metric" || kept["dates"] != "figures" {
		t.Errorf("the browser keeps %v", kept)
	}
	r = httptest.NewRequest(http.MethodGet, "/display", nil)
	r.AddCookie(&http.Cookie{Name: "units", Value: "metric"})
	r.AddCookie(&http.Cookie{Name: "dates", Value: "figures"})
	_, body := read(t, ask(h, r))
	for _, ticked := range []string{`value="metric" checked`, `value="figures" checked`} {
		if !strings.Contains(body, ticked) {
			t.Errorf("/display does not have %s: %s", ticked, body)
		}
	}
}
