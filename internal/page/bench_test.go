package page

import (
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"strings"
	"testing"

	"eyeup/internal/desk"
	"eyeup/internal/stockbook"
	"eyeup/stock"
)

// grown is a garden of the given number of lots: the invented garden's, over and over.
func grown(b testing.TB, lots int) (http.Handler, *desk.Desk) {
	b.Helper()
	book, err := stockbook.New(filepath.Join(b.TempDir(), "grown.book"), testNow)
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { _ = book.Close() })
	if err := book.Demo(); err != nil {
		b.Fatal(err)
	}
	var entries []stock.Entry
	for i := range lots {
		body, err := json.Marshal(map[string]any{
			"variety": fmt.Sprintf("Grown %d", i/4), "kind": "dahlia", "form": "clump", "count": 3 + i%9, "place": "cellar", "crate": fmt.Sprint(i / 12), "pack": "vermiculite",
		})
		if err != nil {
			b.Fatal(err)
		}
		e, err := book.NewEntry("taken in", body)
		if err != nil {
			b.Fatal(err)
		}
		e.On = testDay.AddDays(-60)
		entries = append(entries, e)
	}
	if _, err := book.Append(entries...); err != nil {
		b.Fatal(err)
	}
	d, err := desk.NewDesk(book, true)
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(d.Rest)
	h, err := New(d, Options{Now: testNow, Today: testDay})
	if err != nil {
		b.Fatal(err)
	}
	return h, d
}

// BenchmarkPages serves every page of a garden of 10,000 lots; what is reckoned once is
// reckoned before.
func BenchmarkPages(b *testing.B) {
	h, d := grown(b, 10_000)
	d.Warm(testDay)
	d.Rest()
	code := string(d.Shelf().Lots[5000].Code)
	for _, path := range []string{"/", "/stock", "/stock?by=lot", "/stock?by=lot&page=80", "/stock?q=grown+77&by=lot", "/stock?by=place", "/stock/" + code, "/write/round?lot=" + code, "/rounds", "/rounds/cellar/500", "/season", "/patch", "/places", "/places/cellar", "/places/glass", "/weather"} {
		b.Run(path, func(b *testing.B) {
			ask(h, httptest.NewRequest(http.MethodGet, path, nil))
			size := 0
			for b.Loop() {
				r := httptest.NewRequest(http.MethodGet, path, nil)
				r.Host, r.RemoteAddr = "127.0.0.1", "127.0.0.1:5000"
				w := httptest.NewRecorder()
				h.ServeHTTP(w, r)
				size = w.Body.Len()
				if w.Code != http.StatusOK {
					b.Fatal(w.Code)
				}
			}
			b.ReportMetric(float64(size)/1024, "KB")
		})
	}
}

// BenchmarkChange serves the season of the invented garden with one change after another, none
// of which was asked for before.
func BenchmarkChange(b *testing.B) {
	d, err := desk.DemoDesk(testDay, testNow)
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { _ = d.Close() })
	h, err := New(d.Desk, Options{Now: testNow, Today: testDay})
	if err != nil {
		b.Fatal(err)
	}
	ask(h, httptest.NewRequest(http.MethodGet, "/season", nil)) // waited for once
	n := 0
	for _, change := range []string{"price.propane=0.1%03d", "risk=%d.5%%25", "level.glass=45F&price.propane=0.3%03d", "level.glass=%d.4F"} {
		b.Run(strings.SplitN(change, "=", 2)[0], func(b *testing.B) {
			for b.Loop() {
				n++
				r := httptest.NewRequest(http.MethodGet, "/season?"+fmt.Sprintf(change, 35+n%40), nil)
				r.Host, r.RemoteAddr = "127.0.0.1", "127.0.0.1:5000"
				w := httptest.NewRecorder()
				if h.ServeHTTP(w, r); w.Code != http.StatusOK {
					b.Fatal(w.Code, gist(w.Body.String()))
				}
			}
		})
	}
}

// BenchmarkWrite writes an entry into a book of 10,000 lots and serves the page after it.
func BenchmarkWrite(b *testing.B) {
	h, d := grown(b, 10_000)
	lot := d.Shelf().Lots[5000]
	e := func() {
		form := "lot=" + string(lot.Code) + "&text=seen"
		r := httptest.NewRequest(http.MethodPost, "/write/note?"+form, nil)
		r.Host, r.RemoteAddr = "127.0.0.1", "127.0.0.1:5000"
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if w.Code != http.StatusSeeOther {
			b.Fatal(w.Code, w.Body)
		}
		to := httptest.NewRequest(http.MethodGet, w.Header().Get("Location"), nil)
		to.Host, to.RemoteAddr = "127.0.0.1", "127.0.0.1:5000"
		h.ServeHTTP(httptest.NewRecorder(), to)
	}
	e() // the season is waited for once
	d.Rest()
	for b.Loop() {
		e()
	}
}

// TestFourHundredLots asks for every page of a garden of 400 lots more: none is longer than
// 100 KB without its pictures.
func TestFourHundredLots(t *testing.T) {
	h, d := grown(t, 400)
	code := string(d.Shelf().Lots[200].Code)
	for _, path := range []string{"/", "/stock", "/stock?by=lot", "/stock?by=place", "/stock/" + code, "/rounds", "/rounds/cellar/9", "/season", "/patch", "/places", "/places/cellar"} {
		status, body := get(t, h, path)
		if size := len(withoutPictures(body)); status != http.StatusOK || size > 100<<10 {
			t.Errorf("%s: status %d, %d bytes", path, status, size)
		}
	}
}
