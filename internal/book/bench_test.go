//go:build unix

package book

import (
	"errors"
	"fmt"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"github.com/ncruces/go-sqlite3"

	"eyeup/stock"
)

// cpu is the processor time this program has used.
func cpu() time.Duration {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// BenchmarkAppend is one entry written, acknowledged.
func BenchmarkAppend(b *testing.B) {
	k, p := newBook(b)
	var lots []stock.Entry
	for range 500 {
		lots = append(lots, p.takenIn(1000))
	}
	must(b)(k.Append(lots...))
	begun := cpu()
	for n := 0; b.Loop(); n++ {
		must(b)(k.Append(p.givenAway(lots[n%len(lots)].ID, 1)))
	}
	b.ReportMetric(float64(cpu()-begun)/float64(b.N)/1000, "cpu-µs/op")
}

// BenchmarkBareInsert is what the library alone takes for the same row, made as safe.
func BenchmarkBareInsert(b *testing.B) {
	conn, err := sqlite3.Open("file:" + filepath.Join(b.TempDir(), "bare.db") + "?vfs=" + diskName)
	if err != nil {
		b.Fatal(err)
	}
	defer conn.Close()
	if err := conn.EnableChecksums("main"); err != nil {
		b.Fatal(err)
	}
	if err := conn.Exec(`pragma journal_mode = wal; pragma synchronous = full; pragma wal_autocheckpoint = 0;
		create table entries (sequence integer primary key, id blob not null unique, kind text, version integer, "on" text, at text, written text, offset text, who text, device text, body text, hash blob) strict`); err != nil {
		b.Fatal(err)
	}
	s, _, err := conn.Prepare(insertRow)
	if err != nil {
		b.Fatal(err)
	}
	defer s.Close()
	p := &pen{t: b}
	bare := &Book{insert: s}
	first := p.takenIn(5)
	begun := cpu()
	var sequence int64
	for b.Loop() {
		sequence++
		r := row{sequence: sequence, entry: p.givenAway(first.ID, 1)}
		r.entry.Written = clock()
		tx, err := conn.BeginImmediate()
		if err == nil {
			err = errors.Join(bare.fill(&r), s.Exec(), tx.Commit())
		}
		if err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(cpu()-begun)/float64(b.N)/1000, "cpu-µs/op")
}

// large makes a book of so many lots, two entries each, and puts it down.
func large(b *testing.B, lots int) string {
	k, p := newBook(b)
	var one []stock.Entry
	flush := func() {
		must(b)(k.Append(one...))
		one = one[:0]
	}
	for i := range lots {
		e := p.entry("2026-11-02", "taken in", fmt.Sprintf(`{"variety":"Variety %d","kind":"dahlia","form":"clump","count":9,"place":"cellar","crate":"%d"}`, i%500, i%2000))
		one = append(one, e, p.givenAway(e.ID, 1))
		if len(one) >= 5000 {
			flush()
		}
	}
	flush()
	if err := k.Close(); err != nil {
		b.Fatal(err)
	}
	return k.Path()
}

// BenchmarkOpen100000Lots opens a book through its snapshot.
func BenchmarkOpen100000Lots(b *testing.B) {
	path := large(b, 100_000)
	for b.Loop() {
		k, err := Open(path, options())
		if err != nil || k.snapped == 0 {
			b.Fatal(err, k.snapped)
		}
		if err := k.Close(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkCheck goes through a book of 200,000 entries from the first.
func BenchmarkCheck(b *testing.B) {
	path := large(b, 100_000)
	begun := cpu()
	for b.Loop() {
		if r, err := Check(path, options()); err != nil || !r.Whole() {
			b.Fatal(err, r.Wrong)
		}
	}
	b.ReportMetric(float64((cpu()-begun).Microseconds())/float64(b.N)/200_000, "cpu-µs/entry")
}
