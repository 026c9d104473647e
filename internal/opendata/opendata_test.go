package opendata

import (
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"
)

// atMost is how many bytes all files together may take in the repository.
const atMost = 2_500_000

// Every file says, byte for byte, what its source gave: line ends, missing values and
// doubled stations too. SHA256SUMS was made of the files before they were compressed.
func TestFilesAreAsTheirSourceGaveThem(t *testing.T) {
	sums := map[string]string{}
	for line := range strings.Lines(text(t, "SHA256SUMS")) {
		sum, name, _ := strings.Cut(strings.TrimSpace(line), "  ")
		sums[name] = sum
	}
	for _, name := range names(t) {
		if sum := sha256.Sum256(Read(t, name)); sums[name] != hex.EncodeToString(sum[:]) {
			t.Errorf("%s: SHA256SUMS says %q, the file has %x", name, sums[name], sum)
		}
		delete(sums, name)
	}
	if len(sums) > 0 {
		t.Errorf("SHA256SUMS names files that are not there: %v", slices.Sorted(maps.Keys(sums)))
	}
}

// README.md names every file; it tells origin, licence and what was done to it.
func TestEveryFileHasItsOrigin(t *testing.T) {
	readme := text(t, "README.md")
	for _, name := range names(t) {
		if !strings.Contains(readme, "`"+name+"`") {
			t.Errorf("README.md does not tell where %s is from", name)
		}
	}
}

// text reads a file beside this one.
func text(t *testing.T, name string) string {
	t.Helper()
	content, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(content)
}

// names lists the files as Read knows them, and sees that they are small together.
func names(t *testing.T) (all []string) {
	t.Helper()
	var size int64
	err := fs.WalkDir(files, "data", func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		info, err := e.Info()
		if err != nil {
			return err
		}
		size += info.Size()
		all = append(all, strings.TrimSuffix(strings.TrimPrefix(path, "data/"), ".zst"))
		return nil
	})
	if err != nil || size > atMost || len(all) == 0 {
		t.Fatalf("%d files of %d bytes, at most %d, %v", len(all), size, atMost, err)
	}
	return all
}
