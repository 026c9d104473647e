package page

import (
	"fmt"
	"net/http"
	"net/url"
	"path/filepath"
	"sync"
	"testing"
	"time"
)

// TestTwoProgramsShareDevices pairs phones at two programs that serve one book, at the same
// time: each knows all of them; one that is ended at either is out at both, and stays so.
func TestTwoProgramsShareDevices(t *testing.T) {
	_, d := writing(t)
	c := &clock{testNow()}
	file := filepath.Join(t.TempDir(), "my.book.devices")
	one, shareOne := opened(t, d, c, file)
	two, shareTwo := opened(t, d, c, file)
	const each = 12
	tokens := make([]string, 2*each)
	var both sync.WaitGroup
	for program, share := range []*Share{shareOne, shareTwo} {
		both.Go(func() {
			for i := range each {
				tokens[program*each+i] = share.devices.add(fmt.Sprintf("phone %d of %d", i, program), "")
			}
		})
	}
	both.Wait()
	phone := func(h http.Handler, token string) *device {
		return &device{h: h, cookies: []*http.Cookie{{Name: cookieName, Value: token}}}
	}
	for _, h := range []http.Handler{one, two} {
		for i, token := range tokens {
			if !phone(h, token).isIn() {
				t.Errorf("phone %d is lost to a program", i)
			}
		}
	}
	all, _ := shareTwo.devices.list()
	if len(all) != 2*each {
		t.Fatalf("%d devices are listed, want %d", len(all), 2*each)
	}
	lost := all[0]
	post(t, one, "/share/end", url.Values{"end": {lost.End}})
	c.at = c.at.Add(48 * time.Hour) // all are seen anew, which is written down
	for i, token := range tokens {
		for name, h := range map[string]http.Handler{"one": one, "two": two} {
			if is, want := phone(h, token).isIn(), hashed(token) != lost.Secret; is != want {
				t.Errorf("phone %d is in at program %s: %v, want %v", i, name, is, want)
			}
		}
	}
	again, _ := opened(t, d, c, file)
	if all, _ := shareOne.devices.list(); len(all) != 2*each-1 {
		t.Errorf("%d devices are left, want %d", len(all), 2*each-1)
	}
	for _, token := range tokens {
		if hashed(token) == lost.Secret && phone(again, token).isIn() {
			t.Error("the phone that was ended is in again after a new start")
		}
	}
}

// TestWhoWritesAndTheCalendarAreSharedToo sets both at one program and asks another.
func TestWhoWritesAndTheCalendarAreSharedToo(t *testing.T) {
	_, d := writing(t)
	c := &clock{testNow()}
	file := filepath.Join(t.TempDir(), "my.book.devices")
	_, one := opened(t, d, c, file)
	_, two := opened(t, d, c, file)
	one.devices.setHere("someone")
	two.devices.newKey()
	if who, key := two.devices.writesHere(), one.devices.calendarKey(); who != "someone" || key == "" || one.devices.writesHere() != "someone" {
		t.Errorf("written by %q, key %q", who, key)
	}
	one.devices.endKey()
	if key := two.devices.calendarKey(); key != "" {
		t.Errorf("the calendar's address was withdrawn, and the other program still knows %q", key)
	}
}
