package page

import (
	"errors"
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"eyeup/internal/desk"
	"eyeup/internal/stockbook"
	"eyeup/quantity"
)

// beginning serves the pages of a book that does not describe a garden yet. They lead
// through first use. After that it serves the garden's own pages.
type beginning struct {
	server
	book  *stockbook.Book
	ready func(*desk.Desk) (http.Handler, error)
	then  atomic.Pointer[http.Handler] // the garden's own pages, once there are any

	mu     sync.Mutex
	draft  desk.Draft
	step   int    // how many of the steps are done
	notice string // what came of the step before
}

// The steps of first use.
var steps = []string{"where", "climate", "places"}

// Begin returns the handler of the pages of an empty book: first use, and after it the
// garden's own pages. It fails if a template is broken.
func Begin(b *stockbook.Book, o Options) (http.Handler, error) {
	if o.Now == nil {
		o.Now = time.Now
	}
	begin := &beginning{server: server{Options: o, people: b, devices: o.devices()}, book: b}
	var err error
	if begin.looks, err = newLooks(); err != nil {
		return nil, err
	}
	begin.ready = func(d *desk.Desk) (http.Handler, error) {
		s := &server{Options: o, desk: d, people: d, devices: begin.devices, looks: begin.looks}
		return s.routes(), nil
	}
	begin.draft = desk.Draft{Zone: machineZone(), Night: "0 K", Day: "0 K", FrostRisk: "10%", Hours: "10 h"}
	mux := http.NewServeMux()
	mux.Handle("GET /look/", looked())
	for pattern, page := range map[string]page{
		"GET /begin": begin.show1, "POST /begin/where": begin.where, "POST /begin/climate": begin.climate, "POST /begin/places": begin.places, "POST /begin/nearest": begin.nearest,
		"GET /pair": begin.pairPage, "POST /pair": begin.pair, "GET /share": begin.sharePage, "POST /share/code": begin.newCode, "POST /share/end": begin.endDevice, "POST /share/who": begin.nameHere,
	} {
		mux.Handle(pattern, begin.serve(page))
	}
	mux.HandleFunc("/", func(w http.ResponseWriter, r *http.Request) { http.Redirect(w, r, "/begin", http.StatusSeeOther) })
	return begin.guard(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if then := begin.then.Load(); then != nil {
			if strings.HasPrefix(r.URL.Path, "/begin") {
				http.Redirect(w, r, "/", http.StatusSeeOther)
				return
			}
			(*then).ServeHTTP(w, r)
			return
		}
		mux.ServeHTTP(w, r)
	})), nil
}

// machineZone is the time zone that this machine is set to; empty if it is not known. The
// grower sees it and may type another.
func machineZone() string {
	if name := time.Local.String(); name != "Local" && name != "UTC" {
		return name
	}
	target, err := os.Readlink("/etc/localtime")
	if err != nil {
		return ""
	}
	_, name, found := strings.Cut(filepath.ToSlash(target), "zoneinfo/")
	if !found || strings.HasSuffix(name, "UTC") {
		return ""
	}
	return name
}

// beginView is one step of first use.
type beginView struct {
	desk.Draft
	Step     string
	N, Of    int
	Find     string
	Notice   string
	Found    []desk.NamedPlace
	Bad      []string
	Sketches []sketchView
	Lows     string
	Highs    string
}

// sketchView is a sketch of a place with what was typed.
type sketchView struct {
	desk.Sketch
	On     bool
	Called string
	Fields []sketchInput
}

type sketchInput struct {
	desk.SketchField
	Value string
}

