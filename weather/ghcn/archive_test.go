package ghcn

import (
	"bufio"
	"bytes"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/opendata"
	"eyeup/weather"
)

// The counts below were taken from the files with awk, apart from those that name another source.

func read(t testing.TB, name string) []*weather.Record {
	t.Helper()
	records, err := Read(opendata.Open(t, "daily/"+name))
	if err != nil {
		t.Fatal(err)
	}
	return records
}

func missingLows(r *weather.Record) (n int) {
	for _, d := range r.Days {
		if !d.Low.IsKnown() {
			n++
		}
	}
	return n
}

func count(r *weather.Record, what string) (n int) {
	for _, f := range r.Findings {
		if strings.Contains(f.What, what) {
			n += f.Count
		}
	}
	return n
}

func TestCentralPark(t *testing.T) {
	records := read(t, "USW00094728_nyc-central-park.dly")
	if len(records) != 1 || records[0].Station.ID != "USW00094728" {
		t.Fatalf("read %d records", len(records))
	}
	r := records[0]
	if got := r.Span(); got.From.String() != "1869-01-01" || got.To.String() != "2020-01-03" {
		t.Errorf("the record spans %v", got)
	}
	// 7 of 55,154 days: 0.01 %
	if n := missingLows(r); n != 7 {
		t.Errorf("%d lows missing", n)
	}
	if n := count(r, "flags I, internal consistency"); n != 2 {
		t.Errorf("%d values flagged", n)
	}
	// The first line of the file: January 1869, 1st: -17 tenths high, -72 tenths low.
	// The lines of February 1934 and July 1936, which hold the record's extremes (-15 °F, 106 °F).
	for _, c := range []struct {
		date      civil.Date
		low, high float64
	}{
		{civil.MustOn(1869, time.January, 1), -7.2, -1.7},
		{civil.MustOn(1934, time.February, 9), -26.1, -13.3},
		{civil.MustOn(1936, time.July, 9), 25.0, 41.1},
	} {
		if d := r.On(c.date); d.Low.Celsius() != c.low || d.High.Celsius() != c.high {
			t.Errorf("%s: %v to %v", c.date, d.Low, d.High)
		}
	}
}

// TestCountsOfMissing checks the shares of missing lows that are told of the files: 0.44 % at
// Waterville, 1.2 % at Grand Forks, 44 % at Newport, none at Rennes, 41 % at Aalborg.
func TestCountsOfMissing(t *testing.T) {
	for _, c := range []struct {
		file, id, name string
		share, within  float64
		from, to       string
	}{
		{"USC00179151_waterville-me_and_niles-mi.csv", "USC00205892", "NILES MI US", 0, 0.001, "2009-08-01", "2016-01-01"},
		{"USC00179151_waterville-me_and_niles-mi.csv", "USC00179151", "WATERVILLE WWTP ME US", 0.0044, 0.00005 + 13.0/18628, "1965-01-01", "2016-01-01"},
		{"USC00323621_grand-forks-nd.csv", "USC00323621", "GRAND FORKS UNIVERSITY NWS ND US", 0.012, 0.0005, "1986-01-01", "2016-12-10"},
		{"newport-nh_44pc-missing_and_rennes.csv", "USC00275868", "NEWPORT NH US", 0.44, 0.005, "1970-12-02", "2016-01-01"},
		{"newport-nh_44pc-missing_and_rennes.csv", "FR000007130", "RENNES FR", 0, 0, "1965-01-01", "2016-01-01"},
		{"aalborg_41pc-missing_cr-line-ends.csv", "DAM00006030", "FLYVESTATION AALBORG DA", 0.41, 0.005, "1973-01-01", "2016-01-01"},
	} {
		found := false
		for _, r := range read(t, c.file) {
			if r.Station.ID != c.id {
				continue
			}
			found = true
			if share := float64(missingLows(r)) / float64(len(r.Days)); math.Abs(share-c.share) > c.within {
				t.Errorf("%s: %.4f of the lows are missing", c.id, share)
			}
			if s := r.Span(); r.Station.Name != c.name || s.From.String() != c.from || s.To.String() != c.to {
				t.Errorf("%s: %q, %v", c.id, r.Station.Name, s)
			}
		}
		if !found {
			t.Errorf("%s holds no %s", c.file, c.id)
		}
	}
}

// within returns the lines of a table whose year lies from first to last.
func within(t *testing.T, file, id string, first, last int) io.Reader {
	t.Helper()
	var kept bytes.Buffer
	lines := bufio.NewScanner(opendata.Open(t, "daily/"+file))
	for lines.Scan() {
		f := strings.Split(lines.Text(), ",")
		year := f[len(f)-3][:4]
		if f[0] == "STATION" || strings.HasSuffix(f[0], id) && year >= strconv.Itoa(first) && year <= strconv.Itoa(last) {
			kept.WriteString(lines.Text() + "\n")
		}
	}
	return &kept
}

func TestReversedAtWaterville(t *testing.T) {
	records, err := Read(within(t, "USC00179151_waterville-me_and_niles-mi.csv", "USC00179151", 1981, 2010))
	if err != nil {
		t.Fatal(err)
	}
	r := records[0]
	if n := count(r, "high is below its low"); n != 13 {
		t.Errorf("%d days with reversed extremes in 1981 to 2010", n)
	}
	first := r.On(civil.MustOn(1982, time.September, 23))
	if first.Low.IsKnown() || first.High.IsKnown() {
		t.Errorf("a day with reversed extremes is %v to %v", first.Low, first.High)
	}
}

func TestGrandForksSaysWhere(t *testing.T) {
	s := read(t, "USC00323621_grand-forks-nd.csv")[0].Station
	if s.Latitude != 47.93333 || s.Longitude != -97.08333 || s.Elevation != 253 {
		t.Errorf("the station lies at %v, %v, %v", s.Latitude, s.Longitude, s.Elevation)
	}
}

// TestNewportImpossible checks that a low of 276.7 °C, line 190, is reported and left out.
func TestNewportImpossible(t *testing.T) {
	r := read(t, "newport-nh_44pc-missing_and_rennes.csv")[0]
	for _, f := range r.Findings {
		if f.Line == 190 && f.Count == 1 && strings.Contains(f.What, "276.7") {
			return
		}
	}
	t.Errorf("found %v", r.Findings)
}

func BenchmarkMonths(b *testing.B) {
	f := opendata.Open(b, "daily/USW00094728_nyc-central-park.dly")
	b.SetBytes(f.Size())
	b.ReportAllocs()
	for b.Loop() {
		if _, err := f.Seek(0, io.SeekStart); err != nil {
			b.Fatal(err)
		}
		if _, err := Read(f); err != nil {
			b.Fatal(err)
		}
	}
}
