package book

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"time"

	"github.com/gofrs/flock"
	"github.com/ncruces/go-sqlite3"

	"eyeup/civil"
	"eyeup/stock"
)

// Options are how a book is opened. The zero value suits most uses.
type Options struct {
	Now      func() time.Time // the clock; time.Now if nil
	Busy     time.Duration    // how long to wait for another writer; ten seconds if zero
	ReadOnly bool             // never write, not even a copy or a snapshot
	NoCopies bool             // make no daily copy
	CopiesTo string           // a folder, on another disk, that gets every daily copy as well; none if empty
	VFS      string           // the name of a registered SQLite VFS; the book's own if empty

	OpenPlain func(path string) (PlainFile, error) // opens the journal; the system's own if nil

	still     bool // nobody writes the file meanwhile, such as a copy
	noJournal bool // keep no journal, as for a file on its way to become a book
}

// Book is an open stock book. It may be used by several goroutines.
type Book struct {
	path    string // the file itself, links followed
	given   string // the path it was opened by
	options Options

	mu       sync.Mutex
	conn     *sqlite3.Conn
	insert   *sqlite3.Stmt
	newer    *sqlite3.Stmt
	stock    *stock.Book
	sequence int64 // of the last entry in stock
	head     hash
	snapped  int64 // of the last entry in the snapshot in the file
	why      error // why the book is read-only; nil if it is not
	id       stock.ID
	journal  *journal // nil where nothing is written
	footing  footing
	inUse    *flock.Flock // says to others that the book is open; nil where nothing is written
	notices  []string     // what was put right when the book was opened

	tending   sync.WaitGroup
	unsettled int        // entries written since what was written was last folded in
	copied    civil.Date // the day of the last daily copy that was tried
	quiet     *time.Timer
}

// applicationID marks an SQLite file as a stock book ("Eyup").
const applicationID = 0x45797570

// ErrReadOnly is returned for writing to a read-only book. The error that wraps it says why
// the book is read-only.
var ErrReadOnly = errors.New("the book is read-only")

// ErrNotABook is returned for a file that is not a stock book.
var ErrNotABook = errors.New("not a stock book")

// Create makes an empty book at path, which must not exist, and opens it. Only the file's
// owner may read it.
func Create(path string, o Options) (*Book, error) {
	f, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_RDWR, 0o600)
	if errors.Is(err, fs.ErrExist) {
		return nil, fmt.Errorf("%s already exists; give the new book another name", path)
	}
	if err != nil {
		return nil, fmt.Errorf("can't create a book at %s: %w", path, plainFile(err))
	}
	if err := f.Close(); err != nil {
		return nil, err
	}
	b, err := create(path, o)
	if err != nil {
		removeAll(path)
		return nil, fmt.Errorf("can't create a book at %s: %w", path, plain(err))
	}
	return b, nil
}

func create(path string, o Options) (*Book, error) {
	b, err := connect(path, o, sqlite3.OPEN_READWRITE, nil)
	if err != nil {
		return nil, err
	}
	err = b.conn.EnableChecksums("main")
	if err == nil {
		err = b.conn.Exec(fmt.Sprintf("pragma journal_mode = wal; pragma application_id = %d", applicationID))
	}
	if err == nil {
		err = b.migrate()
	}
	if err == nil {
		err = b.prepare()
	}
	if err == nil {
		err = b.settleIn()
	}
	if err == nil { // from now on the file itself says which book it is
		_, _, err = b.conn.WALCheckpoint("main", sqlite3.CHECKPOINT_TRUNCATE)
	}
	if err != nil {
		b.letGo()
		return nil, err
	}
	return b, nil
}

// settleIn readies a book that was read for writing: its id, its place among those who
// have it open, and its journal.
func (b *Book) settleIn() error {
	err := b.identify()
	if err == nil {
		err = b.holdOpen()
	}
	if err == nil {
		err = b.keepJournal()
	}
	if err == nil {
		err = b.stand()
	}
	return err
}

// letGo closes what is open.
func (b *Book) letGo() {
	if b.journal != nil {
		_ = b.journal.file.Close()
	}
	if b.inUse != nil {
		_ = b.inUse.Close()
	}
	_ = b.conn.Close()
}

// removeAll removes a book whose creation failed, with SQLite's files beside it.
func removeAll(path string) {
	for _, suffix := range []string{"", "-wal", "-shm", "-journal", lockSuffix} {
		_ = os.Remove(path + suffix)
	}
}

// Open opens the book at path. If it can't be written, it is opened read-only and ReadOnly
// says why. The error for a file that is damaged or not a book says what to do.
func Open(path string, o Options) (*Book, error) {
	b, err := open(path, o)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, plain(err))
	}
	return b, nil
}

