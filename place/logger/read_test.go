package logger

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"eyeup/weather/reading"
)

func mustRead(t *testing.T, text string) *Record {
	t.Helper()
	r, err := Read(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Two readings an hour make a mean; two hours between two readings lie on the line between
// them; three and more are not known. 50 °F is 10 °C and 42 °F is 5.56 °C by definition.
func TestRead(t *testing.T) {
	r := mustRead(t, "read out by the door\n# the spare thermometer\nTime,Temperature (°F),Humidity (%),Battery\n"+
		"2026-11-03 01:00,50,50,3\n2026-11-03 01:30,42,60,3\n2026-11-03 04:10,50,,3\n2026-11-03T08:00,NA,70,3\n2026-11-03 09:59,50F,70,3\n")
	want := map[int]float64{1: (10 + 50.0/9) / 2, 2: (2*(10+50.0/9)/2 + 10) / 3, 4: 10, 9: 10}
	for hour, celsius := range r.Series.Celsius {
		expected, known := want[hour]
		if hour == 3 {
			expected, known = ((10+50.0/9)/2+20)/3, true
		}
		if known != (celsius == celsius) || known && math.Abs(celsius-expected) > 1e-9 {
			t.Errorf("hour %d is %g, want %g", hour, celsius, expected)
		}
	}
	if len(r.Series.Celsius) != 24 || r.Readings != 4 || r.Missing != 1 || fmt.Sprint(r.Passed) != "[Battery]" {
		t.Errorf("%d hours, %d readings, %d missing, passed over %v", len(r.Series.Celsius), r.Readings, r.Missing, r.Passed)
	}
	if h := r.Series.Humidity; math.Abs(h[1]-0.55) > 1e-9 || h[4] == h[4] || math.Abs(h[9]-0.7) > 1e-9 {
		t.Errorf("humidity %v", h)
	}
}

// Date and time in columns of their own, a decimal comma, an hour that comes twice when
// summer time ends.
func TestShapes(t *testing.T) {
	r := mustRead(t, "Date;Time;Temp [C];RH\n2026-10-25;01:40;6,0;50%\n2026-10-25;01:10;7,0;\n2026-10-26;02:00;8,5;49\n")
	if c := r.Series.Celsius; len(c) != 48 || c[1] != 6.5 || c[26] != 8.5 {
		t.Errorf("got %v", c)
	}
}

func TestRefusals(t *testing.T) {
	head := "time,temperature (C)\n"
	for text, want := range map[string]string{
		"":                                       "no heading names a time and a temperature",
		"dear,friend\n":                          "no heading names a time and a temperature",
		head:                                     "there are no readings below the heading",
		head + "2026-11-03 01:00\n":              "line 2: 1 fields where the heading has 2",
		head + "01:00,4\n":                       "line 2: the line has no date",
		head + "2026-11-03 25:00,4\n":            "is not a time of day",
		head + "3/11/2026 01:00,4\n":             "is not a date in a known form",
		head + "2026-11-03 01:00,wet\n":          `"wet" is not a number`,
		head + "2026-11-03 01:00,90\n":           "90 °C, which is not plausible in a place for plants",
		head + "2026-11-03 01:00,4K\n":           "has an unknown unit",
		"time,temperature\n2026-11-03 01:00,4\n": "whether it is °C or °F",
		head + "2026-11-03 05:00,4\n2026-11-03 03:00,4\n":         "line 3: 2026-11-03 03:00 is earlier than the previous line",
		"time,temperature (C),humidity\n2026-11-03 01:00,4,140\n": `"140" is not a humidity`,
	} {
		_, err := Read(strings.NewReader(text))
		var fault *reading.Fault
		if !errors.As(err, &fault) || !strings.Contains(err.Error(), want) || fault.Do == "" {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}

// FuzzRead: whatever comes is read or refused; what is read is whole days of hours in bounds.
func FuzzRead(f *testing.F) {
	f.Add([]byte("time,temperature (F),humidity (%)\n2026-11-03 14:10,42.6,54\n2026-11-03 14:40,42.8,54\n"))
	f.Add([]byte("Date;Time;Temp [C]\n2026-10-25;01:40;6,0\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		r, err := Read(strings.NewReader(string(text)))
		if err != nil {
			return
		}
		if n := len(r.Series.Celsius); n == 0 || n%24 != 0 || n != len(r.Series.Humidity) {
			t.Fatalf("%d hours, %d of humidity", n, len(r.Series.Humidity))
		}
		for _, c := range r.Series.Celsius {
			if c < coldest || c > warmest {
				t.Fatalf("%g °C", c)
			}
		}
	})
}
