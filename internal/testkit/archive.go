package testkit

import (
	"bytes"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"eyeup/internal/opendata"
)

// ArchiveStandIn serves what the archive serves: lists in its columns, and the record of one
// real station among invented ones.
func ArchiveStandIn(t *testing.T) *httptest.Server {
	t.Helper()
	record, err := io.ReadAll(opendata.Open(t, "daily/USW00094728_nyc-central-park.dly"))
	if err != nil {
		t.Fatal(err)
	}
	var inventory, stations strings.Builder
	for _, s := range []struct {
		id        string
		lat, long float64
		from, to  int
	}{{"USW00094728", 40.7789, -73.9692, 1869, 2020}, {"ZZ000000004", 41, -74, 1980, 2019}} {
		for _, e := range []string{"TMAX", "TMIN"} {
			fmt.Fprintf(&inventory, "%-11s %8.4f %9.4f %4s %4d %4d\n", s.id, s.lat, s.long, e, s.from, s.to)
		}
		fmt.Fprintf(&stations, "%-11s %8.4f %9.4f %6.1f %-2s %-30s %-3s %-3s %-5s\n", s.id, s.lat, s.long, 42.7, "ZZ", "A STATION", "", "", "")
	}
	files := map[string][]byte{
		"/ghcnd-inventory.txt": []byte(inventory.String()), "/ghcnd-stations.txt": []byte(stations.String()), "/all/USW00094728.dly": record,
	}
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		b, ok := files[r.URL.Path]
		if !ok {
			http.NotFound(w, r)
			return
		}
		w.Header().Set("ETag", `"1"`)
		http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(b))
	}))
	t.Cleanup(server.Close)
	return server
}
