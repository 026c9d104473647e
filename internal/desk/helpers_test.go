package desk

import (
	"path/filepath"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/stockbook"
)

// provedOn is the day on which the best plans are looked for.
var provedOn = civil.MustOn(2026, time.November, 16)

// newTestBook is an empty book in January.
func newTestBook(t *testing.T) *stockbook.Book {
	t.Helper()
	morning := func() time.Time { return time.Date(2027, 1, 15, 9, 0, 0, 0, time.UTC) }
	b, err := stockbook.New(filepath.Join(t.TempDir(), "garden.book"), morning)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = b.Close() })
	return b
}

// demoBook is the invented garden with its history.
func demoBook(t *testing.T) *stockbook.Book {
	t.Helper()
	b := newTestBook(t)
	if err := b.Demo(); err != nil {
		t.Fatal(err)
	}
	return b
}
