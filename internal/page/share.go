package page

import (
	"crypto/rand"
	"crypto/subtle"
	"errors"
	"net/http"
	"slices"
	"strings"
	"sync"
	"time"
)

// Share opens the pages to the local network. A device is paired by a code. The code works
// once, for five minutes, and only the computer shows it.
type Share struct {
	mu      sync.Mutex
	now     func() time.Time
	names   []string // by which other devices reach this machine
	code    string
	until   time.Time // the code works
	wrong   int       // codes typed wrong in a row
	calm    time.Time // until then no code is checked
	devices *devices
}

// How long codes last, and how many wrong ones are allowed.
const (
	codeLasts    = 5 * time.Minute
	wrongAllowed = 5 // then the code no longer works
)

// NewShare returns a share for a machine that other devices reach by the given names or
// addresses.
func NewShare(now func() time.Time, names ...string) *Share {
	s := &Share{now: now, devices: &devices{now: now}}
	for _, n := range names {
		s.names = append(s.names, strings.ToLower(n))
	}
	return s
}

// Names returns the names by which other devices reach this machine.
func (s *Share) Names() []string { return s.names }

func (s *Share) isNamed(host string) bool { return slices.Contains(s.names, host) }

// NewCode makes a code. The one before no longer works.
func (s *Share) NewCode() (code string, until time.Time) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.code, s.until, s.wrong = draw(8), s.now().Add(codeLasts), 0
	return s.code, s.until
}

// Code returns the code that works now; empty for none.
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
	errWrongCode = errors.New("that is not the code on the computer, or it was used already. Check the code, or make a new one on the computer")
	errTooSoon   = errors.New("there were too many wrong codes. Wait a minute, then try again")
)

// Check checks a code that was typed; a right one then no longer works. After each wrong
// code the wait grows. After five in a row the code no longer works.
func (s *Share) Check(typed string) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	now := s.now()
	if now.Before(s.calm) {
		return errTooSoon
	}
	typed = strings.ToUpper(strings.Join(strings.Fields(typed), ""))
	right := s.code != "" && !now.After(s.until) && subtle.ConstantTimeCompare([]byte(typed), []byte(s.code)) == 1
	if !right {
		s.wrong++
		s.calm = now.Add(time.Second << min(s.wrong-1, 6))
		if s.wrong >= wrongAllowed {
			s.code = ""
		}
		return errWrongCode
	}
	s.code, s.wrong = "", 0
	return nil
}

// cookieName is the cookie by which a paired device is known.
const cookieName = "paired"

// pairedCookie is that cookie. It lives longer than the pairing, so that this program
// decides when the pairing ends, not the browser.
func pairedCookie(token string) *http.Cookie {
	return &http.Cookie{Name: cookieName, Value: token, Path: "/", MaxAge: int((unusedFor + 24*time.Hour).Seconds()), HttpOnly: true, SameSite: http.SameSiteStrictMode}
}

// paired reports whether a request comes from a paired device, and which. Once a day it
// sends the cookie again.
func (s *Share) paired(w http.ResponseWriter, r *http.Request) (device Device, is bool) {
	c, err := r.Cookie(cookieName)
	if err != nil {
		return Device{}, false
	}
	device, resend, is := s.devices.known(c.Value)
	if resend {
		http.SetCookie(w, pairedCookie(c.Value))
	}
	return device, is
}
