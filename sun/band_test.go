package sun_test

import (
	"testing"
	"time"

	"eyeup/internal/opendata"
	"eyeup/sun"
	"eyeup/weather/epw"
)

// TestOutdoorBands: a mean day outside brings 5 to 60 mol/m² over the United States and the
// year, and 5 to 30 in its north from December to March (Purdue HO-238-W and the berry
// pages of Ohio State University, read at second hand). The record is Chicago's typical
// year, an EPW file made of TMY3.
func TestOutdoorBands(t *testing.T) {
	records, err := epw.Read(opendata.Open(t, "hourly/chicago_tmy3.epw"))
	if err != nil {
		t.Fatal(err)
	}
	var light, days [13]float64
	record := records[0]
	for d := record.From; record.Span().Holds(d); d = d.AddDays(1) {
		if day := record.On(d); day.Sun == day.Sun {
			light[d.Month()] += float64(sun.Light(day.Sun))
			days[d.Month()]++
		}
	}
	for m := time.January; m <= time.December; m++ {
		if days[m] < 25 {
			t.Fatalf("%v has %g days of sun", m, days[m])
		}
		most := 60.0
		if m == time.December || m <= time.March {
			most = 30
		}
		if mean := light[m] / days[m]; mean < 5 || mean > most {
			t.Errorf("%v: a mean day brings %.1f mol/m², want 5 to %g", m, mean, most)
		}
	}
}
