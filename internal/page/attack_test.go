package page

import (
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"eyeup/stock"
)

// serveRaw sends a request as it is, from an address.
func serveRaw(h http.Handler, r *http.Request, from string) *http.Response {
	r.RemoteAddr = from
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w.Result()
}

// TestForeignNamesAreRefused asks by names that a foreign page could have made to lead here.
func TestForeignNamesAreRefused(t *testing.T) {
	h := reading(t)
	for host, want := range map[string]int{
		"127.0.0.1:8080": 200, "localhost:8080": 200, "[::1]:8080": 200, "LOCALHOST": 200, "127.0.0.2": 200,
		"evil.example": 421, "evil.example:8080": 421, "127.0.0.1.evil.example": 421, "localhost.evil.example": 421, "": 421, "192.168.1.7:8080": 421, "0.0.0.0:8080": 421,
	} {
		r := httptest.NewRequest(http.MethodGet, "/display", nil)
		r.Host = host
		if got := serveRaw(h, r, "127.0.0.1:4000").StatusCode; got != want {
			t.Errorf("Host %q: status %d, want %d", host, got, want)
		}
	}
}

// TestForeignOriginsCantWrite posts as pages of other sites would make a browser do.
func TestForeignOriginsCantWrite(t *testing.T) {
	h, d := writing(t)
	before := d.Shelf().Count
	lot, _ := clumps(t, d, 2)
	for name, header := range map[string]http.Header{
		"a foreign origin":   {"Origin": {"http://evil.example"}},
		"a null origin":      {"Origin": {"null"}},
		"fetched cross-site": {"Sec-Fetch-Site": {"cross-site"}},
		"a sister site":      {"Sec-Fetch-Site": {"same-site"}},
		"another port":       {"Origin": {"http://127.0.0.1:9999"}},
	} {
		form := url.Values{"lot": {string(lot.Code)}, "count": {"1"}}
		r := httptest.NewRequest(http.MethodPost, "/write/destroyed", strings.NewReader(form.Encode()))
		r.Header = header
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		if res := ask(h, r); res.StatusCode != http.StatusForbidden {
			t.Errorf("%s: status %d", name, res.StatusCode)
		}
	}
	if d.Shelf().Count != before {
		t.Error("something was written")
	}
}

func TestOthersAreRefusedWithoutSharing(t *testing.T) {
	h := reading(t)
	for _, path := range []string{"/", "/stock", "/pair", "/look/style.css"} {
		r := httptest.NewRequest(http.MethodGet, path, nil)
		r.Host = "127.0.0.1"
		if got := serveRaw(h, r, "192.168.1.20:4000").StatusCode; got != http.StatusForbidden {
			t.Errorf("%s from another machine: status %d", path, got)
		}
	}
}

// device is a phone in the local network.
type device struct {
	h       http.Handler
	cookies []*http.Cookie
}

