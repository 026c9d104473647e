package page

import (
	"context"
	"net"
	"net/http"
	"net/netip"
	"strings"

	"eyeup/internal/stockbook"
)

// mostBody is the most bytes that any form here sends.
const mostBody = 1 << 20

// mostOf is the most bytes that a form may send; more if it may send a file.
func mostOf(path string) int64 {
	switch path {
	case "/begin/climate":
		return mostFile
	case "/bring":
		return 8 << 20
	}
	return mostBody
}

// guard decides who may open the pages. It checks the name in the address, so that another
// site can't reach them under a name of its own; the origin of a form; and the pairing,
// if the pages are shared.
func (s *server) guard(next http.Handler) http.Handler {
	origin := http.NewCrossOriginProtection()
	inner := origin.Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "same-origin")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cache-Control", "no-store")
		h.Set("Content-Security-Policy", policy(nil))
		if !s.knows(r.Host) {
			http.Error(w, "these pages are not served under that name. On the computer, open “devices and names” at the foot of a page: it shows the address to use", http.StatusMisdirectedRequest)
			return
		}
		r.Body = http.MaxBytesReader(w, r.Body, mostOf(r.URL.Path))
		if isLoopback(r.RemoteAddr) {
			inner.ServeHTTP(w, r)
			return
		}
		if s.Share == nil {
			http.Error(w, "only the computer that runs these pages may open them. To open them to your network, start the program with --share", http.StatusForbidden)
			return
		}
		device, paired := s.Share.paired(w, r)
		if !paired && s.devices.isCalendar(r.URL.Path) && (r.Method == http.MethodGet || r.Method == http.MethodHead) {
			inner.ServeHTTP(w, r.WithContext(context.WithValue(r.Context(), guest{}, Device{})))
			return
		}
		if !paired && r.URL.Path != "/pair" && !strings.HasPrefix(r.URL.Path, "/look/") {
			http.Redirect(w, r, "/pair", http.StatusSeeOther)
			return
		}
		inner.ServeHTTP(w, r.WithContext(context.WithValue(r.Context(), guest{}, device)))
	})
}

// guest marks requests from other devices; its value is the device.
type guest struct{}

func isGuest(c context.Context) bool { return c.Value(guest{}) != nil }

// writer says who sends a request, and on what, for the book.
func (s *server) writer(c context.Context) stockbook.Writer {
	if device, is := c.Value(guest{}).(Device); is {
		return stockbook.Writer{Who: device.Who, Device: device.Name}
	}
	return stockbook.Writer{Who: s.devices.writesHere(), Device: "browser"}
}

// knows reports whether a Host is one of the names the pages are served by.
func (s *server) knows(host string) bool {
	name := host
	if h, _, err := net.SplitHostPort(host); err == nil {
		name = h
	}
	name = strings.Trim(strings.ToLower(name), "[]")
	if name == "localhost" {
		return true
	}
	if ip, err := netip.ParseAddr(name); err == nil && ip.IsLoopback() {
		return true
	}
	return s.Share != nil && s.Share.isNamed(name)
}

func isLoopback(remote string) bool {
	at, err := netip.ParseAddrPort(remote)
	return err == nil && at.Addr().Unmap().IsLoopback()
}

// policy is the Content-Security-Policy. It allows our own files and, by their hashes, the
// style elements of the drawings on the page.
func policy(styles []string) string {
	style := "style-src 'self'"
	for _, sum := range styles {
		style += " 'sha256-" + sum + "'"
	}
	return "default-src 'none'; script-src 'self'; " + style + "; img-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
}
