package book

import (
	"bufio"
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"eyeup/civil"
	"eyeup/stock"
)

// journalSuffix is what the name of a book's journal has after the book's own.
const journalSuffix = ".journal"

// PlainFile is a file as the journal uses it; an *os.File is one.
type PlainFile interface {
	io.ReaderAt
	io.WriterAt
	io.Closer
	Truncate(size int64) error
	Sync() error
	Stat() (fs.FileInfo, error)
}

// journal is the plain record beside a book: a first line with the book's id, then a line
// of JSON for each entry, as in the log. An entry is synced in it before the book
// acknowledges it. So either of the two can be completed from the other.
type journal struct {
	file     PlainFile
	path     string
	size     int64 // bytes up to the end of the last whole line
	sequence int64 // of the entry on that line, 0 where there is none
	head     hash  // of that entry
	ours     bool  // its first line was seen to bear the book's id
}

// openPlain opens a file for reading and writing, which only its owner may read.
func openPlain(path string) (PlainFile, error) {
	_, there := os.Stat(path)
	f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o600)
	if err == nil && there != nil {
		syncFolder(filepath.Dir(path))
	}
	return f, err
}

// keepJournal opens the journal of a book that may be written, and completes the shorter
// of the two from the longer.
func (b *Book) keepJournal() error {
	if b.why != nil || b.options.noJournal {
		return nil
	}
	if err := b.openJournal(); err != nil {
		return err
	}
	if err := b.journal.readTail(); err == nil && b.journal.agrees(b) {
		return nil
	}
	return b.evenOut()
}

// openJournal opens the journal, and makes an empty one where there is none.
func (b *Book) openJournal() error {
	open := b.options.OpenPlain
	if open == nil {
		open = openPlain
	}
	path := b.path + journalSuffix
	f, err := open(path)
	if err != nil {
		return fmt.Errorf("the journal %s can't be opened: %w", path, plainFile(err))
	}
	b.journal = &journal{file: f, path: path}
	return nil
}

// reopenJournal opens the journal anew where its file was deleted or replaced.
func (b *Book) reopenJournal() error {
	if open, err := b.journal.file.Stat(); err == nil && b.journal.isThere(open) {
		return nil
	}
	_ = b.journal.file.Close() // it is not the journal any more
	return b.openJournal()
}

// evenOut brings book and journal to the same entries under the book's lock.
func (b *Book) evenOut() (err error) {
	tx, err := b.conn.BeginImmediate()
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			_ = tx.Rollback()
		}
	}()
	if err = b.catchUp(); err == nil {
		err = b.keepUp()
	}
	if err != nil {
		return err
	}
	return tx.Commit()
}

// agrees reports whether the journal ends with the book's last entry and is of the book.
func (j *journal) agrees(b *Book) bool {
	if j.size == 0 || j.sequence != b.sequence || j.head != b.head {
		return false
	}
	id, err := j.readID()
	j.ours = err == nil && id == b.id
	return j.ours
}

// isEven reports whether book and journal end with the same entry. The book's lock is
// held; other programs may have written in both since this one did.
func (b *Book) isEven() bool {
	j := b.journal
	if j == nil {
		return true
	}
	info, err := j.file.Stat()
	if err != nil || !j.ours || !j.isThere(info) {
		return false
	}
	if info.Size() != j.size && j.readTail() != nil {
		return false
	}
	return info.Size() == j.size && j.sequence == b.sequence && j.head == b.head
}

// isThere reports whether the journal's path still names the open file.
func (j *journal) isThere(open fs.FileInfo) bool {
	now, err := os.Stat(j.path)
	return err == nil && os.SameFile(open, now)
}

// keepUp completes the shorter of journal and book from the longer. The book's lock is
// held, and the book is caught up.
func (b *Book) keepUp() error {
	if b.isEven() {
		return nil
	}
	if err := b.reopenJournal(); err != nil {
		return err
	}
	j := b.journal
	unread := j.readTail()
	if j.size == 0 && unread == nil {
		return b.beginJournal("")
	}
	id, noID := j.readID()
	if noID == nil && id != b.id {
		return b.beginJournal("it is of another book")
	}
	if (noID == nil || b.sequence > 0) && (unread != nil || j.sequence > b.sequence) {
		if err := b.completeFromJournal(); err != nil {
			return err
		}
	}
	if err := cmp.Or(unread, noID); err != nil {
		return b.beginJournal(err.Error())
	}
	if held, err := b.hashOf(j.sequence); err != nil || held != j.head {
		return b.beginJournal("it says something else than the book")
	}
	return b.completeJournal()
}

