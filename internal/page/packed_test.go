package page

import (
	"bytes"
	"compress/gzip"
	"io"
	"net/http"
	"net/http/httptest"
	"testing"
)

// TestPagesArePacked asks as a browser does that takes gzip, and as one that does not: both
// read the same, in fewer bytes; the style and the script are not sent twice.
func TestPagesArePacked(t *testing.T) {
	h := reading(t)
	for _, path := range []string{"/season", "/stock", "/look/style.css", "/look/script.js"} {
		_, plain := get(t, h, path)
		r := httptest.NewRequest(http.MethodGet, path, nil)
		r.Header.Set("Accept-Encoding", "gzip, deflate, br")
		res := ask(h, r)
		if res.Header.Get("Content-Encoding") != "gzip" || res.Header.Get("Vary") != "Accept-Encoding" {
			t.Fatalf("%s: sent as %q, varying by %q", path, res.Header.Get("Content-Encoding"), res.Header.Get("Vary"))
		}
		packed, err := io.ReadAll(res.Body)
		if err != nil {
			t.Fatal(err)
		}
		if len(packed)*2 > len(plain) {
			t.Errorf("%s: %d bytes are packed into %d", path, len(plain), len(packed))
		}
		if text := unpacked(t, packed); text != plain {
			t.Errorf("%s reads otherwise when it is packed", path)
		}
		tag := res.Header.Get("Etag")
		if tag == "" {
			continue
		}
		again := httptest.NewRequest(http.MethodGet, path, nil)
		again.Header.Set("If-None-Match", tag)
		if res := ask(h, again); res.StatusCode != http.StatusNotModified {
			t.Errorf("%s is sent again to a browser that has it: status %d", path, res.StatusCode)
		}
	}
}

func unpacked(t *testing.T, packed []byte) string {
	t.Helper()
	from, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(from)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
