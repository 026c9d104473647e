package desk

import (
	"context"
	"testing"

	"eyeup/internal/testkit"
)

// TestFetchNearest lets a draft fetch its climate from a stand-in of the archive, which
// serves the real record of one station.
func TestFetchNearest(t *testing.T) {
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	d := Draft{Name: "Test", Latitude: "40.8", Longitude: "-73.97", Elevation: "40 m", Zone: "America/New_York"}
	s, err := d.FetchNearest(context.Background(), testkit.ArchiveStandIn(t).URL)
	if err != nil {
		t.Fatal(err)
	}
	if s.ID != "USW00094728" || s.DistanceKm != 2.3 || d.File != "USW00094728.dly" || len(d.Content) != 4081860 {
		t.Errorf("%+v, %s, %d bytes", s, d.File, len(d.Content))
	}
	if err := d.CheckClimate(); err != nil {
		t.Error(err)
	}
	if _, err := (&Draft{Name: "Test", Latitude: "400"}).FetchNearest(context.Background(), "http://127.0.0.1:1"); err == nil {
		t.Error("a site that can't be is looked for")
	}
}
