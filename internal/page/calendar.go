package page

import (
	"bytes"
	"crypto/rand"
	"crypto/subtle"
	"encoding/hex"
	"html/template"
	"net/http"
	"net/url"
	"strings"
)

// calendarPath begins the address of the calendar to subscribe to; its key follows.
const calendarPath = "/calendar/"

// newKey makes a new address for the calendar. The one before no longer works.
func (d *devices) newKey() {
	secret := make([]byte, 16)
	_, _ = rand.Read(secret) // never fails: see crypto/rand
	d.mu.Lock()
	defer d.mu.Unlock()
	d.change(func(f *devicesFile) { f.Calendar = hex.EncodeToString(secret) })
}

// endKey removes the calendar's address.
func (d *devices) endKey() {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.change(func(f *devicesFile) { f.Calendar = "" })
}

// calendarKey returns the key of the calendar's address; empty where there is none.
func (d *devices) calendarKey() string {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.look()
	return d.held.Calendar
}

// isCalendar reports whether a path is the calendar's address.
func (d *devices) isCalendar(path string) bool {
	typed, is := strings.CutPrefix(path, calendarPath)
	key := d.calendarKey()
	return is && key != "" && subtle.ConstantTimeCompare([]byte(strings.TrimSuffix(typed, ".ics")), []byte(key)) == 1
}

// subscribe is the link by which a calendar program subscribes; empty if the calendar is
// not shared.
func (s *server) subscribe(host string) template.URL {
	key := s.devices.calendarKey()
	if s.Share == nil || key == "" {
		return ""
	}
	at := url.URL{Scheme: "webcal", Host: host, Path: calendarPath + key + ".ics"}
	return template.URL(at.String()) // the scheme is fixed, and the host was checked by guard
}

// calendar sends the jobs as a calendar to whoever knows its address, without pairing.
func (s *server) calendar(r *request) error {
	if s.Share == nil || !s.devices.isCalendar(r.URL.Path) {
		return notFound("there is no calendar at this address. It may have been removed; look under “devices and names” on the computer")
	}
	var b bytes.Buffer
	if err := s.desk.Calendar(s.today(), s.Now(), &b); err != nil {
		http.Error(r.w, "the calendar can't be made now. Open the season page: it says why", http.StatusServiceUnavailable)
		return nil
	}
	h := r.w.Header()
	h.Set("Content-Type", "text/calendar; charset=utf-8")
	h.Set("Content-Disposition", `inline; filename="garden.ics"`)
	_, _ = r.w.Write(b.Bytes()) // an error means that the reader has gone: nothing to do
	return nil
}

// shareCalendar makes an address for the calendar, or removes it: what (new, end). Only the
// computer itself may do that.
func (s *server) shareCalendar(r *request) error {
	switch {
	case isGuest(r.Context()) || s.Share == nil:
		return errNotHere
	case r.FormValue("what") == "new":
		s.devices.newKey()
	case r.FormValue("what") == "end":
		s.devices.endKey()
	default:
		return refused("the form says neither to make the calendar's address (new) nor to remove it (end). Send it from the page “devices and names”")
	}
	r.goTo("/share")
	return nil
}
