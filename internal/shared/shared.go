// Package shared finds the open data sets that tests are checked against. They
// lie beside the repository and are no part of it.
package shared

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"
)

// Path returns the path of a data file, such as "daily/mullingar_dly875.csv". Where
// the data are not there it skips the test, and says so; under CI, where nothing may be
// left out, it fails the test.
func Path(t testing.TB, name string) string {
	t.Helper()
	_, here, _, _ := runtime.Caller(0)
	path := filepath.Join(filepath.Dir(here), "..", "..", "..", "shared", "data", filepath.FromSlash(name))
	if _, err := os.Stat(path); err == nil {
		return path
	}
	if os.Getenv("CI") == "true" {
		t.Fatalf("the data file %s is not beside the repository", name)
	}
	t.Skipf("left out: the data file %s is not beside the repository", name)
	return ""
}

// Open opens a data file for reading and closes it when the test ends. See Path.
func Open(t testing.TB, name string) *os.File {
	t.Helper()
	f, err := os.Open(Path(t, name))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = f.Close() })
	return f
}
