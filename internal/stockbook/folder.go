package stockbook

import (
	"bytes"
	"io/fs"
	"time"
)

// Drawer is a folder held in memory, flat: its files by their names.
type Drawer map[string][]byte

// Open opens one of the files.
func (d Drawer) Open(name string) (fs.File, error) {
	content, there := d[name]
	if !there {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	}
	return drawn{bytes.NewReader(content), name, int64(len(content))}, nil
}

// drawn is a file held in memory. It tells of itself, too.
type drawn struct {
	*bytes.Reader
	name   string
	length int64
}

func (d drawn) Stat() (fs.FileInfo, error) { return d, nil }
func (d drawn) Close() error               { return nil }
func (d drawn) Name() string               { return d.name }
func (d drawn) Size() int64                { return d.length }
func (d drawn) Mode() fs.FileMode          { return 0o444 }
func (d drawn) ModTime() time.Time         { return time.Time{} }
func (d drawn) IsDir() bool                { return false }
func (d drawn) Sys() any                   { return nil }
