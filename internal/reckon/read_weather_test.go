package reckon

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"eyeup/internal/opendata"
	"eyeup/internal/report"
	"eyeup/internal/testkit"
	"eyeup/quantity"
)

// TestReadWeatherCounts checks the documented shares of missing lows: 0.44 % at
// Waterville (82 lines with -9999, and 13 days reversed), 41 % at Aalborg.
func TestReadWeatherCounts(t *testing.T) {
	var files []WeatherFileAnswer
	for _, name := range []string{"daily/USC00179151_waterville-me_and_niles-mi.csv", "daily/aalborg_41pc-missing_cr-line-ends.csv", "daily/mullingar_dly875.csv"} {
		a, err := ReadWeather(name, opendata.Open(t, name))
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, *a)
	}
	a := Weather(files)
	waterville, aalborg, mullingar := a.Files[0].Stations[1], a.Files[1].Stations[0], a.Files[2].Stations[0]
	if waterville.Days != 18628 || waterville.NoLow != 95 || len(waterville.Findings) != 1 || waterville.Latitude != nil {
		t.Errorf("Waterville: %+v", waterville)
	}
	if share := float64(aalborg.NoLow) / float64(aalborg.Days); share < 0.405 || share > 0.415 {
		t.Errorf("Aalborg lacks %.3f of its lows", share)
	}
	if mullingar.Known != mullingar.Days || mullingar.LongestGap != 0 || mullingar.Sun != 6292 || *mullingar.Latitude != 53.537 {
		t.Errorf("Mullingar: %+v", mullingar)
	}
	testkit.Holds(t, "read weather", a)
	fits(t, a)
}

// fits fails the test where a printed line is too long for the page.
func fits(t *testing.T, a report.Answer) string {
	t.Helper()
	var out bytes.Buffer
	for _, units := range []quantity.System{quantity.Metric, quantity.US} {
		a.Print(&out, units)
	}
	for line := range strings.SplitSeq(out.String(), "\n") {
		if len([]rune(line)) > report.PageWidth {
			t.Errorf("too long: %q", line)
		}
	}
	return out.String()
}

func TestNearestWeather(t *testing.T) {
	folder := t.TempDir()
	told := 0
	q := NearestQuestion{
		Latitude: 40.8, Longitude: -73.97, Most: 10, Base: testkit.ArchiveStandIn(t).URL, Folder: filepath.Join(folder, "lists"),
		Out: filepath.Join(folder, "weather.dly"), Progress: func(string, int64, int64) { told++ },
	}
	a, err := NearestWeather(context.Background(), q)
	if err != nil {
		t.Fatal(err)
	}
	if len(a.Nearest) != 2 || !a.Nearest[0].IsFetched || a.Nearest[0].DistanceKm != 2.3 || a.Nearest[1].IsFetched || told < 4 {
		t.Errorf("%+v, progress told %d times", a.Nearest, told)
	}
	s := a.Files[0].Stations[0]
	if s.Days != 55154 || s.NoLow != 7 || *s.Latitude != 40.7789 || a.Files[0].Fetched != 4081860 {
		t.Errorf("%+v", a.Files[0])
	}
	testkit.Holds(t, "read weather", a)
	if text := fits(t, a); !strings.Contains(text, "* USW00094728") || !strings.Contains(text, "4.1 MB fetched") {
		t.Error(text)
	}
	if _, err := NearestWeather(context.Background(), q); err == nil || !strings.Contains(err.Error(), "is there already") {
		t.Errorf("writing over a file: %v", err)
	}
	q.Out, q.Station = filepath.Join(folder, "other.dly"), "ZZ999999999"
	if _, err := NearestWeather(context.Background(), q); err == nil || !strings.Contains(err.Error(), "not among") {
		t.Errorf("a station that is not listed: %v", err)
	}
	q.ListOnly = true
	listed, err := NearestWeather(context.Background(), q)
	if err != nil || len(listed.Files) != 0 {
		t.Errorf("%v, %v", listed, err)
	}
	testkit.Holds(t, "read weather", listed)
	if _, err := os.Stat(q.Out); err == nil {
		t.Error("a record was fetched though only the list was asked for")
	}
}