func (d *device) ask(method, path string, form url.Values) *http.Response {
	r := httptest.NewRequest(method, path, strings.NewReader(form.Encode()))
	r.Host = "192.168.1.7:8080"
	if method == http.MethodPost {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	for _, c := range d.cookies {
		r.AddCookie(c)
	}
	res := serveRaw(d.h, r, "192.168.1.20:4000")
	d.cookies = append(d.cookies, res.Cookies()...)
	return res
}

// TestPairing pairs a phone, tries the code again, and ends the session.
func TestPairing(t *testing.T) {
	d, err := shared()
	if err != nil {
		t.Fatal(err)
	}
	now := testNow()
	share := NewShare(func() time.Time { return now }, "192.168.1.7")
	h := handler(t, d.Desk, Options{Share: share})
	phone := &device{h: h}
	if res := phone.ask(http.MethodGet, "/stock", nil); res.StatusCode != http.StatusSeeOther || res.Header.Get("Location") != "/pair" {
		t.Errorf("an unpaired device: status %d", res.StatusCode)
	}
	if res := phone.ask(http.MethodPost, "/write/taken-in", url.Values{}); res.StatusCode != http.StatusSeeOther || res.Header.Get("Location") != "/pair" {
		t.Errorf("an unpaired device that writes: status %d", res.StatusCode)
	}
	_, body := read(t, phone.ask(http.MethodGet, "/pair", nil))
	if strings.Contains(body, "Tamsel") || strings.Contains(body, "/stock") {
		t.Error("the pairing page tells of the garden")
	}
	if res := phone.ask(http.MethodPost, "/pair", url.Values{"code": {""}}); res.StatusCode != http.StatusForbidden {
		t.Errorf("no code while there is none: status %d", res.StatusCode)
	}
	now = now.Add(time.Minute)
	code, _ := share.NewCode()
	if len(code) != 8 {
		t.Errorf("the code %q has not eight signs", code)
	}
	if res := phone.ask(http.MethodPost, "/pair", url.Values{"code": {strings.ToLower(code[:4] + " " + code[4:])}, "name": {"phone"}}); res.StatusCode != http.StatusSeeOther {
		t.Fatalf("the right code: status %d", res.StatusCode)
	}
	if c := phone.cookies[0]; !c.HttpOnly || c.SameSite != http.SameSiteStrictMode || len(c.Value) != 64 {
		t.Errorf("the cookie is %+v", c)
	}
	if res := phone.ask(http.MethodGet, "/stock", nil); res.StatusCode != http.StatusOK {
		t.Errorf("the paired device: status %d", res.StatusCode)
	}
	if res := phone.ask(http.MethodGet, "/share", nil); res.StatusCode != http.StatusForbidden {
		t.Errorf("codes shown to a paired device: status %d", res.StatusCode)
	}
	if res := phone.ask(http.MethodPost, "/share/code", url.Values{}); res.StatusCode != http.StatusForbidden {
		t.Errorf("a paired device makes codes: status %d", res.StatusCode)
	}
	thief := &device{h: h}
	if res := thief.ask(http.MethodPost, "/pair", url.Values{"code": {code}}); res.StatusCode != http.StatusForbidden {
		t.Errorf("the code a second time: status %d", res.StatusCode)
	}
	paired, err := share.devices.list()
	if err != nil || len(paired) != 1 {
		t.Fatalf("%d devices, %v", len(paired), err)
	}
	share.devices.end(paired[0].End)
	if res := phone.ask(http.MethodGet, "/stock", nil); res.StatusCode != http.StatusSeeOther {
		t.Errorf("after the session ended: status %d", res.StatusCode)
	}
}

// TestWrongCodesAreSlowedDown types wrong codes: ever longer waits, and after five the
// code is spent.
func TestWrongCodesAreSlowedDown(t *testing.T) {
	now := testNow()
	share := NewShare(func() time.Time { return now }, "192.168.1.7")
	code, _ := share.NewCode()
	for n := range 5 {
		if err := share.Check("22222222"); err != errWrongCode {
			t.Fatalf("wrong code %d: %v", n, err)
		}
		if err := share.Check(code); err != errTooSoon {
			t.Fatalf("right after wrong code %d: %v", n, err)
		}
		now = now.Add(time.Second<<n + time.Millisecond)
	}
	if err := share.Check(code); err != errWrongCode {
		t.Errorf("the code after five wrong ones: %v", err)
	}
	now = now.Add(time.Hour)
	code, _ = share.NewCode()
	now = now.Add(codeLasts + time.Second)
	if err := share.Check(code); err != errWrongCode {
		t.Errorf("a code past its time: %v", err)
	}
}

// TestNamesCantBreakOut writes a variety whose name is a script, and looks for it on every
// page that shows it.
func TestNamesCantBreakOut(t *testing.T) {
	h, _ := writing(t)
	name := `"><script>alert(1)</script>&'{{.}}`
	status, body, to := post(t, h, "/write/taken-in", url.Values{"variety": {name}, "kind": {"dahlia"}, "form": {"clump"}, "count": {"3"}, "place": {"cellar"}, "crate": {name}, "from": {name}, "note": {name}})
	if status != http.StatusSeeOther {
		t.Fatalf("status %d: %s", status, gist(body))
	}
	_, body = get(t, h, to)
	i := strings.Index(body, "New lot")
	code := body[i:][strings.Index(body[i:], "/stock/")+len("/stock/"):][:5]
	for _, path := range []string{"/", "/stock", "/stock?by=lot&q=script", "/stock/" + code, "/write/round?lot=" + code, "/rounds", "/places/cellar", "/patch", "/season", "/log", "/stock?q=" + url.QueryEscape(name)} {
		status, body := get(t, h, path)
		if status != http.StatusOK || strings.Contains(body, "<script>alert") {
			t.Errorf("%s: status %d, script on the page: %v", path, status, strings.Contains(body, "<script>alert"))
		}
	}
	_, body = get(t, h, "/rounds?"+url.Values{"place": {"cellar"}, "crate": {name}}.Encode())
	if strings.Contains(body, "<script>alert") {
		t.Error("the crate of that name is a script")
	}
	res := ask(h, httptest.NewRequest(http.MethodGet, "/rounds?"+url.Values{"place": {"cellar"}, "crate": {name}}.Encode(), nil))
	if status, body := get(t, h, res.Header.Get("Location")); status != http.StatusOK || strings.Contains(body, "<script>alert") {
		t.Errorf("the crate's own page: status %d, script on it: %v", status, strings.Contains(body, "<script>alert"))
	}
}

func TestPolicyIsStrict(t *testing.T) {
	h := reading(t)
	for _, path := range every(t, h) {
		header := ask(h, httptest.NewRequest(http.MethodGet, path, nil)).Header
		csp := header.Get("Content-Security-Policy")
		for _, must := range []string{"default-src 'none'", "script-src 'self'", "form-action 'self'", "frame-ancestors 'none'", "base-uri 'none'"} {
			if !strings.Contains(csp, must) {
				t.Errorf("%s: the policy lacks %s", path, must)
			}
		}
		if strings.Contains(csp, "unsafe") || strings.Contains(csp, "*") {
			t.Errorf("%s: the policy is loose: %s", path, csp)
		}
		if header.Get("X-Content-Type-Options") != "nosniff" {
			t.Errorf("%s lets the browser guess", path)
		}
	}
}

// endless is a file of the given length that is sent bit by bit; it counts what was taken.
type endless struct{ left, taken int64 }

func (e *endless) Read(p []byte) (int, error) {
	if e.left == 0 {
		return 0, io.EOF
	}
	n := min(int64(len(p)), e.left)
	for i := range p[:n] {
		p[i] = 'x'
	}
	e.left -= n
	e.taken += n
	return int(n), nil
}

// TestAGigabyteIsRefused sends files of a gigabyte: the pages stop reading at their limit,
// say so, and nothing is written.
func TestAGigabyteIsRefused(t *testing.T) {
	h, d := writing(t)
	entries := func() (n int) {
		d.Read(func(b *stock.Book) { n = b.Entries() })
		return n
	}
	before := entries()
	const head = "--cut\r\nContent-Disposition: form-data; name=\"file\"; filename=\"list.csv\"\r\n\r\n"
	for path, h := range map[string]http.Handler{"/bring": h, "/begin/climate": emptyBook(t)} {
		file := &endless{left: 1 << 30}
		r := httptest.NewRequest(http.MethodPost, path, io.MultiReader(strings.NewReader(head), file))
		r.Header.Set("Content-Type", "multipart/form-data; boundary=cut")
		status, body := read(t, ask(h, r))
		if status != http.StatusRequestEntityTooLarge || !strings.Contains(body, "nothing was written") {
			t.Errorf("%s: status %d: %s", path, status, gist(body))
		}
		if most := mostOf(path) + 1<<20; file.taken > most {
			t.Errorf("%s: %d bytes were taken, %d are the limit", path, file.taken, most)
		}
		if r.MultipartForm != nil {
			_ = r.MultipartForm.RemoveAll()
		}
	}
	if entries() != before {
		t.Error("something was written")
	}
	if status, _ := get(t, h, "/stock"); status != http.StatusOK {
		t.Errorf("afterwards the pages answer %d", status)
	}
}

// TestTooMuchIsRefused sends more than any form here does.
func TestTooMuchIsRefused(t *testing.T) {
	h := reading(t)
	r := httptest.NewRequest(http.MethodPost, "/write/note", strings.NewReader("text="+strings.Repeat("x", mostBody+1)))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	if res := ask(h, r); res.StatusCode != http.StatusRequestEntityTooLarge {
		t.Errorf("status %d", res.StatusCode)
	}
}

func TestNextLeadsNowhereElse(t *testing.T) {
	for to, want := range map[string]string{
		"/stock?by=lot": "/stock?by=lot", "": "/", "http://evil.example/": "/", "//evil.example/": "/", `/\evil.example`: "/", "stock": "/", "javascript:alert(1)": "/", "/a\r\nSet-Cookie: x=1": "/",
	} {
		if got := local(to); got != want {
			t.Errorf("local(%q) is %q, want %q", to, got, want)
		}
	}
}
