package opendata

import (
	"io/fs"
	"testing"
	"testing/fstest"
)

// Example is the example garden with the record of Waterville as its weather.
func Example(t testing.TB) fs.FS {
	t.Helper()
	folder := fstest.MapFS{}
	for name, path := range map[string]string{
		"garden.toml": "example/garden.toml", "stock.csv": "example/stock.csv",
		"weather.csv": "daily/USC00179151_waterville-me_and_niles-mi.csv",
	} {
		folder[name] = &fstest.MapFile{Data: Read(t, path)}
	}
	return folder
}
