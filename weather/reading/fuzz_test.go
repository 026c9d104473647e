package reading_test

import (
	"bytes"
	"errors"
	"io"
	"math"
	"strings"
	"testing"

	"eyeup/weather"
	"eyeup/weather/epw"
	"eyeup/weather/ghcn"
	"eyeup/weather/meteireann"
	"eyeup/weather/reading"
	"eyeup/weather/table"
	"eyeup/weather/tmy3"
)

// reader is one format's way in.
type reader func(io.Reader) ([]*weather.Record, error)

// fuzz feeds a reader with anything. Whatever it is given, it does not panic; it refuses in
// one line that says what to do, or gives records whose every day is possible.
func fuzz(f *testing.F, read reader) {
	f.Helper()
	f.Fuzz(func(t *testing.T, text []byte) {
		records, err := read(bytes.NewReader(text))
		if err != nil {
			refusal(t, err)
			return
		}
		if len(records) == 0 {
			t.Error("neither a record nor a refusal")
		}
		for _, r := range records {
			sound(t, r)
		}
	})
}

func refusal(t *testing.T, err error) {
	t.Helper()
	var fault *reading.Fault
	if !errors.As(err, &fault) || fault.What == "" || fault.Do == "" {
		t.Errorf("a refusal that does not say what to do: %v", err)
	}
	if strings.ContainsAny(err.Error(), "\n\r\x00") {
		t.Errorf("a refusal of several lines: %q", err)
	}
}

func sound(t *testing.T, r *weather.Record) {
	t.Helper()
	if len(r.Days) == 0 || r.From.IsZero() {
		t.Error("a record without days")
	}
	for _, d := range r.Days {
		for _, c := range []float64{d.Low.Celsius(), d.High.Celsius(), d.DewPoint.Celsius(), d.Soil.Celsius()} {
			if !math.IsNaN(c) && !(c >= reading.Coldest && c <= reading.Warmest) {
				t.Fatalf("a temperature of %v", c)
			}
		}
		if d.High.Below(d.Low) {
			t.Fatalf("a high of %v below a low of %v", d.High, d.Low)
		}
		if s := float64(d.Sun); !math.IsNaN(s) && !(s >= 0 && s <= 60e6) {
			t.Fatalf("a sun of %v J/m²", s)
		}
	}
	for _, f := range r.Findings {
		if f.Line < 1 || f.Count < 1 || f.What == "" || strings.ContainsAny(f.What, "\n\r\x00") {
			t.Fatalf("a finding of %+v", f)
		}
	}
}

func FuzzMonths(f *testing.F)     { fuzz(f, ghcn.ReadMonths) }
func FuzzTable(f *testing.F)      { fuzz(f, ghcn.ReadTable) }
func FuzzMetEireann(f *testing.F) { fuzz(f, meteireann.Read) }
func FuzzEPW(f *testing.F)        { fuzz(f, epw.Read) }
func FuzzTMY3(f *testing.F)       { fuzz(f, tmy3.Read) }
func FuzzPlain(f *testing.F)      { fuzz(f, table.Read) }

// FuzzRecognise checks that no format is confused by the first bytes of a file.
func FuzzRecognise(f *testing.F) {
	f.Fuzz(func(_ *testing.T, head []byte) {
		for _, known := range []func([]byte) bool{ghcn.RecognisesMonths, ghcn.RecognisesTable, meteireann.Recognises, epw.Recognises, tmy3.Recognises, table.Recognises} {
			known(head)
		}
	})
}
