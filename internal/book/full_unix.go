//go:build linux || darwin

package book

import (
	"path/filepath"

	"golang.org/x/sys/unix"
)

// least is how much room a disk must have not to count as full, in bytes.
const least = 1 << 20

// isFull reports whether the disk on which a file lies has no room left.
func isFull(path string) bool {
	var s unix.Statfs_t
	if unix.Statfs(filepath.Dir(path), &s) != nil {
		return false
	}
	return uint64(s.Bavail)*uint64(s.Bsize) < least
}
