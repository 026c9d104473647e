package desk

import (
	"bytes"
	"context"
	"errors"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/planting"
	"eyeup/internal/report"
	"eyeup/internal/stockbook"
	"eyeup/internal/testkit"
	"eyeup/solve"
)

// The way out and in: the folder of the invented garden's book makes the same book again,
// to the last hash, with the same codes; and the season that its garden asks for is the
// one that the folder asks for.
func TestTheFolderOfABookMakesItAgain(t *testing.T) {
	b := demoBook(t)
	if err := b.Call("p1", "the one who writes"); err != nil {
		t.Fatal(err)
	}
	out := testkit.Memory{MapFS: fstest.MapFS{}}
	if err := b.WriteFolder(out.Create); err != nil {
		t.Fatal(err)
	}
	again := newTestBook(t)
	if err := again.ReadFolder(out, "out", civil.MustOn(2027, 1, 15)); err != nil {
		t.Fatal(err)
	}
	var log, logAgain bytes.Buffer // each entry with its hash
	if err := errors.Join(b.WriteLog(&log), again.WriteLog(&logAgain)); err != nil {
		t.Fatal(err)
	}
	if n := bytes.Count(log.Bytes(), []byte("\n")); !bytes.Equal(log.Bytes(), logAgain.Bytes()) || n < 2000 {
		t.Errorf("of %d entries another log is made", n)
	}
	var first, second bytes.Buffer
	if err := errors.Join(report.WriteJSON(&first, b.Lots()), report.WriteJSON(&second, again.Lots())); err != nil || first.String() != second.String() {
		t.Errorf("other lots: %v", err)
	}
	people, err := again.Names()
	if err != nil || people["p1"] != "the one who writes" {
		t.Errorf("people %v, %v", people, err)
	}
	opened, _, err := OpenBookGarden(again)
	if err != nil {
		t.Fatal(err)
	}
	demo, err := garden.OpenDemo(civil.MustOn(2027, 1, 15))
	if err != nil {
		t.Fatal(err)
	}
	if opened.Name != demo.Name || len(opened.Places) != len(demo.Places) || opened.Span != demo.Span {
		t.Errorf("%s, %d places, %v; the folder has %s, %d, %v", opened.Name, len(opened.Places), opened.Span, demo.Name, len(demo.Places), demo.Span)
	}
}

func TestABookThatDoesNotSayWhereItLies(t *testing.T) {
	if _, _, err := OpenBookGarden(newTestBook(t)); err == nil || !strings.Contains(err.Error(), "--folder") {
		t.Errorf("%v", err)
	}
}

// A book knows when its stock was laid in and what rounds found; the folder of the same
// garden does not. The list is of the same varieties.
func TestPlantingListOfABook(t *testing.T) {
	day := civil.MustOn(2027, time.January, 12)
	now := func() time.Time { return day.UTC() }
	b, err := stockbook.New(filepath.Join(t.TempDir(), "a.book"), now)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	if err := b.Demo(); err != nil {
		t.Fatal(err)
	}
	g, _, err := OpenBookGarden(b)
	if err != nil {
		t.Fatal(err)
	}
	a, err := planting.ListOfBook(b, context.Background(), g, planting.PatchQuestion{Today: day, Solver: solve.Plain})
	if err != nil {
		t.Fatal(err)
	}
	testkit.Holds(t, "patch", a)
	demo, err := garden.OpenDemo(day)
	if err != nil {
		t.Fatal(err)
	}
	folder, err := planting.List(demo, context.Background(), planting.PatchQuestion{Today: day, Solver: solve.Plain})
	if err != nil {
		t.Fatal(err)
	}
	if len(a.List) != len(folder.List) || a.At != folder.At {
		t.Errorf("%d varieties for %v, the folder has %d for %v", len(a.List), a.At, len(folder.List), folder.At)
	}
}