// show1 shows the step that is next: find (a town's name) offers places; step goes back.
func (b *beginning) show1(r *request) error {
	if err := r.parse(); err != nil {
		return err
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	for i, name := range steps {
		if i < b.step && r.FormValue("step") == name {
			b.step = i
		}
	}
	return b.showStep(r, http.StatusOK, nil)
}

// showStep shows the next step, with what is wrong with what was sent.
func (b *beginning) showStep(r *request, status int, bad error) error {
	v := beginView{Draft: b.draft, Step: steps[b.step], N: b.step + 1, Of: len(steps), Find: r.FormValue("find"), Notice: b.notice}
	if bad != nil {
		v.Bad = strings.Split(bad.Error(), "\n")
	}
	if v.Find != "" {
		found, err := desk.PlacesNamed(v.Find)
		if err != nil {
			v.Bad = append(v.Bad, err.Error())
		} else if len(found) == 0 {
			v.Bad = append(v.Bad, "no town of that name is in the list. Type latitude and longitude instead, as a map shows them")
		}
		v.Found = found
	}
	for _, name := range []string{"latitude", "longitude"} { // of a place that was picked
		if value := r.FormValue(name); value != "" && r.Method == http.MethodGet {
			if name == "latitude" {
				v.Latitude = value
			} else {
				v.Longitude = value
			}
		}
	}
	v.Lows, v.Highs = strings.Join(b.draft.Lows, " "), strings.Join(b.draft.Highs, " ")
	if v.Step == "places" {
		v.Sketches = b.sketches(r)
	}
	return b.server.show(r, status, "begin", view{Title: "A new garden", Bare: true, Main: v})
}

// units are those of the garden that is being described.
func (b *beginning) units() quantity.System {
	if b.draft.Units == "us" {
		return quantity.US
	}
	return quantity.Metric
}

func (b *beginning) sketches(r *request) []sketchView {
	var all []sketchView
	for _, s := range desk.Sketches(b.units()) {
		v := sketchView{Sketch: s, On: r.FormValue(s.Key) != "", Called: s.Name}
		if name := r.FormValue(s.Key + ".name"); name != "" {
			v.Called = name
		}
		for _, f := range s.Fields {
			in := sketchInput{f, f.Start}
			if r.Form.Has(s.Key + "." + f.Key) {
				in.Value = r.FormValue(s.Key + "." + f.Key)
			}
			v.Fields = append(v.Fields, in)
		}
		all = append(all, v)
	}
	return all
}

// where takes the first step: name, latitude, longitude, elevation, zone, units, currency.
func (b *beginning) where(r *request) error {
	b.mu.Lock()
	defer b.mu.Unlock()
	d := b.draft
	d.Name, d.Latitude, d.Longitude = strings.TrimSpace(r.FormValue("name")), r.FormValue("latitude"), r.FormValue("longitude")
	d.Elevation, d.Zone, d.Units = r.FormValue("elevation"), strings.TrimSpace(r.FormValue("zone")), r.FormValue("units")
	d.Currency = strings.ToUpper(strings.TrimSpace(r.FormValue("currency")))
	err := d.CheckSite()
	if err == nil && d.Units != "us" && d.Units != "metric" {
		err = errors.New("choose the units")
	}
	b.draft = d
	return b.next(r, err)
}

// mostFile is the most bytes of a weather file.
const mostFile = 64 << 20

// climate takes the second step: low and high (twelve each, unit F or C), or a file and
// the station in it; night and day, how much warmer the patch is than the station.
func (b *beginning) climate(r *request) error {
	b.mu.Lock()
	defer b.mu.Unlock()
	d := b.draft
	name, content, err := uploaded(r, "file")
	if err != nil {
		return err
	}
	d.File, d.Content, d.Station = name, content, strings.TrimSpace(r.FormValue("station"))
	d.Lows, d.Highs = twelve(r.FormValue("low"), r.FormValue("unit")), twelve(r.FormValue("high"), r.FormValue("unit"))
	if night := r.FormValue("night"); night != "" {
		d.Night = night
	}
	if day := r.FormValue("day"); day != "" {
		d.Day = day
	}
	b.draft = d
	return b.next(r, d.CheckClimate())
}

// fetchLasts is how long fetching a station's record may take: the archive's lists are
// some 45 MB.
const fetchLasts = 15 * time.Minute

// nearest fetches the nearest long record for the second step.
func (b *beginning) nearest(r *request) error {
	b.mu.Lock()
	defer b.mu.Unlock()
	_ = http.NewResponseController(r.w).SetWriteDeadline(time.Now().Add(fetchLasts)) // if it can't be set, there is no deadline
	d := b.draft
	station, err := d.FetchNearest(r.Context(), b.Archive)
	if err == nil {
		err = d.CheckClimate()
	}
	if err != nil {
		return b.next(r, err)
	}
	b.draft = d
	b.notice = fmt.Sprintf("Downloaded the record of %s (%s): %.0f km away, %d to %d.", station.Name, station.ID, station.DistanceKm, station.FromYear, station.ToYear)
	return b.next(r, nil)
}

// twelve splits numbers typed in a row, and adds the chosen unit to those without one.
func twelve(typed, unit string) []string {
	all := strings.FieldsFunc(typed, func(c rune) bool { return strings.ContainsRune(" ,;\t\r\n", c) })
	for i, one := range all {
		if strings.Trim(one, "0123456789.-−") == "" {
			all[i] = strings.ReplaceAll(one, "−", "-") + unit
		}
	}
	return all
}

// places takes the last step: for each sketch that is ticked (its key) its name and
// measures (KEY.name, KEY.FIELD); risk, hours (own, a week) and electricity (its price).
func (b *beginning) places(r *request) error {
	b.mu.Lock()
	defer b.mu.Unlock()
	if err := r.parse(); err != nil {
		return err
	}
	d := b.draft
	d.Places = nil
	d.FrostRisk, d.Hours = r.FormValue("risk"), r.FormValue("hours")
	d.Electricity = strings.TrimSpace(r.FormValue("electricity"))
	for _, s := range desk.Sketches(b.units()) {
		if r.FormValue(s.Key) == "" {
			continue
		}
		name := strings.TrimSpace(r.FormValue(s.Key + ".name"))
		d.Places = append(d.Places, s.Place(name, func(key string) string { return strings.TrimSpace(r.FormValue(s.Key + "." + key)) }))
	}
	b.draft = d
	if b.step != len(steps)-1 {
		return b.next(r, errors.New("do the first two steps before this one: where the garden is, and its climate"))
	}
	if len(d.Places) == 0 {
		return b.next(r, errors.New("tick the places you have: at least the patch"))
	}
	if err := d.Begin(b.book, b.today()); err != nil {
		return b.next(r, err)
	}
	laid, err := desk.NewDesk(b.book, false)
	if err != nil {
		return err
	}
	pages, err := b.ready(laid)
	if err != nil {
		return err
	}
	b.then.Store(&pages)
	r.goTo("/bring")
	return nil
}

// next goes on to the next step, or stays where something is wrong.
func (b *beginning) next(r *request, err error) error {
	if err != nil {
		return b.showStep(r, http.StatusUnprocessableEntity, err)
	}
	b.step = min(b.step+1, len(steps)-1)
	r.goTo("/begin")
	return nil
}
