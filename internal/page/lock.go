//go:build !windows

package page

import (
	"errors"
	"os"
	"syscall"
)

// lockFile locks a file until free is called. It waits while another program has the lock,
// and makes the file if it does not exist.
func lockFile(name string) (free func(), err error) {
	f, err := os.OpenFile(name, os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return nil, err
	}
	if err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX); err != nil {
		return nil, errors.Join(err, f.Close())
	}
	return func() { _ = f.Close() }, nil // closing frees it
}
