package exchange

import (
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"eyeup/internal/opendata"
	"eyeup/quantity"
)

// Made-up weather is the same for the same garden, says that it is made up, and its
// nights differ from the station's by the offset.
func TestMadeUpWeather(t *testing.T) {
	g := mustRead(t, folder(goodGarden, goodStock))
	at, err := g.LoadWeather(fstest.MapFS{})
	if err != nil {
		t.Fatal(err)
	}
	again, err := g.LoadWeather(fstest.MapFS{})
	if err != nil || !at.MadeUp || len(at.Days) < 365*madeUpYears {
		t.Fatalf("%d days made up %v, %v", len(at.Days), at.MadeUp, err)
	}
	for i, day := range at.Days {
		if day.Low != again.Days[i].Low || day.High != again.Days[i].High {
			t.Fatalf("day %d is %v, then %v", i, day, again.Days[i])
		}
	}
	offset := g.Offset
	g.Offset = Offset{}
	station, err := g.LoadWeather(fstest.MapFS{})
	if err != nil {
		t.Fatal(err)
	}
	for i := range station.Days {
		night, day := at.Days[i].Low.Sub(station.Days[i].Low), at.Days[i].High.Sub(station.Days[i].High)
		if math.Abs(float64(night-offset.Night)) > 1e-9 || math.Abs(float64(day-offset.Day)) > 1e-9 {
			t.Fatalf("day %d differs by %v and %v", i, night, day)
		}
	}
}

// The file holds two stations; the garden names one.
func TestWeatherFromAFile(t *testing.T) {
	beside := fstest.MapFS{"weather.csv": {Data: opendata.Read(t, "daily/USC00179151_waterville-me_and_niles-mi.csv")}}
	g := mustRead(t, folder(strings.Replace(goodGarden, `"made-up"`, `"weather.csv"`+"\nstation = \"USC00179151\"", 1), goodStock))
	record, err := g.LoadWeather(beside)
	if err != nil {
		t.Fatal(err)
	}
	if record.MadeUp || record.Station.ID != "USC00179151" || record.Span().To.Year() < 2010 {
		t.Errorf("got %+v", record.Station)
	}
	g.Weather.Station = ""
	if _, err := g.LoadWeather(beside); err == nil || !strings.Contains(err.Error(), "USC00179151") {
		t.Errorf("of two stations one was taken: %v", err)
	}
}

func TestWeatherThatIsNotThere(t *testing.T) {
	g := &Garden{Weather: Weather{File: "weather.csv"}, folder: "mine"}
	if _, err := g.LoadWeather(fstest.MapFS{}); err == nil || !strings.HasPrefix(err.Error(), "mine/weather.csv: ") {
		t.Errorf("got %v", err)
	}
	g.Weather.File = ""
	if _, err := g.LoadWeather(fstest.MapFS{}); err == nil || !strings.Contains(err.Error(), "normals") {
		t.Errorf("got %v", err)
	}
	g.Offset.Night = quantity.Kelvin
	if record, err := g.LoadWeather(fstest.MapFS{}); err == nil {
		t.Errorf("got %v", record)
	}
}
