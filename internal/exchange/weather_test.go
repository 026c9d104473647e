package exchange

import (
	"io"
	"runtime"
	"strings"
	"testing"

	"eyeup/frost"
	"eyeup/internal/opendata"
	"eyeup/quantity"
	"eyeup/sun"
)

// TestReadWeatherFindsFormats reads a file of every format without being told which it is.
func TestReadWeatherFindsFormats(t *testing.T) {
	for _, c := range []struct {
		file     string
		stations string
		days     int // of the first
	}{
		{"daily/USW00094728_nyc-central-park.dly", "USW00094728", 55154},
		{"daily/USC00179151_waterville-me_and_niles-mi.csv", "USC00205892 USC00179151", 2345},
		{"daily/USC00323621_grand-forks-nd.csv", "USC00323621", 11302},
		{"daily/newport-nh_44pc-missing_and_rennes.csv", "USC00275868 FR000007130", 16467},
		{"daily/aalborg_41pc-missing_cr-line-ends.csv", "DAM00006030", 15706},
		{"daily/mullingar_dly875.csv", "MULLINGAR", 18833},
		{"hourly/chicago_tmy3.epw", "725300", 365},
		{"hourly/greensboro_tmy3.csv", "723170", 365},
	} {
		records, err := ReadWeather(c.file, opendata.Open(t, c.file))
		if err != nil {
			t.Error(err)
			continue
		}
		var ids []string
		for _, r := range records {
			ids = append(ids, r.Station.ID)
		}
		if got := strings.Join(ids, " "); got != c.stations || len(records[0].Days) != c.days {
			t.Errorf("%s: stations %s, %d days", c.file, got, len(records[0].Days))
		}
	}
	plain := "date,low (F),high (F)\n2026-05-10,38,57\n"
	if records, err := ReadWeather("weather.csv", strings.NewReader(plain)); err != nil || len(records) != 1 {
		t.Errorf("a plain table: %v", err)
	}
}

func TestReadWeatherRefuses(t *testing.T) {
	for name, c := range map[string]struct{ text, want string }{
		"empty":          {"", "w.csv: the file is empty; "},
		"prose":          {"Dear friend,\nit froze.\n", `w.csv: line 1: a file that begins with "Dear friend," is not a known weather file; give a GHCN-Daily .dly file, or `},
		"gzip":           {"\x1f\x8b\x08\x00", "w.csv: line 1: the file is packed with gzip; "},
		"binary":         {"\x7fELF\x00\x00\x00", "w.csv: line 1: the line has bytes that are not text; "},
		"no unit":        {"date,low,high\n2026-05-10,38,57\n", `w.csv: line 2: column "low": neither the heading nor "38" says the unit; write C, F`},
		"cut":            {"STATION,STATION_NAME,DATE,TMAX,TMIN\nGHCND:ZZ1,HILL,2019", "w.csv: line 2: the file stops within a line, after 3 of 5 fields; fetch the file again"},
		"page, not data": {"<!DOCTYPE html>\n<html>", `w.csv: line 1: a file that begins with "<!DOCTYPE html>" is not a known weather file; `},
	} {
		_, err := ReadWeather("w.csv", strings.NewReader(c.text))
		if err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%s: %v\nwant %s", name, err, c.want)
		}
	}
}

// endless repeats a piece of text, 300 MB of it, and counts what was read.
type endless struct {
	head, piece string
	at          int
}

const threeHundredMB = 300 << 20

func (e *endless) Read(p []byte) (int, error) {
	if e.at >= threeHundredMB {
		return 0, io.EOF
	}
	n := 0
	for n < len(p) {
		from := e.head
		at := e.at + n
		if at >= len(e.head) {
			from, at = e.piece, (at-len(e.head))%len(e.piece)
		}
		n += copy(p[n:], from[at:])
	}
	e.at += n
	return n, nil
}

// TestReadWeatherGivesUpEarly checks that 300 MB of rubbish is refused after a megabyte at most,
// whatever it begins like.
func TestReadWeatherGivesUpEarly(t *testing.T) {
	for name, e := range map[string]*endless{
		"one line":        {piece: "rubbish "},
		"prose":           {piece: "it froze again\n"},
		"zeros":           {piece: "\x00\x00\x00\x00"},
		"after a heading": {head: "date,low (C),high (C)\n", piece: "rubbish "},
		"archive's table": {head: "STATION,STATION_NAME,DATE,TMAX,TMIN\n", piece: "rubbish\n"},
		"Met Éireann":     {head: "Station Name: A\n", piece: "rubbish\n"},
		"EPW":             {head: "LOCATION,A\n", piece: "rubbish\n"},
		"a .dly":          {head: "ZZ000000001201902TMIN", piece: "-9999   "},
		"no ends":         {head: "date,low (C),high (C)\n", piece: ",,,,,,"},
	} {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, err := ReadWeather("w", e)
		runtime.ReadMemStats(&after)
		if err == nil || e.at > 1<<20 {
			t.Errorf("%s: %v after %d bytes", name, err, e.at)
		}
		if used := after.TotalAlloc - before.TotalAlloc; used > 4<<20 {
			t.Errorf("%s: %d bytes of memory", name, used)
		}
	}
}

func TestStation(t *testing.T) {
	records, err := ReadWeather("w", opendata.Open(t, "daily/USC00179151_waterville-me_and_niles-mi.csv"))
	if err != nil {
		t.Fatal(err)
	}
	for _, id := range []string{"usc00179151", "GHCND:USC00179151"} {
		r, err := Station(records, id)
		if err != nil || r.Station.Name != "WATERVILLE WWTP ME US" {
			t.Errorf("%s: %v, %v", id, r, err)
		}
	}
	for id, want := range map[string]string{
		"":    "the weather file has 2 stations; name one of these: USC00205892 NILES MI US (2009 to 2016), USC00179151 WATERVILLE WWTP ME US (1965 to 2016)",
		"XX1": `the weather file has no station "XX1"; name one of these: USC00205892 NILES MI US (2009 to 2016), `,
	} {
		if _, err := Station(records, id); err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("Station(%q): %v", id, err)
		}
	}
	if r, err := Station(records[:1], ""); err != nil || r != records[0] {
		t.Errorf("the only station: %v, %v", r, err)
	}
	if _, err := Station(nil, ""); err == nil {
		t.Error("a station out of none")
	}
}

// BenchmarkFreezeTable goes from a .dly file of 4 MB to the dates of last and first freeze.
func BenchmarkFreezeTable(b *testing.B) {
	f := opendata.Open(b, "daily/USW00094728_nyc-central-park.dly")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := f.Seek(0, io.SeekStart); err != nil {
			b.Fatal(err)
		}
		records, err := ReadWeather("park", f)
		if err != nil {
			b.Fatal(err)
		}
		freezes := frost.Dates(records[0], sun.Site{Latitude: 40.8}, quantity.Celsius(0), 1900, 1999)
		if spring := freezes.Spring(); spring.Middle.IsZero() {
			b.Fatal("no spring")
		}
	}
}
