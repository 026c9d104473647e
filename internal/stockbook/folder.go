package stockbook

import (
	"bytes"
	"io/fs"
	"time"
)

// MemoryFolder is a folder in memory without subfolders: the content of its files by their names.
type MemoryFolder map[string][]byte

// Open opens a file of the folder.
func (d MemoryFolder) Open(name string) (fs.File, error) {
	content, there := d[name]
	if !there {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	}
	return memoryFile{bytes.NewReader(content), name, int64(len(content))}, nil
}

// memoryFile is a file in memory. It is its own fs.FileInfo.
type memoryFile struct {
	*bytes.Reader
	name   string
	length int64
}

func (d memoryFile) Stat() (fs.FileInfo, error) { return d, nil }
func (d memoryFile) Close() error               { return nil }
func (d memoryFile) Name() string               { return d.name }
func (d memoryFile) Size() int64                { return d.length }
func (d memoryFile) Mode() fs.FileMode          { return 0o444 }
func (d memoryFile) ModTime() time.Time         { return time.Time{} }
func (d memoryFile) IsDir() bool                { return false }
func (d memoryFile) Sys() any                   { return nil }
