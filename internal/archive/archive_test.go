package archive

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"eyeup/internal/opendata"
)

const park = "USW00094728"

func parkRecord(t *testing.T) []byte {
	t.Helper()
	b, err := io.ReadAll(opendata.Open(t, "daily/USW00094728_nyc-central-park.dly"))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestFetch(t *testing.T) {
	b := parkRecord(t)
	s := &stand{files: map[string][]byte{"/all/" + park + ".dly": b}}
	a := serve(t, s)
	var last Progress
	steps := 0
	a.Progress = func(p Progress) { last, steps = p, steps+1 }
	path := filepath.Join(t.TempDir(), "weather.dly")
	f, err := a.Fetch(context.Background(), park, path)
	if err != nil {
		t.Fatal(err)
	}
	// 7 of 55,154 lows are missing, counted with awk
	if f.Bytes != int64(len(b)) || f.Low != 55154-7 || len(f.Record.Days) != 55154 {
		t.Errorf("fetched %d bytes, %d lows of %d days", f.Bytes, f.Low, len(f.Record.Days))
	}
	if last.Done != f.Bytes || last.Total != f.Bytes || steps < 3 {
		t.Errorf("%d steps, the last %+v", steps, last)
	}
	clean(t, path, b)
}

// clean checks that path holds b, and that nothing else was left beside it.
func clean(t *testing.T, path string, b []byte) {
	t.Helper()
	got, err := os.ReadFile(path)
	if err != nil || !bytes.Equal(got, b) {
		t.Errorf("%d bytes at the path instead of %d, %v", len(got), len(b), err)
	}
	beside, _ := os.ReadDir(filepath.Dir(path))
	if len(beside) != 1 {
		t.Errorf("beside the file lie %v", beside)
	}
}

// TestFetchGoesOn breaks the connection after every megabyte; no byte comes twice.
func TestFetchGoesOn(t *testing.T) {
	b := parkRecord(t)
	s := &stand{files: map[string][]byte{"/all/" + park + ".dly": b}, breaks: 1 << 20}
	a := serve(t, s)
	path := filepath.Join(t.TempDir(), "weather.dly")
	if _, err := a.Fetch(context.Background(), park, path); err != nil {
		t.Fatal(err)
	}
	if s.asked.Load() != 4 || s.sent.Load() != int64(len(b)) {
		t.Errorf("asked %d times, %d bytes sent for %d", s.asked.Load(), s.sent.Load(), len(b))
	}
	clean(t, path, b)
}

// TestFetchBrokenOff breaks off in the middle, and fetches the rest later.
func TestFetchBrokenOff(t *testing.T) {
	b := parkRecord(t)
	s := &stand{files: map[string][]byte{"/all/" + park + ".dly": b}}
	a := serve(t, s)
	path := filepath.Join(t.TempDir(), "weather.dly")
	ctx, stop := context.WithCancel(context.Background())
	a.Progress = func(p Progress) {
		if p.Done > 1<<20 {
			stop()
		}
	}
	if _, err := a.Fetch(ctx, park, path); err == nil || !strings.Contains(err.Error(), "resumes there") {
		t.Fatalf("broken off: %v", err)
	}
	info, err := os.Stat(path + ".part")
	if err != nil || info.Size() < 1<<20 {
		t.Fatalf("%v, %v", info, err)
	}
	first := Progress{}
	a.Progress = func(p Progress) {
		if first.Name == "" {
			first = p
		}
	}
	if _, err := a.Fetch(context.Background(), park, path); err != nil {
		t.Fatal(err)
	}
	if first.Done < info.Size() {
		t.Errorf("went on from %d of %d bytes", first.Done, info.Size())
	}
	clean(t, path, b)
}

// TestFetchStartsAnew checks that a new version of a file is not pieced onto an old one.
func TestFetchStartsAnew(t *testing.T) {
	b := parkRecord(t)
	s := &stand{files: map[string][]byte{"/all/" + park + ".dly": b}}
	a := serve(t, s)
	path := filepath.Join(t.TempDir(), "weather.dly")
	for p, text := range map[string]string{path + ".part": strings.Repeat("old", 1000), version(path + ".part"): `"old"`} {
		if err := os.WriteFile(p, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := a.Fetch(context.Background(), park, path); err != nil {
		t.Fatal(err)
	}
	clean(t, path, b)
}

// TestFetchGivesUp checks that an archive that breaks off after every few bytes is not
// asked for ever.
func TestFetchGivesUp(t *testing.T) {
	b := parkRecord(t)
	s := &stand{files: map[string][]byte{"/all/" + park + ".dly": b}, breaks: 1000}
	a := serve(t, s)
	if _, err := a.Fetch(context.Background(), park, filepath.Join(t.TempDir(), "w")); err == nil || s.asked.Load() != mostTriesEver {
		t.Errorf("asked %d times, %v", s.asked.Load(), err)
	}
}

// TestFetchAfterSilence checks that an archive that falls silent is asked again.
func TestFetchAfterSilence(t *testing.T) {
	b := parkRecord(t)
	s := &stand{files: map[string][]byte{"/all/" + park + ".dly": b}}
	silent := true
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if silent {
			silent = false
			<-r.Context().Done()
			return
		}
		s.ServeHTTP(w, r)
	}))
	t.Cleanup(server.Close)
	a := &Archive{Base: server.URL, Patience: 200 * time.Millisecond}
	path := filepath.Join(t.TempDir(), "weather.dly")
	if _, err := a.Fetch(context.Background(), park, path); err != nil || silent {
		t.Fatal(err)
	}
	clean(t, path, b)
}

