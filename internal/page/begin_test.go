package page

import (
	"bytes"
	"mime/multipart"
	"net/http"
	"net/http/httptest"
	"net/url"
	"path/filepath"
	"strings"
	"testing"

	"eyeup/internal/desk"
	"eyeup/internal/stockbook"
)

// mostActions is how many actions lead from nothing to a first season at most.
const mostActions = 25

// hand is a grower's: it counts what is typed, ticked and pressed.
type hand struct {
	t       *testing.T
	h       http.Handler
	form    url.Values
	actions int
}

// does types or ticks one field.
func (g *hand) does(field, value string) {
	g.form.Set(field, value)
	g.actions++
}

// has is what a form holds already, without an action.
func (g *hand) has(field, value string) { g.form.Set(field, value) }

// press sends the form and follows where it leads.
func (g *hand) press(path string) string {
	g.t.Helper()
	g.actions++
	status, body, to := post(g.t, g.h, path, g.form)
	g.form = url.Values{}
	if status == http.StatusSeeOther {
		_, body = get(g.t, g.h, to)
		return body
	}
	if status != http.StatusOK {
		g.t.Fatalf("%s: status %d: %s", path, status, gist(body))
	}
	return body
}

func emptyBook(t *testing.T) http.Handler {
	t.Helper()
	b, err := stockbook.New(filepath.Join(t.TempDir(), "new.book"), testNow)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = b.Close() })
	h, err := Begin(b, Options{Now: testNow, Today: testDay})
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// TestFirstUse goes from nothing to a first season, and counts the actions.
func TestFirstUse(t *testing.T) {
	h := emptyBook(t)
	g := &hand{t: t, h: h, form: url.Values{}}
	status, body := get(t, h, "/stock")
	if status != http.StatusSeeOther {
		t.Fatalf("an empty book's stock page: status %d: %s", status, gist(body))
	}
	g.does("find", "waterville maine")
	g.actions++ // find
	_, body = get(t, h, "/begin?"+g.form.Encode())
	i := strings.Index(body, "/begin?latitude=")
	if i < 0 {
		t.Fatalf("no place is offered: %s", gist(body))
	}
	g.actions++ // pick
	picked, _, _ := strings.Cut(body[i:], `"`)
	_, body = get(t, h, strings.ReplaceAll(picked, "&amp;", "&"))
	if !strings.Contains(body, `name="latitude" value="44.55"`) {
		t.Error("the place that was picked is not in the form")
	}
	g.form = url.Values{"latitude": {"44.55"}, "longitude": {"-69.63"}}
	g.does("name", "Alder Reach")
	g.does("elevation", "90 ft")
	g.does("zone", "America/New_York")
	g.does("units", "us")
	g.does("currency", "USD")
	if body = g.press("/begin/where"); !strings.Contains(body, "mean lows") {
		t.Fatalf("the climate is not asked for: %s", gist(body))
	}
	g.has("unit", "F")
	g.does("low", "9 11 21 32 43 52 57 56 47 37 28 16")
	g.does("high", "28 32 40 52 65 73 78 77 68 57 45 34")
	if body = g.press("/begin/climate"); !strings.Contains(body, "cold frame") {
		t.Fatalf("places are not asked for: %s", gist(body))
	}
	for _, s := range desk.Sketches(0) {
		g.has(s.Key+".name", s.Name)
	}
	hold(g, h)
	for _, key := range []string{"cellar", "room", "frame", "patch"} {
		g.does(key, "yes")
	}
	g.has("risk", "10%")
	g.has("hours", "10 h")
	if body = g.press("/begin/places"); !strings.Contains(body, "paste a list") {
		t.Fatalf("stock is not asked for: %s", gist(body))
	}
	g.does("list", "variety\tkind\tform\tcount\tplace\tcolour\tplant\nPale Heron\tdahlia\tclump\t14\tcellar\t#f4efe4\t16\nBrass Lantern\tdahlia\tclump\t9\tcellar\t#d9962e\t12\n")
	if body = g.press("/bring"); !strings.Contains(body, "2 rows") {
		t.Fatalf("the list is not shown: %s", gist(body))
	}
	_, list, _ := strings.Cut(body, `name="list" value="`)
	list, _, _ = strings.Cut(list, `"`)
	g.has("list", list)
	g.has("on", testDay.String())
	body = g.press("/bring/write")
	for _, must := range []string{"usual for the trade", "Pale Heron", "Brass Lantern"} {
		if !strings.Contains(body, must) {
			t.Errorf("the first season does not hold %q: %s", must, gist(body))
		}
	}
	if g.actions > mostActions {
		t.Errorf("it took %d actions, %d were promised", g.actions, mostActions)
	}
	t.Logf("%d actions", g.actions)
	if status, _ := get(t, h, "/begin"); status != http.StatusSeeOther {
		t.Errorf("first use is offered again: status %d", status)
	}
}

