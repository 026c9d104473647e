// Package opendata holds the files that tests are checked against: open records of weather,
// of freezes and of a glasshouse, and a small invented garden. README.md tells where each
// is from and under which licence. Tests alone use it.
package opendata

import (
	"bytes"
	"embed"
	"errors"
	"io/fs"
	"testing"

	"github.com/klauspost/compress/zstd"
)

//go:embed data
var files embed.FS

// Read returns the content of a file, byte for byte as its source gave it, such as
// "daily/mullingar_dly875.csv". Large files lie compressed, under their name and ".zst".
func Read(t testing.TB, name string) []byte {
	t.Helper()
	content, err := read(name)
	if err != nil {
		t.Fatalf("internal/opendata: %v", err)
	}
	return content
}

// Open returns a reader of a file's content. See Read.
func Open(t testing.TB, name string) *bytes.Reader {
	t.Helper()
	return bytes.NewReader(Read(t, name))
}

func read(name string) ([]byte, error) {
	content, err := files.ReadFile("data/" + name)
	if !errors.Is(err, fs.ErrNotExist) {
		return content, err
	}
	packed, err := files.ReadFile("data/" + name + ".zst")
	if err != nil {
		return nil, err
	}
	d, err := zstd.NewReader(nil)
	if err != nil {
		return nil, err
	}
	defer d.Close()
	return d.DecodeAll(packed, nil)
}