func open(path string, o Options) (*Book, error) {
	if err := sniff(path); err != nil {
		return nil, err
	}
	b, err := connectBest(path, o)
	if err != nil {
		return nil, err
	}
	if err := b.begin(); err != nil {
		b.letGo()
		return nil, err
	}
	return b, nil
}

// begin brings the file up to date and reads it.
func (b *Book) begin() error {
	id, err := b.first("pragma application_id")
	if err == nil && id != applicationID {
		err = fmt.Errorf("this is a database, but %w", ErrNotABook)
	}
	if err == nil {
		err = b.upToDate()
	}
	if err == nil {
		err = b.load()
	}
	if err == nil {
		err = b.prepare()
	}
	if err == nil {
		err = b.settleIn()
	}
	if err == nil {
		b.copyToday()
	}
	return err
}

// connectBest opens a connection for writing, or else for reading. A read-only connection may
// still finish what another program left incomplete in SQLite's own files; it never changes an
// entry.
func connectBest(path string, o Options) (*Book, error) {
	if o.still {
		return connect(path, o, sqlite3.OPEN_READONLY, ErrReadOnly)
	}
	if err := writableFile(path); err != nil {
		o.still = !isThere(path + "-wal")
		return connect(path, o, sqlite3.OPEN_READONLY, fmt.Errorf("%w: %w", ErrReadOnly, err))
	}
	if !o.ReadOnly {
		return connect(path, o, sqlite3.OPEN_READWRITE, nil)
	}
	b, err := connect(path, o, sqlite3.OPEN_READWRITE, ErrReadOnly)
	if err == nil {
		err = b.conn.Exec("pragma query_only = on")
	}
	return b, err
}

// writableFile returns an error unless the file and its folder can be written; SQLite keeps
// its own files in that folder.
func writableFile(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return plainFile(err)
	}
	if err := f.Close(); err != nil {
		return err
	}
	probe, err := os.OpenFile(path+"-shm", os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return plainFile(err)
	}
	return probe.Close()
}

// connect opens a connection and sets it up; it reads nothing yet. why is the reason for
// opening read-only, or nil.
func connect(path string, o Options, flags sqlite3.OpenFlag, why error) (*Book, error) {
	if o.Now == nil {
		o.Now = time.Now
	}
	if o.VFS == "" {
		o.VFS = diskName
	}
	if o.Busy == 0 {
		o.Busy = 10 * time.Second
	}
	given, err := filepath.Abs(path)
	if err != nil {
		return nil, err
	}
	full, err := filepath.EvalSymlinks(given)
	if err != nil {
		return nil, err
	}
	conn, err := sqlite3.OpenFlags(source(full, o), flags|sqlite3.OPEN_URI)
	if err != nil {
		return nil, err
	}
	b := &Book{path: full, given: given, options: o, conn: conn, stock: stock.New(), why: why}
	err = conn.BusyTimeout(o.Busy)
	if err == nil {
		// Checkpoints are made when the book is closed, not while someone waits.
		err = conn.Exec("pragma synchronous = full; pragma wal_autocheckpoint = 0; pragma trusted_schema = off; pragma cell_size_check = on")
	}
	if err != nil {
		_ = conn.Close()
		return nil, err
	}
	return b, nil
}

// Path returns the path of the book's file.
func (b *Book) Path() string { return b.path }

// ReadOnly returns why the book is read-only, or nil if it is not.
func (b *Book) ReadOnly() error { return b.why }

// Stock returns the state of the book. It must not be used while entries are appended; see
// View.
func (b *Book) Stock() *stock.Book { return b.stock }

// View calls f with the state of the book, including what other programs have written so far.
// Nothing is appended while f runs.
func (b *Book) View(f func(*stock.Book) error) error {
	b.mu.Lock()
	defer b.mu.Unlock()
	if err := b.catchUp(); err != nil {
		return plain(err)
	}
	return f(b.stock)
}

// Head returns how many entries the book holds and the hash of the last.
func (b *Book) Head() (entries int64, last [32]byte) {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.sequence, b.head
}

// Close closes the book and moves the last entries into the main file.
func (b *Book) Close() error {
	b.hush()
	b.tending.Wait()
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.conn == nil {
		return nil
	}
	if b.why == nil && b.sequence-b.snapped >= snapshotEvery {
		_ = b.snapshot() // only a cache: the next program to open the book makes it again
	}
	if b.why == nil {
		_, _, _ = b.conn.WALCheckpoint("main", sqlite3.CHECKPOINT_TRUNCATE) // fails while another program reads; then it is done later
	}
	for _, s := range []*sqlite3.Stmt{b.insert, b.newer} {
		_ = s.Close()
	}
	err := b.conn.Close()
	b.conn = nil
	if b.journal != nil {
		err = errors.Join(err, b.journal.file.Close())
	}
	if b.inUse != nil {
		_ = b.inUse.Close()
	}
	return plain(err)
}
