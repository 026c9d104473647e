package page

import "net/http"

// moved gives the present address of each page that had another address before.
var moved = map[string]string{
	"/taste":   "/display",
	"/stories": "/gallery",
}

// movedTo redirects to a page's present address and keeps the query. Status 308 makes the
// browser send the same method again, and with POST the same form.
func movedTo(now string) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		to := *r.URL
		to.Path, to.RawPath = now, ""
		http.Redirect(w, r, to.RequestURI(), http.StatusPermanentRedirect)
	})
}