// hold fills in the measures that the sketches stand with.
func hold(g *hand, h http.Handler) {
	_, body := get(g.t, h, "/begin")
	for _, part := range strings.Split(body, `name="`)[1:] {
		name, rest, _ := strings.Cut(part, `"`)
		if !strings.Contains(name, ".") || strings.HasSuffix(name, ".name") {
			continue
		}
		_, rest, _ = strings.Cut(rest, `value="`)
		value, _, _ := strings.Cut(rest, `"`)
		g.has(name, value)
	}
}

// TestAnEmptyGardenHasPages begins a garden without stock: every page says what to do.
func TestAnEmptyGardenHasPages(t *testing.T) {
	h := emptyBook(t)
	g := &hand{t: t, h: h, form: url.Values{"name": {"Test"}, "latitude": {"52.1"}, "longitude": {"5.2"}, "elevation": {"3 m"}, "zone": {"Europe/Amsterdam"}, "units": {"metric"}, "currency": {"EUR"}}}
	g.press("/begin/where")
	g.form = url.Values{"unit": {"C"}, "low": {"0 0 2 4 8 11 13 12 10 7 3 1"}, "high": {"6 7 10 14 18 20 23 22 19 14 10 7"}}
	g.press("/begin/climate")
	hold(g, h)
	g.has("patch", "yes")
	g.has("patch.name", "patch")
	g.has("risk", "10%")
	g.has("hours", "8 h")
	g.press("/begin/places")
	for _, word := range navWords {
		status, body := get(t, h, address(word))
		if status != http.StatusOK {
			t.Errorf("%s: status %d: %s", word, status, gist(body))
		}
		if (word == "this week" || word == "season" || word == "patch") && !strings.Contains(body, "/bring") {
			t.Errorf("%s does not lead to bringing in stock", word)
		}
	}
}

// TestEverySketchIsAGarden begins a garden with all worked places, in both systems.
func TestEverySketchIsAGarden(t *testing.T) {
	for _, units := range []string{"us", "metric"} {
		h := emptyBook(t)
		g := &hand{t: t, h: h, form: url.Values{"name": {"Test"}, "latitude": {"52.1"}, "longitude": {"5.2"}, "elevation": {"3 m"}, "zone": {"Europe/Amsterdam"}, "units": {units}, "currency": {"EUR"}}}
		g.press("/begin/where")
		g.form = url.Values{"unit": {"C"}, "low": {"0 0 2 4 8 11 13 12 10 7 3 1"}, "high": {"6 7 10 14 18 20 23 22 19 14 10 7"}}
		g.press("/begin/climate")
		for _, s := range desk.Sketches(0) {
			g.has(s.Key, "yes")
			g.has(s.Key+".name", s.Name)
		}
		hold(g, h)
		g.has("risk", "10%")
		g.has("hours", "8 h")
		g.has("electricity", "0.30 EUR/kWh")
		if body := g.press("/begin/places"); !strings.Contains(body, "paste a list") {
			t.Fatalf("%s: %s", units, gist(body))
		}
		if status, body := get(t, h, "/places"); status != http.StatusOK || !strings.Contains(body, "lean-to") {
			t.Errorf("%s: places: status %d: %s", units, status, gist(body))
		}
	}
}

// TestFirstUseRefuses sends what can't be: each is told, and nothing is lost.
func TestFirstUseRefuses(t *testing.T) {
	h := emptyBook(t)
	good := url.Values{"name": {"Test"}, "latitude": {"52.1"}, "longitude": {"5.2"}, "elevation": {"3 m"}, "zone": {"Europe/Amsterdam"}, "units": {"metric"}, "currency": {"EUR"}}
	send := func(path string, form url.Values, says string) {
		t.Helper()
		status, body, _ := post(t, h, path, form)
		if status != http.StatusUnprocessableEntity || !strings.Contains(body, says) {
			t.Errorf("%s %v: status %d, want it to say %q: %s", path, form, status, says, gist(body))
		}
	}
	for field, bad := range map[string][2]string{
		"latitude": {"95", "latitude"}, "longitude": {"west", "not a number of degrees"}, "elevation": {"3", "unit"}, "zone": {"Mars/Base", "no time zone"}, "name": {" ", "a name"},
	} {
		form := url.Values{}
		for k, v := range good {
			form[k] = v
		}
		form.Set(field, bad[0])
		send("/begin/where", form, bad[1])
	}
	send("/begin/places", url.Values{"patch": {"yes"}}, "Do the first two steps")
	if status, _, _ := post(t, h, "/begin/where", good); status != http.StatusSeeOther {
		t.Fatalf("status %d", status)
	}
	send("/begin/climate", url.Values{"unit": {"C"}, "low": {"1 2 3"}, "high": {"4 5 6"}}, "give twelve values")
	send("/begin/climate", url.Values{"unit": {"C"}, "low": {"9 9 9 9 9 9 9 9 9 9 9 9"}, "high": {"6 7 10 14 18 20 23 22 19 14 10 7"}}, "reversed")
}

