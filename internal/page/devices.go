package page

import (
	"crypto/rand"
	"crypto/sha256"
	"crypto/subtle"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"time"
)

// Device is a paired device.
type Device struct {
	Name   string    `json:"name"`  // as it calls itself
	Who    string    `json:"who"`   // id of whoever writes on it; empty where that was not said
	Since  time.Time `json:"since"` // when it was paired
	Seen   time.Time `json:"seen"`  // when it was last here
	End    string    `json:"end"`   // by which it is ended
	Secret string    `json:"token"` // SHA-256 of its token, in hex; the token itself is the device's alone
}

// unusedFor is how long a device stays paired that is not used.
const unusedFor = 90 * 24 * time.Hour

// devices are the paired devices, and who writes on this machine. They are kept in a file
// of their own beside the book, which only its owner may read: they are no part of the
// garden's record, and whoever copies the book pairs anew.
type devices struct {
	mu     sync.Mutex
	now    func() time.Time
	file   string // empty: they end with the program
	here   string // id of whoever writes on this machine
	paired []Device
	key    string // of the calendar's address; empty: it is not shared
	failed error  // why they can't be kept
}

// devicesFile is what the file holds.
type devicesFile struct {
	Here     string   `json:"here"`
	Paired   []Device `json:"devices"`
	Calendar string   `json:"calendar,omitempty"` // the key itself, for its address is shown again
}

// keepIn reads the devices from a file, if it is there, and keeps them in it from now on.
// A file that can't be read leaves none paired, and is told on the page of devices.
func (d *devices) keepIn(file string) {
	if file == "" {
		return
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	d.file = file
	text, err := os.ReadFile(file)
	if errors.Is(err, fs.ErrNotExist) {
		return
	}
	var said devicesFile
	if err == nil {
		err = json.Unmarshal(text, &said)
	}
	if err != nil {
		d.failed = fmt.Errorf("the paired devices can't be read from %s: %w; pair them again", file, err)
		return
	}
	d.here, d.paired, d.key = said.Here, said.Paired, said.Calendar
}

// keep writes the file: whole, or not at all.
func (d *devices) keep() {
	if d.file == "" {
		return
	}
	text, err := json.MarshalIndent(devicesFile{d.here, d.paired, d.key}, "", "  ")
	if err == nil {
		err = writeWhole(d.file, append(text, '\n'))
	}
	d.failed = nil
	if err != nil {
		d.failed = fmt.Errorf("the paired devices can't be kept in %s: %w; they end with the program", d.file, err)
	}
}

// writeWhole writes a file that only its owner may read, under another name first.
func writeWhole(file string, text []byte) error {
	half, err := os.CreateTemp(filepath.Dir(file), filepath.Base(file)+".*") // readable by the owner alone
	if err != nil {
		return err
	}
	_, err = half.Write(text)
	err = errors.Join(err, half.Sync(), half.Close())
	if err == nil {
		err = os.Rename(half.Name(), file)
	}
	if err != nil {
		return errors.Join(err, os.Remove(half.Name()))
	}
	return nil
}

// add pairs a device and returns the token it is known by.
func (d *devices) add(name, who string) (token string) {
	secret := make([]byte, 32)
	_, _ = rand.Read(secret) // never fails: see crypto/rand
	token = hex.EncodeToString(secret)
	d.mu.Lock()
	defer d.mu.Unlock()
	now := d.now().UTC().Truncate(time.Second)
	d.paired = append(d.paired, Device{Name: name, Who: who, Since: now, Seen: now, End: draw(12), Secret: hashed(token)})
	d.keep()
	return token
}

func hashed(token string) string {
	sum := sha256.Sum256([]byte(token))
	return hex.EncodeToString(sum[:])
}

// known returns the device of a token, and whether it is the first time on a day that it
// is here: then its cookie is due anew.
func (d *devices) known(token string) (device Device, anew, is bool) {
	want := []byte(hashed(token))
	d.mu.Lock()
	defer d.mu.Unlock()
	now := d.now().UTC().Truncate(time.Second)
	d.forget(now)
	for i := range d.paired {
		if subtle.ConstantTimeCompare([]byte(d.paired[i].Secret), want) != 1 {
			continue
		}
		if anew = now.Sub(d.paired[i].Seen) > 24*time.Hour; anew {
			d.paired[i].Seen = now
			d.keep()
		}
		d.paired[i].Seen = now
		return d.paired[i], anew, true
	}
	return Device{}, false, false
}

// forget ends devices that were not used for too long.
func (d *devices) forget(now time.Time) {
	before := len(d.paired)
	d.paired = slices.DeleteFunc(d.paired, func(one Device) bool { return now.Sub(one.Seen) > unusedFor })
	if len(d.paired) < before {
		d.keep()
	}
}

// list lists the paired devices, and why they can't be kept, if so.
func (d *devices) list() ([]Device, error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.forget(d.now())
	return slices.Clone(d.paired), d.failed
}

// end ends the device of that word for ending.
func (d *devices) end(word string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.paired = slices.DeleteFunc(d.paired, func(one Device) bool { return one.End == word })
	d.keep()
}

// writesHere returns who writes on this machine, and setHere sets it.
func (d *devices) writesHere() string {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.here
}

func (d *devices) setHere(who string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.here = who
	d.keep()
}
