package book

import (
	"path/filepath"

	"golang.org/x/sys/windows"
)

// least is how much room a disk must have not to count as full, in bytes.
const least = 1 << 20

// isFull reports whether the disk on which a file lies has no room left.
func isFull(path string) bool {
	dir, err := windows.UTF16PtrFromString(filepath.Dir(path))
	if err != nil {
		return false
	}
	var free uint64
	return windows.GetDiskFreeSpaceEx(dir, &free, nil, nil) == nil && free < least
}