// beginJournal begins a journal anew with all entries of the book. One that says why not
// to be trusted is laid aside first.
func (b *Book) beginJournal(why string) error {
	if why != "" {
		aside, err := b.layJournalAside()
		if err != nil {
			return err
		}
		b.notices = append(b.notices, fmt.Sprintf("the journal was begun anew, for %s; the old one lies at %s", why, aside))
	}
	b.journal.size, b.journal.sequence, b.journal.head = 0, 0, hash{}
	return b.completeJournal()
}

// layJournalAside renames a journal that is not the book's, and opens an empty one.
func (b *Book) layJournalAside() (string, error) {
	j := b.journal
	if err := j.file.Close(); err != nil {
		return "", err
	}
	aside := freeName(fmt.Sprintf("%s.aside-%s", j.path, civil.Of(b.options.Now())))
	if err := os.Rename(j.path, aside); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return "", fmt.Errorf("the journal can't be laid aside: %w", plainFile(err))
	}
	return aside, b.openJournal()
}

// freeName returns a name that no file has: the one given, or with a number after it.
func freeName(name string) string {
	free := name
	for n := 2; ; n++ {
		if _, err := os.Lstat(free); errors.Is(err, fs.ErrNotExist) {
			return free
		}
		free = fmt.Sprintf("%s-%d", name, n)
	}
}

// completeJournal writes the book's entries after the journal's last, and syncs them.
func (b *Book) completeJournal() error {
	j := b.journal
	s, _, err := b.conn.Prepare(rowsAfter)
	if err != nil {
		return err
	}
	defer s.Close()
	at := io.NewOffsetWriter(j.file, j.size)
	out := bufio.NewWriterSize(at, 1<<20)
	if j.size == 0 {
		_, err = out.Write(idLine(b.id))
	}
	sequence, head := j.sequence, j.head
	if err == nil {
		err = eachAfter(s, j.sequence, func(r *row) error {
			sequence, head = r.sequence, r.hash
			_, err := out.Write(r.line())
			return err
		})
	}
	err = errors.Join(err, out.Flush())
	end, _ := at.Seek(0, io.SeekCurrent)
	if err == nil {
		err = errors.Join(j.file.Truncate(j.size+end), j.file.Sync())
	}
	if err != nil {
		return plainFile(err)
	}
	j.size, j.sequence, j.head, j.ours = j.size+end, sequence, head, true
	return nil
}

// write adds rows to the journal and syncs it. It returns what takes them out again.
func (j *journal) write(rows []row) (undo func(), err error) {
	before := *j
	var lines []byte
	for i := range rows {
		lines = append(lines, rows[i].line()...)
	}
	undo = func() {
		_ = j.file.Truncate(before.size)
		j.size, j.sequence, j.head = before.size, before.sequence, before.head
	}
	if _, err = j.file.WriteAt(lines, j.size); err == nil {
		err = j.file.Sync()
	}
	if err != nil {
		undo()
		return nil, fmt.Errorf("the journal beside the book can't be written: %w", plainFile(err))
	}
	last := rows[len(rows)-1]
	j.size, j.sequence, j.head = j.size+int64(len(lines)), last.sequence, last.hash
	return undo, nil
}

// idLine is the first line of a log or a journal.
func idLine(id stock.ID) []byte {
	return fmt.Appendf(nil, "{\"book\":\"%s\"}\n", id)
}

// isIDLine reports whether a line is the first line of a log, and with which id.
func isIDLine(line []byte) (id stock.ID, is bool) {
	text, found := bytes.CutPrefix(bytes.TrimSpace(line), []byte(`{"book":"`))
	if !found || len(text) != len(`01234567-89ab-cdef-0123-456789abcdef"}`) {
		return id, false
	}
	id, err := stock.ParseID(string(text[:36]))
	return id, err == nil
}