// TestPathTricksInUploads sends a file whose name leads elsewhere.
func TestPathTricksInUploads(t *testing.T) {
	for name, want := range map[string]string{
		"../../etc/passwd": "passwd", `..\..\boot.ini`: "boot.ini", "/etc/shadow": "shadow", "station.csv": "station.csv", "": "weather", "..": "weather", "a b\x00c.dly": "a-b-c.dly", ".hidden": "hidden",
	} {
		if got := safeName(name); got != want {
			t.Errorf("safeName(%q) is %q, want %q", name, got, want)
		}
	}
	h := emptyBook(t)
	post(t, h, "/begin/where", url.Values{"name": {"Test"}, "latitude": {"52.1"}, "longitude": {"5.2"}, "elevation": {"3 m"}, "zone": {"Europe/Amsterdam"}, "units": {"metric"}, "currency": {"EUR"}})
	var b bytes.Buffer
	w := multipart.NewWriter(&b)
	f, err := w.CreateFormFile("file", "../../../tmp/evil.csv")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := f.Write([]byte("not,a\nrecord,of weather\n")); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	r := httptest.NewRequest(http.MethodPost, "/begin/climate", &b)
	r.Header.Set("Content-Type", w.FormDataContentType())
	status, body := read(t, ask(h, r))
	if status != http.StatusUnprocessableEntity || strings.Contains(body, "..") {
		t.Errorf("status %d: %s", status, gist(body))
	}
}

// TestTheGardenIsDescribedAnew changes an offset and a price, refuses what can't be, adds a
// place and takes it away again.
func TestTheGardenIsDescribedAnew(t *testing.T) {
	h, d := writing(t)
	parts, err := d.Parts()
	if err != nil {
		t.Fatal(err)
	}
	form := func(what, name string) url.Values {
		f := url.Values{"what": {what}, "name": {name}}
		for _, p := range parts {
			if p.What == what && p.Name == name {
				for _, one := range p.Fields() {
					f.Set("key."+one.Key, one.Value)
				}
			}
		}
		return f
	}
	for _, p := range parts { // what is sent as it stands changes nothing
		if len(p.Fields()) == 0 { // of which nothing is said yet
			continue
		}
		if status, body, _ := post(t, h, "/garden", form(p.What, p.Name)); status != http.StatusSeeOther {
			t.Errorf("%s %s as it stands: status %d: %s", p.What, p.Name, status, gist(body))
		}
	}
	wishes := form("garden", "patch") // one more variety; of the first of all the wish is taken back
	for key, value := range map[string]string{"99.name": "Sloe Morning", "99.kind": "dahlia", "99.wish": "must have", "99.least": "3",
		"1.name": "", "1.kind": "", "1.wish": "", "1.least": "", "1.most": ""} {
		wishes.Set("key.variety."+key, value)
	}
	before := d.Site().Patch.Varieties
	if status, body, _ := post(t, h, "/garden", wishes); status != http.StatusSeeOther {
		t.Fatalf("wishes for the patch: status %d: %s", status, gist(body))
	}
	after := d.Site().Patch.Varieties
	if last := after[len(after)-1]; len(after) != len(before) || after[0].Name != before[1].Name || last.Name != "Sloe Morning" || last.Least != 3 {
		t.Errorf("of %d wishes %d are left, the last %+v", len(before), len(after), last)
	}
	offset := form("garden", "offset")
	offset.Set("key.night", "-3 F")
	if status, body, _ := post(t, h, "/garden", offset); status != http.StatusSeeOther {
		t.Fatalf("an offset: status %d: %s", status, gist(body))
	}
	if got := d.Weather().NightK; got > -1.66 || got < -1.67 { // 3 F are 5/3 K
		t.Errorf("the nights are %g K colder", got)
	}
	prices := form("garden", "prices")
	prices.Set("key.electricity", "0.24")
	status, body, _ := post(t, h, "/garden", prices)
	if status != http.StatusUnprocessableEntity || !strings.Contains(body, "electricity") || strings.Contains(body, "garden.toml") {
		t.Errorf("a price without its unit: status %d: %s", status, gist(body))
	}
	if status, body, _ := post(t, h, "/garden/place", url.Values{"sketch": {"tunnel"}, "name": {"long tunnel"}}); status != http.StatusSeeOther {
		t.Fatalf("one more place: status %d: %s", status, gist(body))
	}
	if _, there := d.Site().Place("long tunnel"); !there {
		t.Error("the place is not there")
	}
	if status, _, _ := post(t, h, "/garden/gone", url.Values{"name": {"cellar"}}); status != http.StatusUnprocessableEntity {
		t.Errorf("a place where stock stands is taken away: status %d", status)
	}
	if status, body, _ := post(t, h, "/garden/gone", url.Values{"name": {"long tunnel"}}); status != http.StatusSeeOther {
		t.Errorf("the place taken away: status %d: %s", status, gist(body))
	}
	if _, there := d.Site().Place("long tunnel"); there {
		t.Error("the place is there still")
	}
}
