package book

import (
	"crypto/sha256"
	"embed"
	"errors"
	"fmt"
	"io/fs"

	"github.com/ncruces/go-sqlite3"
	"github.com/ncruces/go-sqlite3/driver"
	"github.com/pressly/goose/v3"

	"eyeup/stock"
)

//go:embed migrations/*.sql
var migrations embed.FS

// newestForm is the number of the last migration; files from readableForm on can be read
// without being migrated.
const newestForm, readableForm = 2, 1

// migrate upgrades the file format to this program's. Once a book has entries it changes only
// caches and indexes.
func (b *Book) migrate() error {
	files, err := fs.Sub(migrations, "migrations")
	if err != nil {
		return err
	}
	db, err := driver.Open(source(b.path, b.options), func(c *sqlite3.Conn) error {
		return c.Exec("pragma synchronous = full")
	})
	if err != nil {
		return err
	}
	defer db.Close()
	db.SetMaxOpenConns(1)
	p, err := goose.NewProvider(goose.DialectSQLite3, db, files)
	if err != nil {
		return err
	}
	_, err = p.Up(b.conn.GetInterrupt())
	return err
}

// upToDate migrates an older file format, and opens a newer one read-only.
func (b *Book) upToDate() error {
	form, err := b.form()
	switch {
	case err != nil:
		return err
	case form > newestForm:
		b.why = fmt.Errorf("%w: it was written by a newer eyeup (format %d; this program knows up to %d); use that version", ErrReadOnly, form, newestForm)
	case form < newestForm && b.why == nil:
		return b.migrate()
	case form < readableForm:
		return fmt.Errorf("the book has an older format and can't be upgraded here: %w", b.why)
	}
	return nil
}

// form returns the number of the file's format; 0 for none, as when the creation of a book was
// interrupted.
func (b *Book) form() (int64, error) {
	if tables, err := b.first("select count(*) from sqlite_schema where name = 'goose_db_version'"); err != nil || tables == 0 {
		return 0, err
	}
	return b.first("select coalesce(max(version_id), 0) from goose_db_version where is_applied")
}

// first returns the single number that a query gives.
func (b *Book) first(query string) (int64, error) {
	s, _, err := b.conn.Prepare(query)
	if err != nil {
		return 0, err
	}
	defer s.Close()
	if !s.Step() {
		return 0, s.Err()
	}
	return s.ColumnInt64(0), s.Err()
}

// load reads the snapshot, if there is a valid one, and all entries after it.
func (b *Book) load() error {
	if err := b.loadSnapshot(); err != nil {
		return err
	}
	s, _, err := b.conn.Prepare(rowsAfter)
	if err != nil {
		return err
	}
	b.newer = s
	defer func() { _ = s.Close(); b.newer = nil }()
	return b.catchUp()
}

const (
	// snapshotEvery is the number of new entries after which a snapshot is worth writing.
	snapshotEvery = 1000

	readSnapshot  = `select s.sequence, s.head, s.hash, s.content from snapshots s join entries e on e.sequence = s.sequence and e.hash = s.head order by s.sequence desc limit 1`
	writeSnapshot = `insert into snapshots (sequence, head, hash, content) values (?, ?, ?, ?)`
)

// loadSnapshot uses the snapshot in the file if it belongs to this chain, is undamaged and of
// a known version; otherwise it starts from nothing.
func (b *Book) loadSnapshot() error {
	s, _, err := b.conn.Prepare(readSnapshot)
	if err != nil {
		return err
	}
	defer s.Close()
	if !s.Step() {
		return s.Err()
	}
	var head, sum hash
	copy(head[:], s.ColumnRawBlob(1))
	copy(sum[:], s.ColumnRawBlob(2))
	content := s.ColumnRawBlob(3)
	if sha256.Sum256(content) != sum {
		return nil
	}
	restored, err := stock.Restore(content)
	if errors.Is(err, stock.ErrSnapshot) {
		return nil
	}
	if err == nil {
		b.stock, b.sequence, b.head = restored, s.ColumnInt64(0), head
		b.snapped = b.sequence
	}
	return err
}

// snapshot writes the current state into the file, replacing an older snapshot.
func (b *Book) snapshot() error {
	content := b.stock.Snapshot()
	sum := sha256.Sum256(content)
	tx, err := b.conn.BeginImmediate()
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			_ = tx.Rollback()
		}
	}()
	if err = b.conn.Exec("delete from snapshots"); err != nil {
		return err
	}
	s, _, err := b.conn.Prepare(writeSnapshot)
	if err != nil {
		return err
	}
	defer s.Close()
	err = errors.Join(s.BindInt64(1, b.sequence), s.BindBlob(2, b.head[:]), s.BindBlob(3, sum[:]), s.BindBlob(4, content))
	if err == nil {
		err = s.Exec()
	}
	if err == nil {
		err = tx.Commit()
	}
	if err == nil {
		b.snapped = b.sequence
	}
	return err
}
