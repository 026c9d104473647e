package page

import (
	"compress/gzip"
	"net/http"
	"time"

	"github.com/klauspost/compress/gzhttp"

	"eyeup/civil"
	"eyeup/internal/desk"
)

// Options say how the pages are served. The zero value does for most.
type Options struct {
	Now     func() time.Time // the clock; time.Now if nil
	Today   civil.Date       // reckon as if it were this day; none: the clock's
	Demo    bool             // the garden is invented: say so
	Stories bool             // serve /stories, which shows each part with made-up data
	Share   *Share           // opened to the local network; nil: this machine alone
	Devices string           // file in which paired devices are kept; empty: they end with the program
	Archive string           // address of the archive of weather; empty: its own
}

// server answers requests.
type server struct {
	Options
	desk    *desk.Desk
	people  people
	devices *devices
	looks   map[taste]*look
	strip   strip
	told    told
	lists   lists
}

// people are those who write, by id and name.
type people interface {
	// PersonNamed returns the id of the person of a name, and gives one where there is none.
	PersonNamed(name string) (id string, err error)
	// Names returns names by ids; blanked ones are empty.
	Names() (map[string]string, error)
}

// New returns the handler of a garden's pages. It fails when a template is broken.
func New(d *desk.Desk, o Options) (http.Handler, error) {
	if o.Now == nil {
		o.Now = time.Now
	}
	s := &server{Options: o, desk: d, people: d, devices: o.devices()}
	var err error
	if s.looks, err = newLooks(); err != nil {
		return nil, err
	}
	return packed(s.guard(s.routes()))
}

// leastPacked is how long an answer is, in bytes, before packing it is worth the while.
const leastPacked = 2000

// packed sends answers gzipped to browsers that take that: on a phone far from the router most
// of the wait is for bytes.
func packed(h http.Handler) (http.Handler, error) {
	wrap, err := gzhttp.NewWrapper(gzhttp.MinSize(leastPacked), gzhttp.CompressionLevel(gzip.BestSpeed))
	if err != nil {
		return nil, err
	}
	return wrap(h), nil
}

// devices are those kept by the options.
func (o *Options) devices() *devices {
	d := &devices{now: o.Now}
	if o.Share != nil {
		d = o.Share.devices
	}
	d.keepIn(o.Devices)
	return d
}

// routes names every page and action.
func (s *server) routes() *http.ServeMux {
	mux := http.NewServeMux()
	mux.Handle("GET /look/", looked())
	for pattern, page := range map[string]page{
		"GET /{$}":                   s.week,
		"GET /season":                s.needsStock(s.season),
		"POST /season/follow":        s.follow,
		"POST /season/best":          s.lookForBest,
		"POST /season/best/stop":     s.stopLooking,
		"GET /places":                s.places,
		"GET /places/{place}":        s.place,
		"GET /weather":               s.weather,
		"GET /patch":                 s.needsStock(s.patch),
		"GET /stock":                 s.stock,
		"GET /stock/{code}":          s.lot,
		"POST /stock/{code}/variety": s.describeVariety,
		"GET /rounds":                s.rounds,
		"GET /rounds/{place}/{n}":    s.crate,
		"POST /rounds/{place}/{n}":   s.walkCrate,
		"GET /bring":                 s.bringPage,
		"GET /garden":                s.garden,
		"POST /garden":               s.describe,
		"POST /garden/place":         s.addPlace,
		"POST /garden/gone":          s.removePlace,
		"POST /bring":                s.bring,
		"POST /bring/write":          s.takeIn,
		"GET /write/{kind}":          s.form,
		"POST /write/{kind}":         s.write,
		"POST /undo":                 s.undo,
		"POST /taste":                s.setTaste,
		"GET /taste":                 s.tastePage,
		"GET /share":                 s.sharePage,
		"POST /share/code":           s.newCode,
		"POST /share/end":            s.endDevice,
		"POST /share/who":            s.nameHere,
		"GET /log":                   s.log,
		"GET /pair":                  s.pairPage,
		"POST /pair":                 s.pair,
	} {
		mux.Handle(pattern, s.serve(page))
	}
	for pattern, page := range s.paperRoutes() {
		mux.Handle(pattern, s.serve(page))
	}
	if s.Stories {
		mux.Handle("GET /stories", s.serve(s.stories))
	}
	mux.Handle("/", s.serve(func(*request) error { return notFound("there is no page at this address") }))
	return mux
}

// today is the day that pages speak of.
func (s *server) today() civil.Date {
	if !s.Today.IsZero() {
		return s.Today
	}
	zone := time.Local
	if s.desk != nil && s.desk.Site().Zone != nil {
		zone = s.desk.Site().Zone
	}
	return civil.Of(s.Now().In(zone))
}
