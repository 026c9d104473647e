package page

import (
	"bytes"
	"errors"
	"fmt"
	"html/template"
	"log/slog"
	"net/http"
	"net/url"
	"strings"

	"eyeup/internal/sources"
	"eyeup/stock"
)

// page answers one request. An error it returns is shown on a page of its own.
type page func(*request) error

// request is one request and what answers it.
type request struct {
	*http.Request
	w       http.ResponseWriter
	display display
	style   []string // hashes of style elements that the page holds
}

// fault is something that a page can't do, with the HTTP status for it.
type fault struct {
	status int
	says   string
}

func (f fault) Error() string { return f.says }

func notFound(says string) error { return fault{http.StatusNotFound, says} }
func refused(format string, args ...any) error {
	return fault{http.StatusBadRequest, fmt.Sprintf(format, args...)}
}

// serve lets a page answer requests.
func (s *server) serve(p page) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, hr *http.Request) {
		r := &request{Request: hr, w: w, display: s.displayOf(hr)}
		if err := p(r); err != nil {
			s.showFault(r, err)
		}
	})
}

// showFault shows what went wrong, and what to do next.
func (s *server) showFault(r *request, err error) {
	status := http.StatusUnprocessableEntity
	var f fault
	var big *http.MaxBytesError
	switch {
	case errors.As(err, &f):
		status = f.status
	case errors.As(err, &big):
		status, err = http.StatusRequestEntityTooLarge, fmt.Errorf("that is more than the %d bytes that a form here may send, so nothing was written down. Send a smaller file", big.Limit)
	}
	v := view{Title: "This can't be done", Main: struct {
		Says []string
		Back string
	}{strings.Split(err.Error(), "\n"), backOf(r)}}
	if werr := s.show(r, status, "fault", v); werr != nil {
		slog.Error("a page could not be shown", "path", r.URL.Path, "error", werr)
		http.Error(r.w, "this page could not be shown", http.StatusInternalServerError)
	}
}

// backOf returns the page a form was sent from, where it is one of ours.
func backOf(r *request) string {
	u, err := url.Parse(r.Referer())
	if err != nil || u.Host != r.Host {
		return "/"
	}
	return local(u.RequestURI())
}

// local returns an address if it is a page of this server, and the first page otherwise.
func local(to string) string {
	u, err := url.Parse(to)
	if err != nil || u.IsAbs() || u.Host != "" || !strings.HasPrefix(to, "/") || strings.HasPrefix(to, "//") || strings.ContainsAny(to, "\\\r\n\t") {
		return "/"
	}
	return to
}

// view is what every page shows.
type view struct {
	Title    string
	Here     string // the entry of the navigation that is current
	Garden   string
	Strip    template.HTML // the garden's own colours
	Kept     string        // where entries lie; empty where they end with the program
	MadeUp   bool          // the weather is
	Done     *done         // what was just written
	Nav      []string
	Demo     bool     // the garden is invented
	Warnings []string // about where the book lies
	Guest    bool     // a paired device
	Bare     bool     // shows nothing of the garden: for devices not paired yet
	Again    string   // where a browser without scripts looks again by itself; empty where all is done
	Main     any
	Body     template.HTML   // Main, shown
	From     []sources.Basis // where its figures come from; those that it links to are shown
}

// done is what was just written, with its undoing.
type done struct {
	IDs      []stock.ID
	Says     string // the kind of entry, or how many of them
	Sentence string // says it in full; empty: Says alone
	Undone   bool
	Next     string // where to go when it is undone
	Born     []stock.Born
	Notes    []string
	Labels   []labelsFor // that are due by it
}

// labelsFor is a print of labels, one tap away.
type labelsFor struct{ Says, At string }

// navWords are the pages, each by its address's own word.
var navWords = []string{"this week", "stock", "rounds", "season", "patch", "places", "weather"}

// show writes a page.
func (s *server) show(r *request, status int, name string, v view) error {
	v.Guest = isGuest(r.Context())
	if s.desk == nil {
		v.Bare = true
	}
	if !v.Bare {
		g := s.desk.Site()
		v.Garden, v.Kept, v.Nav = g.Name, s.desk.Kept(), navWords
		v.MadeUp, v.Demo, v.Warnings = g.Record.MadeUp, s.Demo, s.warnings()
		v.Strip = s.strip.of(s.desk)
		v.Done = s.doneOf(r)
	}
	var body, b bytes.Buffer
	look := s.looks[r.display].pages[name]
	if err := look.ExecuteTemplate(&body, "main", v.Main); err != nil {
		return err
	}
	v.Body, v.From = template.HTML(body.String()), asked(v.From, body.Bytes())
	if err := look.Execute(&b, v); err != nil {
		return err
	}
	h := r.w.Header()
	h.Set("Content-Type", "text/html; charset=utf-8")
	h.Set("Content-Security-Policy", policy(r.style))
	r.w.WriteHeader(status)
	_, _ = r.w.Write(b.Bytes()) // an error means that the reader has gone: nothing to do
	return nil
}

// needsStock shows an empty page until there is stock that is wanted in the patch.
func (s *server) needsStock(next page) page {
	return func(r *request) error {
		hasStock := len(s.desk.Shelf().Lots) > 0
		if hasStock && s.desk.IsAnyWanted() {
			return next(r)
		}
		here := strings.TrimPrefix(r.URL.Path, "/")
		return s.show(r, http.StatusOK, "empty", view{Title: upper(here), Here: here, Main: hasStock})
	}
}

// warnings say what is dangerous about where the book lies, or about what it holds.
func (s *server) warnings() []string {
	all := s.desk.Warnings()
	if err := s.desk.Faulty(); err != nil {
		all = append(all, err.Error())
	}
	return all
}

// parse reads the form that was sent.
func (r *request) parse() error {
	err := r.ParseForm()
	var big *http.MaxBytesError
	if err != nil && !errors.As(err, &big) {
		return refused("the form can't be read: %v. Go back and send it again", err)
	}
	return err
}

// goTo sends the browser on after something was written.
func (r *request) goTo(to string) {
	http.Redirect(r.w, r.Request, to, http.StatusSeeOther)
}
