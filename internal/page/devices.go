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
	Name   string    `json:"name"`  // the name that was typed when it was paired
	Who    string    `json:"who"`   // id of whoever writes on it; empty if no name was given
	Since  time.Time `json:"since"` // when it was paired
	Seen   time.Time `json:"seen"`  // when it was last here
	End    string    `json:"end"`   // a random word by which the page unpairs it
	Secret string    `json:"token"` // SHA-256 of its token, in hex; the token itself is the device's alone
}

// unusedFor is how long a device stays paired that is not used.
const unusedFor = 90 * 24 * time.Hour

// devices are the paired devices, and who writes on this machine. They are kept in a file
// of their own beside the book, which only its owner may read. They are no part of the
// garden's record: after copying a book, devices are paired again. Several programs may
// serve one book. Each reads the file before it answers, so it sees at once what another
// wrote. Each locks the file and reads it again before it changes it.
type devices struct {
	mu     sync.Mutex
	now    func() time.Time
	file   string // empty: they end with the program
	held   devicesFile
	read   fs.FileInfo // of the file as it was last read; nil where there was none
	failed error       // why they can't be saved
}

// devicesFile is what the file holds.
type devicesFile struct {
	Here     string   `json:"here"` // id of whoever writes on this machine
	Paired   []Device `json:"devices"`
	Calendar string   `json:"calendar,omitempty"` // key of the calendar's address, the key itself, for the address is shown again; empty: it is not shared
}

// keepIn reads the devices from a file, if it exists, and saves them there from now on. If
// the file can't be read, none is paired, and the page of devices says so.
func (d *devices) keepIn(file string) {
	if file == "" {
		return
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	d.file = file
	d.look()
}

// look reads the file again if it was changed or removed since it was last read.
func (d *devices) look() {
	if d.file == "" {
		return
	}
	info, err := os.Stat(d.file)
	switch {
	case errors.Is(err, fs.ErrNotExist) && d.read == nil:
		return // nothing was kept yet
	case err == nil && d.read != nil && os.SameFile(info, d.read) && info.ModTime().Equal(d.read.ModTime()) && info.Size() == d.read.Size():
		return
	}
	free, err := lockFile(d.file + ".lock")
	if err != nil { // without the lock the file is still whole, as it is replaced in one step
		free = func() {}
	}
	defer free()
	d.load()
}

// load reads the file.
func (d *devices) load() {
	info, err := os.Stat(d.file)
	if errors.Is(err, fs.ErrNotExist) {
		if d.read != nil {
			d.held, d.read = devicesFile{}, nil
		}
		return
	}
	var said devicesFile
	text, err := os.ReadFile(d.file)
	if err == nil {
		err = json.Unmarshal(text, &said)
	}
	d.read, d.failed = info, nil
	if err != nil {
		said = devicesFile{}
		d.failed = fmt.Errorf("the paired devices can't be read from %s: %w. Pair them again", d.file, err)
	}
	d.held = said
}

// change reads the file, changes what it holds and writes it, whole or not at all. A lock
// keeps other programs from changing it meanwhile.
func (d *devices) change(what func(*devicesFile)) {
	if d.file == "" {
		what(&d.held)
		return
	}
	free, err := lockFile(d.file + ".lock")
	if err == nil {
		defer free()
		d.load()
	}
	what(&d.held)
	if err == nil {
		err = d.keep()
	}
	d.failed = nil
	if err != nil {
		d.failed = fmt.Errorf("the paired devices can't be saved in %s: %w. They stay paired until the program ends", d.file, err)
	}
}

// keep writes the file.
func (d *devices) keep() error {
	text, err := json.MarshalIndent(d.held, "", "  ")
	if err == nil {
		err = writeWhole(d.file, append(text, '\n'))
	}
	if err == nil {
		d.read, err = os.Stat(d.file)
	}
	return err
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
	device := Device{Name: name, Who: who, Since: now, Seen: now, End: draw(12), Secret: hashed(token)}
	d.change(func(f *devicesFile) { f.Paired = append(f.Paired, device) })
	return token
}

func hashed(token string) string {
	sum := sha256.Sum256([]byte(token))
	return hex.EncodeToString(sum[:])
}

// known returns the device of a token, and whether it was last here over a day ago: then
// its cookie is sent again.
func (d *devices) known(token string) (device Device, resend, is bool) {
	secret := hashed(token)
	d.mu.Lock()
	defer d.mu.Unlock()
	d.look()
	now := d.now().UTC().Truncate(time.Second)
	d.forget(now)
	at := d.held.of(secret)
	if at < 0 {
		return Device{}, false, false
	}
	if resend = now.Sub(d.held.Paired[at].Seen) > 24*time.Hour; resend {
		d.change(func(f *devicesFile) {
			if i := f.of(secret); i >= 0 { // another program may have unpaired it
				f.Paired[i].Seen = now
			}
		})
		if at = d.held.of(secret); at < 0 {
			return Device{}, false, false
		}
	}
	d.held.Paired[at].Seen = now
	return d.held.Paired[at], resend, true
}

// of finds a device by the hash of its token; below 0 if there is none.
func (f *devicesFile) of(secret string) int {
	return slices.IndexFunc(f.Paired, func(one Device) bool {
		return subtle.ConstantTimeCompare([]byte(one.Secret), []byte(secret)) == 1
	})
}

// forget unpairs devices that were not used for too long.
func (d *devices) forget(now time.Time) {
	unused := func(one Device) bool { return now.Sub(one.Seen) > unusedFor }
	if slices.ContainsFunc(d.held.Paired, unused) {
		d.change(func(f *devicesFile) { f.Paired = slices.DeleteFunc(f.Paired, unused) })
	}
}

// list returns the paired devices, and why they can't be saved, if so.
func (d *devices) list() ([]Device, error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.look()
	d.forget(d.now())
	return slices.Clone(d.held.Paired), d.failed
}

// end unpairs the device with that End.
func (d *devices) end(word string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.change(func(f *devicesFile) {
		f.Paired = slices.DeleteFunc(f.Paired, func(one Device) bool { return one.End == word })
	})
}

// writesHere returns who writes on this machine, and setHere sets it.
func (d *devices) writesHere() string {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.look()
	return d.held.Here
}

func (d *devices) setHere(who string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.change(func(f *devicesFile) { f.Here = who })
}
