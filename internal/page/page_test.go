package page

import (
	"html"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/desk"
)

// testDay is the day on which tests look at the invented garden: its stock is in store.
var testDay = civil.MustOn(2027, time.January, 20)

func testNow() time.Time { return time.Date(2027, time.January, 20, 12, 0, 0, 0, time.UTC) }

// shared is the invented garden that tests only read.
var shared = sync.OnceValues(func() (*desk.Scratch, error) { return desk.DemoDesk(testDay, testNow) })

func TestMain(m *testing.M) {
	code := m.Run()
	if d, err := shared(); err == nil {
		_ = d.Close()
	}
	os.Exit(code)
}

// reading serves the invented garden to tests that write nothing.
func reading(t *testing.T) http.Handler {
	t.Helper()
	d, err := shared()
	if err != nil {
		t.Fatal(err)
	}
	return handler(t, d.Desk, Options{})
}

// writing serves an invented garden of the test's own.
func writing(t *testing.T) (http.Handler, *desk.Desk) {
	t.Helper()
	d, err := desk.DemoDesk(testDay, testNow)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := d.Close(); err != nil {
			t.Error(err)
		}
	})
	return handler(t, d.Desk, Options{}), d.Desk
}

func handler(t *testing.T, d *desk.Desk, o Options) http.Handler {
	t.Helper()
	o.Now, o.Today, o.Demo, o.Gallery = testNow, testDay, true, true
	h, err := New(d, o)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// ask sends a request as a browser on this machine would.
func ask(h http.Handler, r *http.Request) *http.Response {
	r.Host = "127.0.0.1:8080"
	if r.RemoteAddr == "192.0.2.1:1234" { // what httptest puts there
		r.RemoteAddr = "127.0.0.1:50000"
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w.Result()
}

func get(t *testing.T, h http.Handler, path string) (status int, body string) {
	t.Helper()
	return read(t, ask(h, httptest.NewRequest(http.MethodGet, path, nil)))
}

func post(t *testing.T, h http.Handler, path string, form url.Values) (status int, body, location string) {
	t.Helper()
	r := httptest.NewRequest(http.MethodPost, path, strings.NewReader(form.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	res := ask(h, r)
	status, body = read(t, res)
	return status, body, res.Header.Get("Location")
}

func read(t *testing.T, res *http.Response) (int, string) {
	t.Helper()
	b, err := io.ReadAll(res.Body)
	if err != nil {
		t.Fatal(err)
	}
	return res.StatusCode, string(b)
}

// gist is what a page says went wrong.
func gist(body string) string {
	if i := strings.Index(body, "<main"); i >= 0 {
		body = body[i:]
	}
	body = regexp.MustCompile(`<[^>]*>|\s+`).ReplaceAllString(body, " ")
	return body[:min(len(body), 400)]
}

// every is every page of the invented garden, one of each sort.
func every(t *testing.T, h http.Handler) []string {
	t.Helper()
	_, list := get(t, h, "/stock?by=lot&q=dahlia")
	code := regexp.MustCompile(`href="/stock/([0-9A-Z]{5})"`).FindStringSubmatch(list)
	if code == nil {
		t.Fatal("no lot on the stock page")
	}
	return []string{
		"/", "/?low=10F", "/stock", "/stock?by=lot", "/stock?by=place", "/stock?q=bell", "/stock/" + code[1],
		"/write/taken-in", "/write/round?lot=" + code[1], "/write/divided?lot=" + code[1], "/write/moved?lot=" + code[1],
		"/rounds", "/rounds/cellar/0", "/rounds/cellar/sheet", "/season", "/season?plan=no+added+heat", "/patch", "/places", "/places/cellar",
		"/places/glass", "/places/patch", "/places/warm%20room", "/weather", "/weather?out=2027-06-10", "/paper", "/lists/potting", "/lists/shopping", "/lists/tags", "/lists/giving", "/bring", "/garden", "/display", "/share", "/log", "/log?page=2", "/gallery",
	}
}

func TestEveryPageIsServed(t *testing.T) {
	h := reading(t)
	for _, path := range every(t, h) {
		status, body := get(t, h, path)
		if status != http.StatusOK {
			t.Errorf("%s: status %d: %s", path, status, gist(body))
		}
		for _, bad := range []string{"ZgotmplZ", "%!", "<no value>", "NaN", "+Inf"} {
			if strings.Contains(body, bad) {
				t.Errorf("%s holds %q", path, bad)
			}
		}
		if !strings.HasSuffix(strings.TrimSpace(body), "</html>") {
			t.Errorf("%s is cut short", path)
		}
		if size := len(withoutPictures(body)); size > 100<<10 {
			t.Errorf("%s has %d bytes without pictures; 100 KB were promised", path, size)
		}
	}
}

var pictures = regexp.MustCompile(`(?s)<svg.*?</svg>`)

func withoutPictures(body string) string { return pictures.ReplaceAllString(body, "") }

// TestLinksLead follows every link of every page.
func TestLinksLead(t *testing.T) {
	h := reading(t)
	seen := map[string]bool{}
	links := regexp.MustCompile(`(?:href|src)="(/[^"]*)"`)
	for _, path := range every(t, h) {
		if path == "/gallery" { // its data are made up
			continue
		}
		_, body := get(t, h, path)
		for _, m := range links.FindAllStringSubmatch(body, -1) {
			to, _, _ := strings.Cut(html.UnescapeString(m[1]), "#")
			sort := regexp.MustCompile(`[0-9A-Z]{5}|[0-9]+`).ReplaceAllString(to, "#") // one of a sort will do
			if seen[sort] || strings.HasPrefix(to, "/paper/") {                        // those have a test of their own
				continue
			}
			seen[sort] = true
			if status, _ := get(t, h, to); status != http.StatusOK {
				t.Errorf("%s leads to %s, which answers %d", path, to, status)
			}
		}
	}
	if len(seen) < 40 {
		t.Errorf("only %d links were found", len(seen))
	}
}

func TestNothingComesFromOutside(t *testing.T) {
	h := reading(t)
	outside := regexp.MustCompile(`(?:src|href|action)\s*=\s*"(?:[a-z]+:)?//[^"]*"|@import|url\(`)
	for _, path := range append(every(t, h), "/look/style.css", "/look/script.js") {
		if _, body := get(t, h, path); outside.MatchString(body) {
			t.Errorf("%s: %s", path, outside.FindString(body))
		}
	}
}

func TestUnknownPagesSayWhatToDo(t *testing.T) {
	h := reading(t)
	for _, path := range []string{"/nothing", "/stock/QQQQQ", "/places/attic", "/rounds/cellar/999", "/write/dug-up", "/season?plan=best", "/weather?out=soon", "/season?risk=much", "/look/frame.html", "/look/../server.go"} {
		status, body := get(t, h, path)
		if status < 300 || status >= 500 {
			t.Errorf("%s: status %d: %s", path, status, gist(body))
		}
	}
}

// TestPaper asks for every paper: each is a file of its kind, told by its first bytes (PDF
// 1.x; ISO 21320 for the workbook; RFC 5545 for the calendar).
func TestPaper(t *testing.T) {
	h := reading(t)
	begins := map[string]string{"calendar": "BEGIN:VCALENDAR\r\n", "tables": "PK\x03\x04"}
	for _, name := range desk.PaperNames() {
		res := ask(h, httptest.NewRequest(http.MethodGet, "/paper/"+name, nil))
		status, body := read(t, res)
		want := "%PDF-1."
		if b := begins[name]; b != "" {
			want = b
		}
		if status != http.StatusOK || !strings.HasPrefix(body, want) {
			t.Errorf("/paper/%s: status %d, begins with %.40q: %s", name, status, body, gist(body))
		}
		if d := res.Header.Get("Content-Disposition"); !strings.Contains(d, name+".") {
			t.Errorf("/paper/%s is sent as %q", name, d)
		}
	}
	for _, path := range []string{"/paper/poem", "/paper/labels?layout=small", "/paper/labels?lots=QQQQQ", "/paper/labels?from=none"} {
		if status, body := get(t, h, path); status != http.StatusUnprocessableEntity && status != http.StatusBadRequest {
			t.Errorf("%s: status %d: %s", path, status, gist(body))
		}
	}
}
