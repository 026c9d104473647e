package archive

import (
	"bytes"
	"context"
	"crypto/sha256"
	"fmt"
	"io"
	"math"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"eyeup/internal/shared"
)

const park = "USW00094728"

// stand is a server that stands in for the archive: it serves files, breaks connections
// after so many bytes, and counts.
type stand struct {
	files    map[string][]byte
	breaks   int64 // after how many bytes each answer stops; 0 never
	asked    atomic.Int64
	sent     atomic.Int64
	versions string
	broken   bool // answers 503
}

func (s *stand) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	s.asked.Add(1)
	if s.broken {
		http.Error(w, "busy", http.StatusServiceUnavailable)
		return
	}
	b, ok := s.files[r.URL.Path]
	if !ok {
		http.NotFound(w, r)
		return
	}
	w.Header().Set("ETag", fmt.Sprintf(`"%x%s"`, sha256.Sum256(b), s.versions))
	http.ServeContent(&breaking{w, s, 0}, r, "", time.Time{}, bytes.NewReader(b))
}

// breaking is an answer that stops short.
type breaking struct {
	http.ResponseWriter
	stand *stand
	sent  int64
}

func (b *breaking) Write(p []byte) (int, error) {
	if most := b.stand.breaks; most > 0 && b.sent+int64(len(p)) > most {
		b.stand.sent.Add(most - b.sent)
		_, _ = b.ResponseWriter.Write(p[:most-b.sent])
		_ = http.NewResponseController(b.ResponseWriter).Flush()
		panic(http.ErrAbortHandler)
	}
	b.sent += int64(len(p))
	b.stand.sent.Add(int64(len(p))) // before the other side has them and counts
	return b.ResponseWriter.Write(p)
}

// inventoryLine and stationLine are in the columns of the readme, sections VII and IV.
func inventoryLine(id string, latitude, longitude float64, element string, from, to int) string {
	return fmt.Sprintf("%-11s %8.4f %9.4f %4s %4d %4d\n", id, latitude, longitude, element, from, to)
}

func stationLine(id string, latitude, longitude, elevation float64, name string) string {
	return fmt.Sprintf("%-11s %8.4f %9.4f %6.1f %-2s %-30s %-3s %-3s %-5s\n", id, latitude, longitude, elevation, "ZZ", name, "", "", "")
}

// lists are of Central Park and invented stations about it.
func lists() map[string][]byte {
	var inventory, stations strings.Builder
	for _, s := range []struct {
		id                  string
		latitude, longitude float64
		from, to            int
		elements            string
		name                string
		elevation           float64
	}{
		{park, 40.7789, -73.9692, 1869, 2020, "TMAX TMIN PRCP", "ALDER PARK", 42.7},
		{"ZZ000000001", 40.80, -73.97, 1995, 2020, "TMAX TMIN", "SHORT RECORD", 10},
		{"ZZ000000002", 40.80, -73.97, 1950, 1990, "TMAX TMIN", "ENDED LONG AGO", 10},
		{"ZZ000000003", 40.80, -73.97, 1900, 2020, "TMAX PRCP", "NO LOWS", 10},
		{"ZZ000000004", 41.00, -74.00, 1980, 2019, "TMAX TMIN", "NEXT NEAREST", -999.9},
		{"ZZ000000005", -33.9, 151.2, 1900, 2020, "TMAX TMIN", "FAR AWAY", 39},
	} {
		for e := range strings.FieldsSeq(s.elements) {
			inventory.WriteString(inventoryLine(s.id, s.latitude, s.longitude, e, s.from, s.to))
		}
		stations.WriteString(stationLine(s.id, s.latitude, s.longitude, s.elevation, s.name))
	}
	return map[string][]byte{"/ghcnd-inventory.txt": []byte(inventory.String()), "/ghcnd-stations.txt": []byte(stations.String())}
}

func serve(t *testing.T, s *stand) *Archive {
	t.Helper()
	server := httptest.NewServer(s)
	t.Cleanup(server.Close)
	return &Archive{Base: server.URL, Folder: t.TempDir()}
}

