package desk

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/opendata"
	"eyeup/internal/plans"
	"eyeup/internal/reckon"
	"eyeup/internal/testkit"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/season"
)

// winter is a logger's record from November to April: 5 °C until the middle of March, then
// 12 °C, every two hours, with a gap of two days.
func winter() string {
	var s strings.Builder
	s.WriteString("time,temperature (C),humidity (%),battery\n")
	for at := time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC); at.Year() == 2026 || at.Month() < 5; at = at.Add(2 * time.Hour) {
		warmth := 5.0
		if at.Year() == 2027 && at.YearDay() > 74 {
			warmth = 12
		}
		if at.Month() == time.January && (at.Day() == 10 || at.Day() == 11) {
			continue
		}
		fmt.Fprintf(&s, "%s,%.1f,80,3\n", at.Format("2006-01-02 15:04"), warmth)
	}
	return s.String()
}

func TestReadLogger(t *testing.T) {
	a, err := reckon.ReadLogger("cellar.csv", strings.NewReader(winter()))
	if err != nil {
		t.Fatal(err)
	}
	testkit.Holds(t, "read logger", a)
	// from 16 March on it is 12 °C; the mean of a week is 10 °C or more once five of seven days are
	if a.Stirs != civil.MustOn(2027, time.March, 20) {
		t.Errorf("it stirs from %v", a.Stirs)
	}
	// (15 × 5 + 16 × 12) / 31 °C in March, and the hour between the last cool reading and the
	// first warm one lies between them
	if len(a.Months) != 6 || a.Months[2].Days != 29 || a.Months[4].Mean != 8.62 || *a.Months[0].Humidity != 80 {
		t.Errorf("months %+v", a.Months)
	}
	if a.LongestGap != 49 || a.Coldest != 5 || a.Warmest != 12 || len(a.Passed) != 1 {
		t.Errorf("got %+v", a)
	}
	var out strings.Builder
	a.Print(&out, quantity.Metric)
	for line := range strings.Lines(out.String()) {
		if len([]rune(line)) > 81 {
			t.Errorf("wider than 80 columns: %q", line)
		}
	}
}

// loggedExample is the example garden with a warm spring in its cellar.
func loggedExample(t *testing.T) fstest.MapFS {
	t.Helper()
	folder := opendata.Example(t).(fstest.MapFS)
	garden := strings.Replace(string(folder["garden.toml"].Data), "crates      = 40", "crates      = 40\nlogged      = \"cellar.csv\"", 1)
	if !strings.Contains(garden, "cellar.csv") {
		t.Fatal("the example has no cellar of forty crates")
	}
	folder["garden.toml"] = &fstest.MapFile{Data: []byte(garden)}
	folder["cellar.csv"] = &fstest.MapFile{Data: []byte(winter())}
	return folder
}

// What a logger recorded goes with the garden into a book and out again, and stands behind
// the season: what waits in a cellar that grows warm in March comes up sooner once started.
func TestLoggedCellar(t *testing.T) {
	folder := loggedExample(t)
	b := newTestBook(t)
	if err := b.ReadFolder(folder, "example", civil.MustOn(2027, 1, 15)); err != nil {
		t.Fatal(err)
	}
	g, _, err := OpenBookGarden(b)
	if err != nil {
		t.Fatal(err)
	}
	out := testkit.Memory{MapFS: fstest.MapFS{}}
	if err := b.WriteFolder(out.Create); err != nil {
		t.Fatal(err)
	}
	if out.MapFS["cellar.csv"] == nil || string(out.MapFS["cellar.csv"].Data) != winter() {
		t.Error("the record did not come out again")
	}
	cellar, there := g.Garden.Place("cellar")
	if !there || cellar.Model.(place.Steady).Logged == nil {
		t.Fatal("the book's cellar has no record")
	}
	plain, err := garden.Open(opendata.Example(t), "example")
	if err != nil {
		t.Fatal(err)
	}
	if warm, cold := daysToUp(t, g), daysToUp(t, plain); warm >= cold {
		t.Errorf("from a warm cellar the first are up in %d days, from a cool one in %d", warm, cold)
	}
}

// daysToUp is the least number of days from start to up of the dahlias of the usual plan.
func daysToUp(t *testing.T, g *garden.Garden) int {
	t.Helper()
	least := 1000
	a, err := plans.Season(g, nil, civil.MustOn(2026, time.November, 16))
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range a.Plans {
		for _, b := range p.Batches {
			if b.Kind == "dahlia" && p.Name == season.Usual && !b.Dates.Up.Middle.IsZero() {
				least = min(least, int(b.Dates.Up.Middle.Sub(b.Dates.Start)))
			}
		}
	}
	return least
}
