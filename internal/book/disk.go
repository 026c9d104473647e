package book

import (
	"os"

	"github.com/ncruces/go-sqlite3/vfs"
)

// disk is the VFS through which books are kept: the system's own, but every file that
// SQLite makes beside a book is for its owner alone, and none is mapped into memory, so
// that each page is read with its checksum.
type disk struct{ vfs.VFSFilename }

// diskName is what SQLite knows it by.
const diskName = "eyeup"

func init() {
	if system, ok := vfs.Find("").(vfs.VFSFilename); ok {
		vfs.Register(diskName, disk{system})
	}
}

// OpenFilename opens a file of a book.
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

// ownersAlone makes a file that only its owner may read, where there is none; whether it
// can be opened is found out by whoever opens it.
func ownersAlone(path string) {
	if f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o600); err == nil {
		_ = f.Close()
	}
}

// File is a file of a book, without what books do not use.
type File struct{ vfs.File }

// Wrap returns f without the means to map it into memory.
func Wrap(f vfs.File) *File { return &File{f} }

// SharedMemory returns the memory shared by all who have the book open.
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
