package page

import (
	"io"
	"net/http"
	"net/url"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
)

// calendarOf is the address of the calendar as the page of devices shows it; empty for none.
func calendarOf(t *testing.T, h http.Handler) string {
	t.Helper()
	_, body := get(t, h, "/share")
	return regexp.MustCompile(`/calendar/[0-9a-f]*\.ics`).FindString(body)
}

// fetched is what a calendar program that is not paired gets.
func fetched(t *testing.T, h http.Handler, path string) (status int, text string) {
	t.Helper()
	res := (&device{h: h}).ask(http.MethodGet, path, nil)
	b, err := io.ReadAll(res.Body)
	if err != nil {
		t.Fatal(err)
	}
	return res.StatusCode, string(b)
}

func linesOf(text, name string) []string {
	var all []string
	for _, line := range strings.Split(text, "\r\n") {
		if value, is := strings.CutPrefix(line, name+":"); is {
			all = append(all, value)
		}
	}
	return all
}

// TestCalendarIsSubscribedTo makes an address, fetches by it from the network without
// pairing, twice and after a new start, and withdraws it.
func TestCalendarIsSubscribedTo(t *testing.T) {
	_, d := writing(t)
	c := &clock{testNow()}
	file := filepath.Join(t.TempDir(), "my.book.devices")
	h, _ := opened(t, d, c, file)
	if at := calendarOf(t, h); at != "" {
		t.Fatalf("before it is made there is an address, %s", at)
	}
	if status, _ := fetched(t, h, "/calendar/.ics"); status == http.StatusOK {
		t.Error("an empty key is let in")
	}
	post(t, h, "/share/calendar", url.Values{"what": {"new"}})
	at := calendarOf(t, h)
	if len(at) != len("/calendar/.ics")+32 {
		t.Fatalf("the address is %q", at)
	}
	status, first := fetched(t, h, at)
	if status != http.StatusOK || !strings.HasPrefix(first, "BEGIN:VCALENDAR") || len(linesOf(first, "UID")) < 20 {
		t.Fatalf("status %d: %.200s", status, first)
	}
	if _, body := get(t, h, "/paper"); !strings.Contains(body, `href="webcal://127.0.0.1`) || !strings.Contains(body, at+`"`) {
		t.Errorf("the page of papers does not lead to it: %s", gist(body))
	}
	h, _ = opened(t, d, c, file)
	if _, again := fetched(t, h, at); !slices.Equal(linesOf(first, "UID"), linesOf(again, "UID")) {
		t.Error("the same plan has other UIDs")
	}
	for _, path := range []string{at[:len(at)-5] + "0.ics", "/calendar/", "/stock", "/share", "/", "/paper/calendar"} {
		if path == at {
			continue
		}
		if status, _ := fetched(t, h, path); status == http.StatusOK {
			t.Errorf("%s is let in", path)
		}
	}
	if res := (&device{h: h}).ask(http.MethodPost, at, url.Values{}); res.StatusCode == http.StatusOK {
		t.Error("something can be sent there")
	}
	if res := (&device{h: h}).ask(http.MethodPost, "/share/calendar", url.Values{"what": {"new"}}); res.StatusCode == http.StatusOK || calendarOf(t, h) != at {
		t.Error("a stranger makes another address")
	}

	post(t, h, "/share/calendar", url.Values{"what": {"new"}})
	other := calendarOf(t, h)
	if status, _ := fetched(t, h, at); status == http.StatusOK || other == at {
		t.Errorf("the address before serves still: %s, %s", at, other)
	}
	post(t, h, "/share/calendar", url.Values{"what": {"end"}})
	if status, _ := fetched(t, h, other); status == http.StatusOK || calendarOf(t, h) != "" {
		t.Error("it was withdrawn and serves still")
	}
}

// TestCalendarIsNotSharedByItself refuses the address where the pages are not shared.
func TestCalendarIsNotSharedByItself(t *testing.T) {
	_, d := writing(t)
	file := filepath.Join(t.TempDir(), "my.book.devices")
	h, _ := opened(t, d, &clock{testNow()}, file)
	post(t, h, "/share/calendar", url.Values{"what": {"new"}})
	at := calendarOf(t, h)
	h = handler(t, d, Options{Devices: file})
	if status, _ := get(t, h, at); status != http.StatusNotFound {
		t.Errorf("status %d without --share", status)
	}
	if status, _, _ := post(t, h, "/share/calendar", url.Values{"what": {"new"}}); status != http.StatusForbidden {
		t.Errorf("an address is made without --share: status %d", status)
	}
}

// TestCalendarGrows lets time pass between two fetches: the sequence of every entry grows.
func TestCalendarGrows(t *testing.T) {
	_, d := writing(t)
	at := testNow()
	var texts []string
	for range 2 {
		h, err := New(d, Options{Now: func() time.Time { return at }, Today: testDay, Share: NewShare(testNow, "192.168.1.7")})
		if err != nil {
			t.Fatal(err)
		}
		post(t, h, "/share/calendar", url.Values{"what": {"new"}})
		_, text := fetched(t, h, calendarOf(t, h))
		texts = append(texts, text)
		at = at.Add(time.Hour)
	}
	was, is := linesOf(texts[0], "SEQUENCE"), linesOf(texts[1], "SEQUENCE")
	if len(was) == 0 || len(was) != len(is) || was[0] == is[0] || linesOf(texts[0], "DTSTAMP")[0] == linesOf(texts[1], "DTSTAMP")[0] {
		t.Errorf("sequences %v, then %v", was, is)
	}
}