// TestFetchStaysEncrypted checks that the archive can't send anyone to an open address.
func TestFetchStaysEncrypted(t *testing.T) {
	server := httptest.NewServer(http.RedirectHandler("http://archive.invalid/x.dly", http.StatusFound))
	t.Cleanup(server.Close)
	a := &Archive{Base: server.URL}
	if _, err := a.Fetch(context.Background(), park, filepath.Join(t.TempDir(), "w")); err == nil || !strings.Contains(err.Error(), "not encrypted") {
		t.Errorf("got %v", err)
	}
}

func TestFetchRefuses(t *testing.T) {
	page := []byte("<!DOCTYPE html>\n<title>Sign in to this network</title>\n")
	half := []byte(strings.Repeat("x", 100))
	other := []byte(fmt.Sprintf("%-21s", "ZZ000000009201902TMIN") + "  -55  7" + strings.Repeat("-9999   ", 30) + "\n")
	s := &stand{files: map[string][]byte{"/all/ZZ00000000P.dly": page, "/all/ZZ00000000H.dly": half, "/all/ZZ00000000O.dly": other, "/all/ZZ00000000E.dly": nil}}
	a := serve(t, s)
	for id, want := range map[string]string{
		"../../secret": "is not a station",
		"usw00094728":  "is not a station",
		"ZZ00000000N":  "no such file",
		"ZZ00000000P":  "is not the start of a month",
		"ZZ00000000H":  "is not the start of a month",
		"ZZ00000000O":  "another station",
		"ZZ00000000E":  "the file is empty",
	} {
		path := filepath.Join(t.TempDir(), "weather.dly")
		if _, err := a.Fetch(context.Background(), id, path); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v; want %s", id, err, want)
		}
		if _, err := os.Stat(path); err == nil {
			t.Errorf("%s: a file was left", id)
		}
	}
	s.broken = true
	if _, err := a.Fetch(context.Background(), park, filepath.Join(t.TempDir(), "w")); err == nil || !strings.Contains(err.Error(), "503") || s.asked.Load() > 20 {
		t.Errorf("busy: %v", err)
	}
}

// TestFetchKeepsTheOld checks that a failed fetch leaves the file of before.
func TestFetchKeepsTheOld(t *testing.T) {
	a := serve(t, &stand{files: map[string][]byte{"/all/" + park + ".dly": []byte("rubbish\n")}})
	path := filepath.Join(t.TempDir(), "weather.dly")
	if err := os.WriteFile(path, []byte("old"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := a.Fetch(context.Background(), park, path); err == nil {
		t.Error("rubbish is taken")
	}
	clean(t, path, []byte("old"))
}

// TestTooLong checks the bound on bytes, told before and untold.
func TestTooLong(t *testing.T) {
	for _, told := range []bool{true, false} {
		server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
			if told {
				w.Header().Set("Content-Length", "1000000")
			}
			for range 100 {
				if _, err := w.Write(make([]byte, 10000)); err != nil {
					return
				}
			}
		}))
		a := &Archive{Base: server.URL}
		path := filepath.Join(t.TempDir(), "f")
		if err := a.fetch(context.Background(), "f", path, 100_000); err == nil || !strings.Contains(err.Error(), "check the archive's address") {
			t.Errorf("told %v: %v", told, err)
		}
		if info, err := os.Stat(path); err == nil && info.Size() > 100_000 {
			t.Errorf("told %v: %d bytes were kept", told, info.Size())
		}
		server.Close()
	}
}

func TestAddress(t *testing.T) {
	for base, ok := range map[string]bool{
		"": true, "https://example.org/ghcn/": true, "http://127.0.0.1:8080": true, "http://localhost": true,
		"http://example.org": false, "ftp://example.org": false, "example.org": false, "https://": false, "://": false,
	} {
		if _, err := (&Archive{Base: base}).address("f"); (err == nil) != ok {
			t.Errorf("%q: %v", base, err)
		}
	}
}
