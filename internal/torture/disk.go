package main

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"sync"

	"github.com/ncruces/go-sqlite3"
	"github.com/ncruces/go-sqlite3/vfs"

	"eyeup/internal/book"
)

// disk is a VFS that simulates power failures and a full disk. Writes go to the files as
// usual; it also keeps what a real disk would hold: the files as of their last sync, and every
// write since.
type disk struct {
	vfs.VFSFilename

	mu     sync.Mutex
	files  map[string]*platter
	syncs  int
	room   int // writes that still succeed; less than 0: any number
	writes int
}

// platter is the durable content of a file, and the writes not yet synced.
type platter struct {
	there  bool // its name is in the folder for good
	synced []byte
	since  []change
}

// change is one write or truncation that is not synced yet.
type change struct {
	at       int64
	bytes    []byte
	truncate bool
}

// newDisk registers a disk under a name.
func newDisk(name string) *disk {
	d := &disk{VFSFilename: vfs.Find("eyeup").(vfs.VFSFilename), files: map[string]*platter{}, room: -1}
	vfs.Register(name, d)
	return d
}

// OpenFilename opens a file and starts its platter.
func (d *disk) OpenFilename(name *vfs.Filename, flags vfs.OpenFlag) (vfs.File, vfs.OpenFlag, error) {
	f, got, err := d.VFSFilename.OpenFilename(name, flags)
	if err != nil || name == nil || name.String() == "" {
		return f, got, err
	}
	return &file{book.Wrap(f), d, d.platterOf(name.String())}, got, nil
}

// OpenPlain opens a journal and begins to keep its platter.
func (d *disk) OpenPlain(path string) (book.PlainFile, error) {
	f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return nil, err
	}
	return &plain{f, d, d.platterOf(path)}, nil
}

// platterOf returns the platter of a file; what it holds already is on it for good.
func (d *disk) platterOf(path string) *platter {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.files[path] == nil {
		p := &platter{}
		if content, err := os.ReadFile(path); err == nil && len(content) > 0 {
			p.there, p.synced = true, content
		}
		d.files[path] = p
	}
	return d.files[path]
}

// take counts a write, and refuses it where the disk is full.
func (d *disk) take(p *platter, c change) error {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.writes++
	if d.room == 0 {
		return sqlite3.FULL
	}
	if d.room > 0 {
		d.room--
	}
	p.since = append(p.since, c)
	return nil
}

// sync brings what was written to the platter. A file's name is in the folder from its
// first sync on, as SQLite syncs the folder then.
func (d *disk) sync(p *platter) {
	d.mu.Lock()
	defer d.mu.Unlock()
	p.there = true
	for _, c := range p.since {
		p.synced = c.apply(p.synced)
	}
	p.since = nil
}

// Delete removes a file; the removal is durable only after the next sync of the folder.
func (d *disk) Delete(path string, syncDir bool) error {
	d.mu.Lock()
	delete(d.files, path)
	d.mu.Unlock()
	return d.VFSFilename.Delete(path, syncDir)
}

// file is a file on the disk.
type file struct {
	*book.File
	disk    *disk
	platter *platter
}

// WriteAt writes, unless the disk is full.
func (f *file) WriteAt(b []byte, at int64) (int, error) {
	if err := f.disk.take(f.platter, change{at: at, bytes: append([]byte(nil), b...)}); err != nil {
		return 0, err
	}
	return f.File.WriteAt(b, at)
}

// Truncate cuts the file short.
func (f *file) Truncate(size int64) error {
	if err := f.disk.take(f.platter, change{at: size, truncate: true}); err != nil {
		return err
	}
	return f.File.Truncate(size)
}

// Sync brings what was written to the platter.
func (f *file) Sync(vfs.SyncFlag) error {
	f.disk.mu.Lock()
	f.disk.syncs++
	f.disk.mu.Unlock()
	f.disk.sync(f.platter)
	return nil // the platter is what counts; the file itself need not reach a real disk
}

// plain is a journal on the disk.
type plain struct {
	*os.File
	disk    *disk
	platter *platter
}

// WriteAt writes, unless the disk is full.
func (f *plain) WriteAt(b []byte, at int64) (int, error) {
	if err := f.disk.take(f.platter, change{at: at, bytes: append([]byte(nil), b...)}); err != nil {
		return 0, err
	}
	return f.File.WriteAt(b, at)
}

// Truncate cuts the file short. A full disk does that too.
func (f *plain) Truncate(size int64) error {
	f.disk.mu.Lock()
	f.platter.since = append(f.platter.since, change{at: size, truncate: true})
	f.disk.mu.Unlock()
	return f.File.Truncate(size)
}

// Sync brings what was written to the platter.
func (f *plain) Sync() error {
	f.disk.sync(f.platter)
	return nil
}

func (c change) apply(content []byte) []byte {
	if c.truncate {
		if int64(len(content)) > c.at {
			return content[:c.at:c.at]
		}
		return content
	}
	if need := c.at + int64(len(c.bytes)); int64(len(content)) < need {
		content = append(content, make([]byte, need-int64(len(content)))...)
	}
	copy(content[c.at:], c.bytes)
	return content
}

// cut writes to a folder what remains of all files after a power failure: what was synced, and
// a random part of the rest in any order, down to half a sector.
func (d *disk) cut(folder string, chance *rand.Rand) error {
	d.mu.Lock()
	defer d.mu.Unlock()
	for path, p := range d.files {
		if filepath.Ext(path) == ".book-shm" || !p.there && chance.IntN(2) == 0 {
			continue
		}
		content := append([]byte(nil), p.synced...)
		mood := chance.IntN(3) // nothing of it, all of it, some of it
		for _, c := range p.since {
			if mood == 0 || mood == 2 && chance.IntN(2) == 0 {
				continue
			}
			if mood == 2 && len(c.bytes) > sector && chance.IntN(4) == 0 {
				c.bytes = c.bytes[:sector*(1+chance.IntN(len(c.bytes)/sector))]
			}
			content = c.apply(content)
		}
		if err := os.WriteFile(filepath.Join(folder, filepath.Base(path)), content, 0o600); err != nil {
			return err
		}
	}
	return nil
}

// sector is what a disk writes whole.
const sector = 512
