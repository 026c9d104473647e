package testkit

import (
	"bytes"
	"io"
	"testing/fstest"
)

// Memory is a folder being written.
type Memory struct{ fstest.MapFS }

// Create opens a file of the folder, which is there once it is closed.
func (m Memory) Create(name string) (io.WriteCloser, error) {
	return &memoryFile{m: m, name: name}, nil
}

type memoryFile struct {
	bytes.Buffer
	m    Memory
	name string
}

func (f *memoryFile) Close() error {
	f.m.MapFS[f.name] = &fstest.MapFile{Data: f.Bytes()}
	return nil
}
