package page

import (
	"errors"
	"fmt"
	"net"
	"net/http"
	"strings"
	"time"
	"unicode/utf8"
)

// shareView shows the code and the paired devices, on the computer only.
type shareView struct {
	Open    bool
	Code    string
	Until   time.Time
	At      []string
	Devices []deviceView
	Shared  []string // addresses of the calendar; none: it is not shared
	Failed  error    // why devices can't be kept
	Kept    bool     // they outlast the program
	Here    string   // name of whoever writes on this machine
}

// deviceView is a paired device with the name of whoever writes on it.
type deviceView struct {
	Device
	Writes string
}

var errNotHere = fault{http.StatusForbidden, "you can change codes, devices and names only on the computer that runs these pages"}

func (s *server) sharePage(r *request) error {
	if isGuest(r.Context()) {
		return errNotHere
	}
	names := s.names()
	v := shareView{Open: s.Share != nil, Kept: s.devices.file != "", Here: names[s.devices.writesHere()]}
	var all []Device
	all, v.Failed = s.devices.list()
	for _, one := range all {
		v.Devices = append(v.Devices, deviceView{one, names[one.Who]})
	}
	if v.Open {
		v.Code, v.Until = s.Share.Code()
		_, port, _ := net.SplitHostPort(r.Host)
		for _, n := range s.Share.Names() {
			at := "http://" + net.JoinHostPort(n, port)
			v.At = append(v.At, at+"/pair")
			if key := s.devices.calendarKey(); key != "" {
				v.Shared = append(v.Shared, at+calendarPath+key+".ics")
			}
		}
	}
	return s.show(r, http.StatusOK, "share", view{Title: "Devices and names", Main: v})
}

// newCode makes a new code.
func (s *server) newCode(r *request) error {
	if isGuest(r.Context()) || s.Share == nil {
		return errNotHere
	}
	s.Share.NewCode()
	r.goTo("/share")
	return nil
}

// endDevice ends a device: end (its word for ending).
func (s *server) endDevice(r *request) error {
	if isGuest(r.Context()) {
		return errNotHere
	}
	s.devices.end(r.FormValue("end"))
	r.goTo("/share")
	return nil
}

// nameHere says who writes on this machine: who (a name; empty for nobody).
func (s *server) nameHere(r *request) error {
	if isGuest(r.Context()) {
		return errNotHere
	}
	who, err := s.personTyped(r.FormValue("who"))
	if err != nil {
		return err
	}
	s.devices.setHere(who)
	r.goTo("/share")
	return nil
}

// longestName is how many letters a name may have.
const longestName = 60

// nameTyped reads a name.
func nameTyped(typed string) (string, error) {
	name := strings.Join(strings.Fields(typed), " ")
	if n := utf8.RuneCountInString(name); n > longestName {
		return "", refused("that name has %d letters; use at most %d", n, longestName)
	}
	return name, nil
}

// personTyped returns the id of the person of a name; none for no name.
func (s *server) personTyped(typed string) (id string, err error) {
	name, err := nameTyped(typed)
	if err != nil || name == "" {
		return "", err
	}
	return s.people.PersonNamed(name)
}

// names are people's names by their ids; none if the book can't read them.
func (s *server) names() map[string]string {
	names, err := s.people.Names()
	if err != nil {
		return nil // then the pages show their ids
	}
	return names
}

// pairView is the form in which a device types the code.
type pairView struct {
	Bad       string
	Name, Who string
}

func (s *server) pairPage(r *request) error {
	if s.Share == nil {
		return notFound("these pages are not open to other devices. On the computer, start the program with --share")
	}
	return s.showPair(r, http.StatusOK, "")
}

func (s *server) showPair(r *request, status int, bad string) error {
	return s.show(r, status, "pair", view{Title: "Pair this device", Bare: true, Main: pairView{bad, r.FormValue("name"), r.FormValue("who")}})
}

// pair pairs the device: code (as it stands on the computer), name (of the device), who
// (writes on it).
func (s *server) pair(r *request) error {
	if s.Share == nil {
		return notFound("these pages are not open to other devices. On the computer, start the program with --share")
	}
	name, err := nameTyped(r.FormValue("name"))
	if err == nil {
		_, err = nameTyped(r.FormValue("who")) // before the code is spent
	}
	if err != nil {
		return err
	}
	if name == "" {
		name = "a device"
	}
	err = s.Share.Check(r.FormValue("code"))
	switch {
	case errors.Is(err, errTooSoon):
		r.w.Header().Set("Retry-After", "60")
		return s.showPair(r, http.StatusTooManyRequests, fmt.Sprint(err))
	case err != nil:
		return s.showPair(r, http.StatusForbidden, fmt.Sprint(err))
	}
	who, err := s.personTyped(r.FormValue("who"))
	if err != nil {
		return err
	}
	http.SetCookie(r.w, pairedCookie(s.devices.add(name, who)))
	r.goTo("/")
	return nil
}
