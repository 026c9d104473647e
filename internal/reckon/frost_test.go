package reckon

import (
	"encoding/json"
	"strings"
	"testing"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/opendata"
	"eyeup/internal/report"
	"eyeup/internal/testkit"
	"eyeup/quantity"
)

// watervilleFile is the file of Waterville ME and Niles MI, which says not where they lie.
func watervilleFile(t *testing.T) garden.WeatherFile {
	t.Helper()
	return garden.WeatherFile{
		Name: "weather.csv", Station: "USC00179151",
		File: opendata.Open(t, "daily/USC00179151_waterville-me_and_niles-mi.csv"),
	}
}

// The dates were computed independently with numpy (quantiles of type 8) from the same record; see package frost.
func TestFrost(t *testing.T) {
	a, err := Frost(FrostQuestion{
		WeatherFile: watervilleFile(t), From: 1981, To: 2010,
		Threshold: quantity.Fahrenheit(32), After: civil.MonthDay{Month: 5, Day: 22},
	})
	if err != nil {
		t.Fatal(err)
	}
	testkit.Holds(t, "reckon frost", a)
	var j struct {
		Years          int
		Spring, Autumn map[string]any
		Plant          []PlantOut `json:"plant_out"`
	}
	b, err := json.Marshal(a)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(b, &j); err != nil {
		t.Fatal(err)
	}
	for part, want := range map[string]string{"early": "04-29", "middle": "05-09", "late": "05-22"} {
		if j.Spring[part] != want {
			t.Errorf("spring %s: %v, want %s", part, j.Spring[part], want)
		}
	}
	for part, want := range map[string]string{"early": "09-24", "middle": "10-06", "late": "10-16"} {
		if j.Autumn[part] != want {
			t.Errorf("autumn %s: %v, want %s", part, j.Autumn[part], want)
		}
	}
	if j.Years != 30 || a.After.Later > 3 || a.After.Springs != 30 {
		t.Errorf("%d years, after 22 May %+v", j.Years, a.After)
	}
	if risk := j.Plant[3]; risk.Risk != 0.1 || risk.From != a.Spring.Late {
		t.Errorf("planted out at a risk of one in ten on %v, the late day is %v", risk.From, a.Spring.Late)
	}
	if out := testkit.Narrow(t, a); !strings.Contains(out, "last in spring     29 Apr            9 May       22 May") {
		t.Error(out)
	}
}

// If most years have no freeze, there is no date, and the answer says why.
func TestRareFrostHasNoDate(t *testing.T) {
	a, err := Frost(FrostQuestion{WeatherFile: watervilleFile(t), From: 1981, To: 2010, Threshold: quantity.Celsius(-32)})
	if err != nil {
		t.Fatal(err)
	}
	testkit.Holds(t, "reckon frost", a)
	if !a.Spring.Early.IsZero() || a.Spring.Reason == "" || a.Spring.Years < 28 {
		t.Errorf("%+v", a.Spring)
	}
	testkit.Narrow(t, a)
}

func TestFrostRefuses(t *testing.T) {
	for want, spoil := range map[string]func(*FrostQuestion){
		"swap --from and --to":         func(q *FrostQuestion) { q.From, q.To = 2010, 1981 },
		"too many gaps to date":        func(q *FrostQuestion) { q.From, q.To = 1901, 1903 },
		"name one of these: USC002058": func(q *FrostQuestion) { q.Station = "" },
		"latitude 95 lies outside":     func(q *FrostQuestion) { q.Latitude = report.Rounded(95, 0) },
	} {
		q := FrostQuestion{WeatherFile: watervilleFile(t)}
		spoil(&q)
		if _, err := Frost(q); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
}

func TestHours(t *testing.T) {
	date := civil.MustOn(1990, 5, 1)
	q := HoursQuestion{watervilleFile(t), date}
	q.Latitude = report.Rounded(44.55, 2)
	a, err := Hours(q)
	if err != nil {
		t.Fatal(err)
	}
	testkit.Holds(t, "reckon hours", a)
	testkit.Narrow(t, a)
	if len(a.Temperatures) != 24 || a.Latitude != 44.55 {
		t.Fatalf("%+v", a)
	}
	// The curve reaches the day's high two hours past noon: half an hour off, the hour
	// next to it has nearly all of it.
	if top := a.Temperatures[13]; top > a.High || top < a.High-0.02*(a.High-a.Low) {
		t.Errorf("the hour from 13 is %g on a day with a high of %g", top, a.High)
	}

	q = HoursQuestion{watervilleFile(t), date}
	if a, err = Hours(q); err != nil {
		t.Fatal(err)
	}
	if a.Latitude != garden.UsualLatitude || len(a.Notes) != 2 {
		t.Errorf("a latitude was assumed without a word: %+v", a.Notes)
	}
	q = HoursQuestion{watervilleFile(t), civil.MustOn(2020, 1, 1)}
	if _, err := Hours(q); err == nil || !strings.Contains(err.Error(), "the record runs from 1965-01-01") {
		t.Errorf("%v", err)
	}
}
