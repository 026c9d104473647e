package testkit

import (
	"bytes"
	"io"
	"io/fs"
	"testing"
	"testing/fstest"

	"eyeup/internal/opendata"
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

// Example is the example garden with the record of Waterville as its weather.
func Example(t testing.TB) fs.FS {
	t.Helper()
	folder := fstest.MapFS{}
	for name, path := range map[string]string{
		"garden.toml": "example/garden.toml", "stock.csv": "example/stock.csv",
		"weather.csv": "daily/USC00179151_waterville-me_and_niles-mi.csv",
	} {
		folder[name] = &fstest.MapFile{Data: opendata.Read(t, path)}
	}
	return folder
}
