package book

import (
	"os"

	"github.com/ncruces/go-sqlite3/vfs"
)

// disk is the SQLite VFS for books: that of the operating system, with two changes. Files that
// SQLite makes beside a book are readable by their owner only. No file is mapped into memory,
// so that each page is read with its checksum.
type disk struct{ vfs.VFSFilename }

// diskName is the name under which disk is registered with SQLite.
const diskName = "eyeup"

func init() {
	if system, ok := vfs.Find("").(vfs.VFSFilename); ok {
		vfs.Register(diskName, disk{system})
	}
}

// OpenFilename opens one of the files of a book.
func (d disk) OpenFilename(name *vfs.Filename, flags vfs.OpenFlag) (vfs.File, vfs.OpenFlag, error) {
	if flags&vfs.OPEN_READWRITE != 0 && name != nil {
		if flags&vfs.OPEN_CREATE != 0 {
			ownersAlone(name.String())
		}
		if flags&vfs.OPEN_MAIN_DB != 0 {
			ownersAlone(name.String() + "-shm")
		}
	}
	f, got, err := d.VFSFilename.OpenFilename(name, flags)
	if err != nil {
		return nil, got, err
	}
	return Wrap(f), got, nil
}

// ownersAlone creates a file that only its owner may read, if it does not exist. It reports no
// error; opening the file will.
func ownersAlone(path string) {
	if f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o600); err == nil {
		_ = f.Close()
	}
}

// File is an open file of a book. It hides the methods of vfs.File that books must not use.
type File struct{ vfs.File }

// Wrap returns f without memory mapping.
func Wrap(f vfs.File) *File { return &File{f} }

// SharedMemory returns the memory shared by all connections to the book.
func (f *File) SharedMemory() vfs.SharedMemory {
	if s, ok := f.File.(vfs.FileSharedMemory); ok {
		return s.SharedMemory()
	}
	return nil
}

// HasMoved reports whether the file was moved or replaced since it was opened.
func (f *File) HasMoved() (bool, error) {
	if m, ok := f.File.(vfs.FileHasMoved); ok {
		return m.HasMoved()
	}
	return false, nil
}

// LockState returns how the file is locked.
func (f *File) LockState() vfs.LockLevel {
	if s, ok := f.File.(vfs.FileLockState); ok {
		return s.LockState()
	}
	return vfs.LOCK_NONE
}
