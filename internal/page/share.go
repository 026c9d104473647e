package page

import (
	"crypto/rand"
	"crypto/subtle"
	"encoding/hex"
	"errors"
	"fmt"
	"net"
	"net/http"
	"slices"
	"strings"
	"sync"
	"time"
)

// Share opens the pages to the local network: a device is paired by a code that serves
// once, for a short time, and is shown on the computer alone.
type Share struct {
	mu       sync.Mutex
	now      func() time.Time
	names    []string // by which other devices reach this machine
	code     string
	until    time.Time // the code serves
	wrong    int       // codes typed wrong in a row
	calm     time.Time // until then no code is looked at
	sessions []Session
}

// Session is a paired device.
type Session struct {
	Name  string    // of the device, as it calls itself
	Since time.Time // when it was paired
	Seen  time.Time // when it was last here
	End   string    // by which it is ended
	token string
}

// How long codes and sessions last, and how wrong codes are slowed down.
const (
	codeLasts    = 5 * time.Minute
	sessionLasts = 30 * 24 * time.Hour
	wrongAllowed = 5 // then the code is spent
)

// NewShare returns a share for a machine that other devices reach by the given names or
// addresses.
func NewShare(now func() time.Time, names ...string) *Share {
	s := &Share{now: now}
	for _, n := range names {
		s.names = append(s.names, strings.ToLower(n))
	}
	return s
}

// Names returns the names by which other devices reach this machine.
func (s *Share) Names() []string { return s.names }

func (s *Share) isNamed(host string) bool { return slices.Contains(s.names, host) }

// NewCode makes a code, in place of the one before.
func (s *Share) NewCode() (code string, until time.Time) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.code, s.until, s.wrong = draw(8), s.now().Add(codeLasts), 0
	return s.code, s.until
}

// Code returns the code that serves now; empty for none.
func (s *Share) Code() (code string, until time.Time) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.now().After(s.until) {
		s.code = ""
	}
	return s.code, s.until
}

// signs of codes: no two look alike.
const signs = "23456789ACEFHKMNPRTUWXY"

// draw draws so many signs at random.
func draw(n int) string {
	b := make([]byte, 0, n)
	one := make([]byte, 1)
	for len(b) < n {
		_, _ = rand.Read(one)                        // never fails: see crypto/rand
		if int(one[0]) < 256/len(signs)*len(signs) { // each sign as likely as another
			b = append(b, signs[int(one[0])%len(signs)])
		}
	}
	return string(b)
}

var (
	errWrongCode = errors.New("that is not the code on the computer, or it has served already; look at it again, or make a new one there")
	errTooSoon   = errors.New("too many wrong codes; wait a little and try again")
)

// Pair pairs a device by the code it typed and returns the token it is known by. Wrong
// codes are slowed down, ever longer; five in a row spend the code.
func (s *Share) Pair(typed, name string) (token string, err error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	now := s.now()
	if now.Before(s.calm) {
		return "", errTooSoon
	}
	typed = strings.ToUpper(strings.Join(strings.Fields(typed), ""))
	right := s.code != "" && !now.After(s.until) && subtle.ConstantTimeCompare([]byte(typed), []byte(s.code)) == 1
	if !right {
		s.wrong++
		s.calm = now.Add(time.Second << min(s.wrong-1, 6))
		if s.wrong >= wrongAllowed {
			s.code = ""
		}
		return "", errWrongCode
	}
	s.code, s.wrong = "", 0
	secret := make([]byte, 32)
	_, _ = rand.Read(secret) // never fails: see crypto/rand
	token = hex.EncodeToString(secret)
	s.sessions = append(s.sessions, Session{Name: name, Since: now, Seen: now, End: draw(12), token: token})
	return token, nil
}

// cookieName is the cookie by which a paired device is known.
const cookieName = "paired"

// isPaired reports whether a request comes from a paired device, and which.
func (s *Share) isPaired(r *http.Request) (device string, is bool) {
	c, err := r.Cookie(cookieName)
	if err != nil {
		return "", false
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	now := s.now()
	s.sessions = slices.DeleteFunc(s.sessions, func(one Session) bool { return now.Sub(one.Since) > sessionLasts })
	for i := range s.sessions {
		if subtle.ConstantTimeCompare([]byte(s.sessions[i].token), []byte(c.Value)) == 1 {
			s.sessions[i].Seen = now
			return s.sessions[i].Name, true
		}
	}
	return "", false
}

// Sessions lists the paired devices.
func (s *Share) Sessions() []Session {
	s.mu.Lock()
	defer s.mu.Unlock()
	return slices.Clone(s.sessions)
}

// EndSession ends the session of that name for ending.
func (s *Share) EndSession(end string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.sessions = slices.DeleteFunc(s.sessions, func(one Session) bool { return one.End == end })
}

// shareView shows the code and the paired devices, on the computer alone.
type shareView struct {
	Open     bool
	Code     string
	Until    time.Time
	At       []string
	Sessions []Session
}

var errNotHere = fault{http.StatusForbidden, "codes and devices are looked after on the computer that the pages run on"}

func (s *server) sharePage(r *request) error {
	if isGuest(r.Context()) {
		return errNotHere
	}
	v := shareView{Open: s.Share != nil}
	if v.Open {
		v.Code, v.Until = s.Share.Code()
		v.Sessions = s.Share.Sessions()
		_, port, _ := net.SplitHostPort(r.Host)
		for _, n := range s.Share.Names() {
			v.At = append(v.At, "http://"+net.JoinHostPort(n, port)+"/pair")
		}
	}
	return s.show(r, http.StatusOK, "share", view{Title: "Other devices", Main: v})
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

// endSession ends a session: end (its word for ending).
func (s *server) endSession(r *request) error {
	if isGuest(r.Context()) || s.Share == nil {
		return errNotHere
	}
	s.Share.EndSession(r.FormValue("end"))
	r.goTo("/share")
	return nil
}

// pairView is the form in which a device types the code.
type pairView struct{ Bad string }

func (s *server) pairPage(r *request) error {
	if s.Share == nil {
		return notFound("these pages are not opened to other devices; start them with --share")
	}
	return s.showPair(r, http.StatusOK, "")
}

func (s *server) showPair(r *request, status int, bad string) error {
	return s.show(r, status, "pair", view{Title: "Pair this device", Bare: true, Main: pairView{bad}})
}

// pair pairs the device: code (as it stands on the computer), name (of the device).
func (s *server) pair(r *request) error {
	if s.Share == nil {
		return notFound("these pages are not opened to other devices; start them with --share")
	}
	name := strings.TrimSpace(r.FormValue("name"))
	if name == "" {
		name = "a device"
	}
	if len(name) > 60 {
		return refused("a name of %d letters is too long; 60 will do", len(name))
	}
	token, err := s.Share.Pair(r.FormValue("code"), name)
	switch {
	case errors.Is(err, errTooSoon):
		r.w.Header().Set("Retry-After", "60")
		return s.showPair(r, http.StatusTooManyRequests, fmt.Sprint(err))
	case err != nil:
		return s.showPair(r, http.StatusForbidden, fmt.Sprint(err))
	}
	http.SetCookie(r.w, &http.Cookie{Name: cookieName, Value: token, Path: "/", MaxAge: int(sessionLasts.Seconds()), HttpOnly: true, SameSite: http.SameSiteStrictMode})
	r.goTo("/")
	return nil
}