func parkRecord(t *testing.T) []byte {
	t.Helper()
	b, err := io.ReadAll(shared.Open(t, "daily/USW00094728_nyc-central-park.dly"))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestNearest(t *testing.T) {
	s := &stand{files: lists()}
	a := serve(t, s)
	near, err := a.Nearest(context.Background(), 40.80, -73.97, Long, 10)
	if err != nil {
		t.Fatal(err)
	}
	if len(near) != 3 || near[0].ID != park || near[1].ID != "ZZ000000004" || near[2].ID != "ZZ000000005" {
		t.Fatalf("found %v", near)
	}
	n := near[0]
	if n.Name != "ALDER PARK" || n.Elevation != 42.7 || n.From != 1869 || n.To != 2020 || n.Years() != 152 || n.Latitude != 40.7789 {
		t.Errorf("the nearest is %+v", n)
	}
	// 0.0211° of latitude are 2.346 km
	if math.Abs(float64(n.Distance)-2346) > 10 {
		t.Errorf("it lies %.0f m away", float64(n.Distance))
	}
	if !math.IsNaN(float64(near[1].Elevation)) {
		t.Errorf("an elevation of -999.9 m became %v", near[1].Elevation)
	}
	// the lists are kept: looking again brings nothing but word that they are whole
	sent := s.sent.Load()
	if _, err := a.Nearest(context.Background(), -34, 151, Long, 1); err != nil || s.sent.Load() > sent+100 {
		t.Errorf("looking again: %v, %d bytes more", err, s.sent.Load()-sent)
	}
	// until the archive has new ones
	s.versions = "new"
	if _, err := a.Nearest(context.Background(), -34, 151, Long, 1); err != nil || s.sent.Load() < sent+500 {
		t.Errorf("new lists: %v, %d bytes more", err, s.sent.Load()-sent)
	}
	if _, err := a.Nearest(context.Background(), 91, 0, Long, 1); err == nil {
		t.Error("latitude 91 is taken")
	}
	if _, err := a.Nearest(context.Background(), 40, 0, 300, 1); err == nil || !strings.Contains(err.Error(), "fewer years") {
		t.Errorf("300 years: %v", err)
	}
}

// TestDistance uses the length of a degree on a sphere of 6371.0088 km, 111.195 km, and half its girth.
func TestDistance(t *testing.T) {
	for _, c := range []struct{ a, b, c, d, want float64 }{
		{44, -69, 45, -69, 111195}, {0, 179.5, 0, -179.5, 111195}, {60, 0, 60, 1, 55597}, {90, 0, -90, 0, 20015115}, {10, 20, 10, 20, 0},
	} {
		if got := float64(distance(c.a, c.b, c.c, c.d)); math.Abs(got-c.want) > 5 {
			t.Errorf("%v: %.0f m", c, got)
		}
	}
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
	if _, err := a.Fetch(ctx, park, path); err == nil || !strings.Contains(err.Error(), "goes on from there") {
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
		"../../secret": "is no station",
		"usw00094728":  "is no station",
		"ZZ00000000N":  "no such file",
		"ZZ00000000P":  "is not how a month",
		"ZZ00000000H":  "is not how a month",
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
		if err := a.fetch(context.Background(), "f", path, 100_000); err == nil || !strings.Contains(err.Error(), "look at the archive's address") {
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

func TestDamagedLists(t *testing.T) {
	for name, damage := range map[string]func(map[string][]byte){
		"inventory cut": func(m map[string][]byte) {
			m["/ghcnd-inventory.txt"] = append(m["/ghcnd-inventory.txt"], "USW00094"...)
		},
		"no number": func(m map[string][]byte) {
			m["/ghcnd-inventory.txt"] = bytes.Replace(m["/ghcnd-inventory.txt"], []byte("40.7789"), []byte("north  "), 1)
		},
		"stations cut": func(m map[string][]byte) { m["/ghcnd-stations.txt"] = []byte(park + "\n") },
	} {
		files := lists()
		damage(files)
		a := serve(t, &stand{files: files})
		if _, err := a.Nearest(context.Background(), 40, -74, Long, 1); err == nil || !strings.Contains(err.Error(), "remove the file") {
			t.Errorf("%s: %v", name, err)
		}
	}
}
