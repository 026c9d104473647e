//go:build unix

package book

import (
	"errors"
	"os"
	"syscall"
)

// links returns how many names a file has.
func links(_ string, info os.FileInfo) (int, error) {
	s, is := info.Sys().(*syscall.Stat_t)
	if !is {
		return 0, errors.ErrUnsupported
	}
	return int(s.Nlink), nil
}
