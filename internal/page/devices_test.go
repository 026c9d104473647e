package page

import (
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"eyeup/internal/desk"
	"eyeup/stock"
)

// clock is a clock that a test sets.
type clock struct{ at time.Time }

func (c *clock) now() time.Time { return c.at }

// opened serves a garden to the local network, as a program that has just been started.
func opened(t *testing.T, d *desk.Desk, c *clock, file string) (http.Handler, *Share) {
	t.Helper()
	share := NewShare(c.now, "192.168.1.7")
	return handler(t, d, Options{Share: share, Devices: file}), share
}

// paired pairs a phone.
func paired(t *testing.T, h http.Handler, share *Share, who string) *device {
	t.Helper()
	code, _ := share.NewCode()
	phone := &device{h: h}
	if res := phone.ask(http.MethodPost, "/pair", url.Values{"code": {code}, "name": {"pocket"}, "who": {who}}); res.StatusCode != http.StatusSeeOther {
		t.Fatalf("pairing: status %d", res.StatusCode)
	}
	return phone
}

func (d *device) isIn() bool { return d.ask(http.MethodGet, "/stock", nil).StatusCode == http.StatusOK }

// TestDevicesOutlastTheProgram pairs a phone, starts the program anew, and ends the phone.
func TestDevicesOutlastTheProgram(t *testing.T) {
	_, d := writing(t)
	c := &clock{testNow()}
	file := filepath.Join(t.TempDir(), "my.book.devices")
	h, share := opened(t, d, c, file)
	phone := paired(t, h, share, "Quoll")
	token := phone.cookies[0].Value
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(string(text), token) || strings.Contains(string(text), "Quoll") {
		t.Errorf("the file tells the token, or a name that can't be blanked there: %s", text)
	}
	if info, err := os.Stat(file); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("others may read the file: %v, %v", info.Mode(), err)
	}
	phone.h, share = opened(t, d, c, file)
	if !phone.isIn() {
		t.Error("after the program was started anew the phone is not paired any more")
	}
	_, body := get(t, phone.h, "/share")
	if !strings.Contains(body, "pocket") || !strings.Contains(body, "used by Quoll") {
		t.Errorf("the phone is not listed: %s", gist(body))
	}
	all, _ := share.devices.list()
	post(t, phone.h, "/share/end", url.Values{"end": {all[0].End}})
	if phone.isIn() {
		t.Error("the phone was ended and is in still")
	}
	phone.h, _ = opened(t, d, c, file)
	if phone.isIn() {
		t.Error("the phone was ended and is in again after a new start")
	}
}

// TestUnusedDevicesAreForgotten leaves a phone away for 89 days, which is not too long, and
// then for 91.
func TestUnusedDevicesAreForgotten(t *testing.T) {
	_, d := writing(t)
	c := &clock{testNow()}
	file := filepath.Join(t.TempDir(), "my.book.devices")
	h, share := opened(t, d, c, file)
	phone := paired(t, h, share, "")
	for range 2 {
		c.at = c.at.Add(89 * 24 * time.Hour)
		sent := len(phone.cookies)
		if !phone.isIn() {
			t.Fatal("the phone was used 89 days ago and is forgotten")
		}
		if len(phone.cookies) == sent {
			t.Error("its cookie is not sent anew")
		}
		phone.h, _ = opened(t, d, c, file)
	}
	c.at = c.at.Add(91 * 24 * time.Hour)
	if phone.isIn() {
		t.Error("the phone was not used for 91 days and is in still")
	}
	if text, _ := os.ReadFile(file); strings.Contains(string(text), "pocket") {
		t.Errorf("the phone is in the file still: %s", text)
	}
}

// TestADamagedDevicesFile lets nobody in, and says so.
func TestADamagedDevicesFile(t *testing.T) {
	_, d := writing(t)
	file := filepath.Join(t.TempDir(), "my.book.devices")
	if err := os.WriteFile(file, []byte(`{"devices": [{"token": ""`), 0o600); err != nil {
		t.Fatal(err)
	}
	h, _ := opened(t, d, &clock{testNow()}, file)
	phone := &device{h: h, cookies: []*http.Cookie{{Name: cookieName, Value: ""}}}
	if phone.isIn() {
		t.Error("a device without a token is let in")
	}
	if _, body := get(t, h, "/share"); !strings.Contains(body, "Pair them again") {
		t.Errorf("the page of devices does not say that they can't be read: %s", gist(body))
	}
}

