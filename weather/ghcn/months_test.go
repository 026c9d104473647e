package ghcn

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/weather/reading"
)

// month writes a line as the readme, section III, lays it down: each day's value in five
// columns, then the flags of measurement, quality and source.
func month(id string, year, m int, element string, days map[int]string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s%04d%02d%s", id, year, m, element)
	for i := 1; i <= 31; i++ {
		if text, ok := days[i]; ok {
			b.WriteString(text)
		} else {
			b.WriteString("-9999   ")
		}
	}
	return b.String() + "\n"
}

const hill = "ZZ000000001"

func TestMonths(t *testing.T) {
	text := month(hill, 2019, 2, "TMIN", map[int]string{1: "  -55  7", 28: "   12 X7", 2: "    0  7"}) +
		month(hill, 2019, 2, "PRCP", map[int]string{1: "  100  7"}) +
		month(hill, 2019, 2, "TMAX", map[int]string{1: "   31  7", 2: "  -10  7"})
	records, err := ReadMonths(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	r := records[0]
	if len(r.Days) != 2 || r.From != civil.MustOn(2019, time.February, 1) {
		t.Fatalf("read %v", r.Span())
	}
	if d := r.Days[0]; d.Low.Celsius() != -5.5 || d.High.Celsius() != 3.1 {
		t.Errorf("1 February: %v", d)
	}
	if d := r.Days[1]; d.Low.IsKnown() || d.High.IsKnown() {
		t.Errorf("2 February, reversed: %v", d)
	}
	if len(r.Findings) != 2 || r.Findings[0].Line != 1 || !strings.Contains(r.Findings[0].What, "flags X, bounds check") {
		t.Errorf("found %v", r.Findings)
	}
}

func TestMonthsTakeLinesWithoutTrailingBlanks(t *testing.T) {
	text := strings.TrimRight(month(hill, 2019, 2, "TMIN", map[int]string{1: "  -55  7"}), " \n")
	records, err := ReadMonths(strings.NewReader(text))
	if err != nil || records[0].Days[0].Low.Celsius() != -5.5 {
		t.Errorf("%v, %v", records, err)
	}
}

func TestMonthsOfSeveralStations(t *testing.T) {
	other := "ZZ000000002"
	text := month(hill, 2019, 2, "TMIN", map[int]string{1: "  -55  7"}) + month(other, 2020, 2, "TMIN", map[int]string{29: "  -10  7"}) + month(hill, 2019, 2, "TMAX", map[int]string{1: "    5  7"})
	records, err := ReadMonths(strings.NewReader(text))
	if err != nil || len(records) != 2 {
		t.Fatalf("%v, %v", records, err)
	}
	if records[0].Station.ID != hill || records[1].Station.ID != other || records[1].From != civil.MustOn(2020, time.February, 29) {
		t.Errorf("%v and %v", records[0].Station, records[1].Station)
	}
}

func TestMonthsRefuse(t *testing.T) {
	good := month(hill, 2019, 2, "TMIN", map[int]string{1: "  -55  7"})
	for name, c := range map[string]struct {
		text string
		line int
	}{
		"cut in half":       {good + good[:120], 2},
		"cut in the head":   {good + good[:9], 2},
		"a letter":          {good + strings.Replace(good, "  -55", "  -5x", 1), 2},
		"month 13":          {good + strings.Replace(good, "201902", "201913", 1), 2},
		"30 February":       {month(hill, 2019, 2, "TMIN", map[int]string{30: "  -55  7"}), 1},
		"29 February":       {month(hill, 2019, 2, "TMIN", map[int]string{29: "  -55  7"}), 1},
		"a year before all": {strings.Replace(good, "2019", "1600", 1), 1},
		"too long":          {good + strings.TrimSuffix(good, "\n") + "   \n", 2},
		"rubbish":           {good + strings.Repeat("rubbish ", 33) + "\n", 2},
		"nothing":           {"", 0},
		"no temperature":    {strings.Replace(good, "TMIN", "PRCP", 1), 0},
	} {
		_, err := ReadMonths(strings.NewReader(c.text))
		var f *reading.Fault
		if !errors.As(err, &f) || f.Line != c.line || f.Do == "" {
			t.Errorf("%s: %v; want a refusal of line %d", name, err, c.line)
		}
	}
}
