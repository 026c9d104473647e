package page

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"eyeup/internal/desk"
	"eyeup/internal/stockbook"
)

// wanted is how many of a lot's variety are wanted in the patch, and kept in reserve.
func wanted(d *desk.Desk, variety string) (plant, reserve int) {
	for _, h := range d.Garden().Stock {
		if h.Variety.Name == variety {
			plant, reserve = plant+h.Plant, reserve+h.Reserve
		}
	}
	return plant, reserve
}

// TestAVarietyIsDescribed says how many of a lot's variety are wanted and what it is like,
// refuses what can't be, and takes it back.
func TestAVarietyIsDescribed(t *testing.T) {
	h, d := writing(t)
	lot, _ := clumps(t, d, 4)
	path := "/stock/" + string(lot.Code)
	beforePlant, beforeReserve := wanted(d, lot.Name())
	for field, bad := range map[string]string{"plant": "some", "reserve": "-1", "height": "120", "colour": "red", "timing": "soon"} {
		if status, body, _ := post(t, h, path+"/variety", url.Values{field: {bad}}); status != http.StatusUnprocessableEntity {
			t.Errorf("%s %q: status %d: %s", field, bad, status, gist(body))
		}
	}
	if plant, reserve := wanted(d, lot.Name()); plant != beforePlant || reserve != beforeReserve {
		t.Fatalf("what was refused changed %d and %d to %d and %d", beforePlant, beforeReserve, plant, reserve)
	}
	said := url.Values{"plant": {"41"}, "reserve": {"3"}, "timing": {"late"}, "colour": {"#123456"}, "height": {"120 cm"}}
	status, body, to := post(t, h, path+"/variety", said)
	if status != http.StatusSeeOther {
		t.Fatalf("status %d: %s", status, gist(body))
	}
	if plant, reserve := wanted(d, lot.Name()); plant != 41 || reserve != 3 {
		t.Errorf("%d are wanted and %d in reserve", plant, reserve)
	}
	_, body = get(t, h, path)
	for _, kept := range []string{"41 wanted in the patch, 3 in reserve", `value="#123456"`, `value="120 cm"`, "<option selected>late</option>"} {
		if !strings.Contains(body, kept) {
			t.Errorf("the lot's page lacks %s", kept)
		}
	}
	if status, body, _ := post(t, h, "/undo", url.Values{"entry": {wroteIn(t, to)}}); status != http.StatusSeeOther {
		t.Fatalf("undoing: status %d: %s", status, gist(body))
	}
	if plant, reserve := wanted(d, lot.Name()); plant != beforePlant || reserve != beforeReserve {
		t.Errorf("after undoing %d are wanted and %d in reserve", plant, reserve)
	}
}

// TestNothingWantedSaysWhatToDo takes in stock of which nothing is wanted: the pages that
// work out a season lead to where that is said, and work once it was.
func TestNothingWantedSaysWhatToDo(t *testing.T) {
	h, err := New(bareDesk(t), Options{Now: testNow, Today: testDay})
	if err != nil {
		t.Fatal(err)
	}
	post(t, h, "/write/taken-in", url.Values{"variety": {"Pale Heron"}, "kind": {"dahlia"}, "form": {"clump"}, "count": {"6"}, "place": {"cellar"}})
	for _, path := range []string{"/", "/season", "/patch"} {
		if status, body := get(t, h, path); status != http.StatusOK || !strings.Contains(body, `href="/stock?by=lot"`) {
			t.Errorf("%s: status %d: %s", path, status, gist(body))
		}
	}
	_, list := get(t, h, "/stock?by=lot")
	code := list[strings.Index(list, `href="/stock/`)+len(`href="/stock/`):][:5]
	if status, body, _ := post(t, h, "/stock/"+code+"/variety", url.Values{"plant": {"6"}}); status != http.StatusSeeOther {
		t.Fatalf("status %d: %s", status, gist(body))
	}
	if status, body := get(t, h, "/season"); status != http.StatusOK || !strings.Contains(body, "Pale Heron") {
		t.Errorf("the season: status %d: %s", status, gist(body))
	}
}

// bareDesk is a garden with a cellar, a warm room and a patch, and no stock.
func bareDesk(t *testing.T) *desk.Desk {
	t.Helper()
	b, err := stockbook.New(t.TempDir()+"/bare.book", testNow)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = b.Close() })
	draft := desk.Draft{Name: "Fern Bank", Latitude: "44.5", Longitude: "-69.6", Elevation: "30 m", Zone: "America/New_York", Units: "metric", Currency: "USD",
		Lows: strings.Fields("-13C -12C -6C 0C 6C 11C 14C 13C 8C 3C -2C -9C"), Highs: strings.Fields("-2C 0C 5C 11C 18C 23C 26C 25C 20C 14C 7C 1C"),
		Night: "0 K", Day: "0 K", FrostRisk: "10%", Hours: "10 h"}
	for _, s := range desk.Sketches(1) {
		starts := map[string]string{}
		for _, f := range s.Fields {
			starts[f.Key] = f.Start
		}
		if s.Key == "cellar" || s.Key == "room" || s.Key == "patch" {
			draft.Places = append(draft.Places, s.Place(s.Name, func(key string) string { return starts[key] }))
		}
	}
	if err := draft.Begin(b, testDay); err != nil {
		t.Fatal(err)
	}
	d, err := desk.NewDesk(b, false)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(d.Rest)
	return d
}
