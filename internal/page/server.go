package page

import (
	"compress/gzip"
	"net/http"
	"time"

	"github.com/klauspost/compress/gzhttp"

	"eyeup/civil"
	"eyeup/internal/desk"
)

// Options say how the pages are served. The zero value serves this machine alone.
type Options struct {
	Now     func() time.Time // the clock; time.Now if nil
	Today   civil.Date       // the day that pages take for today; zero: the clock's
	Demo    bool             // the garden is invented, and the pages say so
	Gallery bool             // serve /gallery, which shows each part of the pages with made-up data
	Share   *Share           // opens the pages to the local network; nil: this machine alone
	Devices string           // file that keeps the paired devices; empty: they are forgotten when the program ends
	Archive string           // address of the weather archive; empty: the public one
}

// server answers requests.
type server struct {
	Options
	desk     *desk.Desk
	people   people
	devices  *devices
	looks    map[display]*look
	strip    strip
	outcomes outcomes
	lists    lists
}

// people are those who write entries, by id and name.
type people interface {
	// PersonNamed returns the id of the person with a name, and makes one if there is none.
	PersonNamed(name string) (id string, err error)
	// Names returns the names by id; a name that was removed is empty.
	Names() (map[string]string, error)
}

// New returns the handler of a garden's pages. It fails if a template is broken.
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

// leastPacked is the size, in bytes, from which an answer is compressed.
const leastPacked = 2000

// packed compresses answers for browsers that accept gzip. On a phone far from the router,
// most of the wait is for bytes.
func packed(h http.Handler) (http.Handler, error) {
	wrap, err := gzhttp.NewWrapper(gzhttp.MinSize(leastPacked), gzhttp.CompressionLevel(gzip.BestSpeed))
	if err != nil {
		return nil, err
	}
	return wrap(h), nil
}

// devices are the paired devices that the options name.
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
		"POST /display":              s.setDisplay,
		"GET /display":               s.displayPage,
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
	if s.Gallery {
		mux.Handle("GET /gallery", s.serve(s.gallery))
	}
	for old, now := range moved {
		mux.Handle(old, movedTo(now))
	}
	mux.Handle("/", s.serve(func(*request) error { return notFound("there is no page at this address") }))
	return mux
}

// today is the day that pages take for today, in the garden's time zone.
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
