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

// Share opens the pages to the local network: a device is paired by a code that serves
// once, for a short time, and is shown on the computer alone.
type Share struct {
	mu      sync.Mutex
	now     func() time.Time
	names   []string // by which other devices reach this machine
	code    string
	until   time.Time // the code serves
	wrong   int       // codes typed wrong in a row
	calm    time.Time // until then no code is looked at
	devices *devices
}

// How long codes last, and how wrong codes are slowed down.
const (
	codeLasts    = 5 * time.Minute
	wrongAllowed = 5 // then the code is spent
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

// Check looks at a code that was typed, and spends it where it is right. Wrong codes are
// slowed down, ever longer; five in a row spend the code.
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

// pairedCookie is that cookie. It outlasts what the device is remembered for, which is
// decided here and not in the browser.
func pairedCookie(token string) *http.Cookie {
	return &http.Cookie{Name: cookieName, Value: token, Path: "/", MaxAge: int((unusedFor + 24*time.Hour).Seconds()), HttpOnly: true, SameSite: http.SameSiteStrictMode}
}

// paired reports whether a request comes from a paired device, and which. Its cookie is
// sent anew once a day.
func (s *Share) paired(w http.ResponseWriter, r *http.Request) (device Device, is bool) {
	c, err := r.Cookie(cookieName)
	if err != nil {
		return Device{}, false
	}
	device, anew, is := s.devices.known(c.Value)
	if anew {
		http.SetCookie(w, pairedCookie(c.Value))
	}
	return device, is
}