// TestEntriesTellWhoWroteThem writes on a phone and on the machine itself, and undoes on
// the phone. A name that was blanked is told by nothing.
func TestEntriesTellWhoWroteThem(t *testing.T) {
	_, d := writing(t)
	h, share := opened(t, d, &clock{testNow()}, "")
	phone := paired(t, h, share, " Quoll  Test ")
	again := paired(t, h, share, "Quoll Test")
	lot, _ := clumps(t, d, 4)
	note := url.Values{"lot": {string(lot.Code)}, "text": {"seen"}}
	first := entryOfPost(t, d, phone.ask(http.MethodPost, "/write/note", note))
	second := entryOfPost(t, d, again.ask(http.MethodPost, "/write/note", note))
	if first.Who == "" || first.Who != second.Who || first.Device != "pocket" {
		t.Errorf("the phone's entries are by %q on %q, and by %q", first.Who, first.Device, second.Who)
	}
	post(t, h, "/share/who", url.Values{"who": {"Rook"}})
	_, _, to := post(t, h, "/write/note", note)
	id, err := stock.ParseID(wroteIn(t, to))
	if err != nil {
		t.Fatal(err)
	}
	if own, _ := d.Entry(id); own.Who == "" || own.Who == first.Who {
		t.Errorf("this machine's entry is by %q", own.Who)
	}
	for _, path := range []string{"/stock/" + string(lot.Code), "/log"} {
		if _, body := get(t, h, path); !strings.Contains(body, "by Quoll Test on pocket") || !strings.Contains(body, "by Rook") {
			t.Errorf("%s does not tell who wrote", path)
		}
	}
	undone := entryOfPost(t, d, phone.ask(http.MethodPost, "/undo", url.Values{"entry": {first.ID.String()}}))
	if undone.Who != first.Who || undone.Device != "pocket" {
		t.Errorf("the undoing is by %q on %q", undone.Who, undone.Device)
	}
	names, err := d.Names()
	if err != nil || names[first.Who] != "Quoll Test" {
		t.Fatalf("the names are %v, %v", names, err)
	}
	if says := byWords(first, map[string]string{first.Who: ""}); strings.Contains(says, "Quoll") || !strings.Contains(says, "removed") {
		t.Errorf("of a blanked name it is said: %s", says)
	}
}

// entryOfPost is the entry that a form wrote.
func entryOfPost(t *testing.T, d *desk.Desk, res *http.Response) stock.Entry {
	t.Helper()
	u, err := url.Parse(res.Header.Get("Location"))
	if err != nil || res.StatusCode != http.StatusSeeOther {
		t.Fatalf("status %d, %v", res.StatusCode, err)
	}
	id, err := stock.ParseID(u.Query().Get("wrote") + u.Query().Get("undid"))
	if err != nil {
		t.Fatal(err)
	}
	e, err := d.Entry(id)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// TestGuestsLookAfterNoDevices asks, from a paired phone, for what the computer alone may.
func TestGuestsLookAfterNoDevices(t *testing.T) {
	_, d := writing(t)
	h, share := opened(t, d, &clock{testNow()}, "")
	phone := paired(t, h, share, "Quoll")
	for _, path := range []string{"/share/end", "/share/who", "/share/code"} {
		if res := phone.ask(http.MethodPost, path, url.Values{"who": {"Rook"}}); res.StatusCode != http.StatusForbidden {
			t.Errorf("%s: status %d", path, res.StatusCode)
		}
	}
}

// TestPairingSaysThatNothingIsEncrypted looks for it on both pages, the phone's and the
// computer's, before anything is typed.
func TestPairingSaysThatNothingIsEncrypted(t *testing.T) {
	_, d := writing(t)
	h, _ := opened(t, d, &clock{testNow()}, "")
	for _, path := range []string{"/pair", "/share"} {
		if _, body := get(t, h, path); !strings.Contains(body, "is not encrypted") || !strings.Contains(body, "only in your own network") {
			t.Errorf("%s does not say what a listener could do: %s", path, gist(body))
		}
	}
}
