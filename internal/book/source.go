package book

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"syscall"

	"github.com/ncruces/go-sqlite3"
)

// source returns the URI by which SQLite opens a file.
func source(path string, o Options) string {
	q := url.Values{"vfs": {o.VFS}}
	if o.still {
		q.Set("immutable", "1")
	}
	u := url.URL{Scheme: "file", Opaque: (&url.URL{Path: filepath.ToSlash(path)}).EscapedPath(), RawQuery: q.Encode()}
	return u.String()
}

func isThere(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.Size() > 0
}

// sniff checks the first bytes of a file and its length before SQLite opens it.
func sniff(path string) error {
	f, err := os.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("there is no such file; to make a new book run: eyeup book new %s", path)
	}
	if err != nil {
		return plainFile(err)
	}
	defer f.Close()
	head := make([]byte, 100)
	n, err := io.ReadFull(f, head)
	switch {
	case err != nil && n == 0:
		return fmt.Errorf("the file is empty, %w; to restore a copy run: eyeup restore %s", ErrNotABook, path)
	case !bytes.HasPrefix(head, []byte("SQLite format 3\x00")):
		return fmt.Errorf("this is %w; to make a book run: eyeup book new", ErrNotABook)
	case err != nil:
		return halfCopied(path)
	}
	info, err := f.Stat()
	if err != nil {
		return plainFile(err)
	}
	page := int64(binary.BigEndian.Uint16(head[16:]))
	if page == 1 {
		page = 1 << 16
	}
	if pages := int64(binary.BigEndian.Uint32(head[28:])); info.Size() < pages*page && !isThere(path+"-wal") {
		return halfCopied(path)
	}
	return nil
}

// errHalfCopied is the error for a file that ends too early.
var errHalfCopied = errors.New("the file ends too early, as if a copy had been interrupted")

func halfCopied(path string) error {
	return fmt.Errorf("%w; copy it again, or restore the last daily copy: eyeup restore %s", errHalfCopied, path)
}

// diskFull is said where nothing more can be written.
const diskFull = "the disk is full; nothing was lost, make room and do it again"

// plain rewords errors of SQLite for a grower.
func plain(err error) error {
	var code sqlite3.ExtendedErrorCode
	var e *sqlite3.Error
	if errors.As(err, &e) {
		code = e.ExtendedCode()
	} else if !errors.As(err, &code) {
		var short sqlite3.ErrorCode
		if !errors.As(err, &short) {
			return plainFile(err)
		}
		code = short.ExtendedCode()
	}
	says := ""
	switch code.Code() {
	case sqlite3.BUSY, sqlite3.LOCKED:
		says = "another program is writing to the book; try again in a moment"
	case sqlite3.FULL:
		says = diskFull
	case sqlite3.READONLY:
		says = "the book can't be written here; check the permissions of the file and its folder"
	case sqlite3.CORRUPT, sqlite3.NOTADB:
		says = "the book is damaged; look at it with: eyeup check, and restore the last good copy with: eyeup restore"
	case sqlite3.CANTOPEN:
		says = "the book can't be opened; check the permissions of the file and its folder"
	case sqlite3.IOERR:
		says = "reading or writing the disk failed"
		if code == sqlite3.IOERR_DATA {
			says = "a page of the book is damaged; look at it with: eyeup check, and restore the last good copy with: eyeup restore"
		}
	default:
		return err
	}
	return fmt.Errorf("%s (%w)", says, err)
}

// plain words a fault of the book's file. Where the disk has no room left, that is the
// fault, whatever SQLite calls it.
func (b *Book) plain(err error) error {
	var code sqlite3.ErrorCode
	if errors.As(err, &code) && (code == sqlite3.IOERR || code == sqlite3.CANTOPEN) && isFull(b.path) {
		return fmt.Errorf("%s (%w)", diskFull, err)
	}
	return plain(err)
}

func plainFile(err error) error {
	switch {
	case errors.Is(err, syscall.ENOSPC):
		return fmt.Errorf("%s (%w)", diskFull, err)
	case errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("the permissions of the file or its folder forbid it (%w)", err)
	case err != nil && strings.Contains(err.Error(), "read-only file system"):
		return fmt.Errorf("the disk is read-only (%w)", err)
	}
	return err
}
