package book

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// These flags freeze a book: tools/freeze.sh sets them.
var (
	freezeAs  = flag.String("freeze", "", "freeze a book under this name, such as form1-garden; one that is there is not written over")
	freezeOf  = flag.String("book", "", "with -freeze: the book to freeze, which is not changed")
	freezeWal = flag.Bool("crashed", false, "with -freeze: as a crash in the middle of an entry leaves it")
)

// TestFreeze freezes a book where the flags ask for it; else it sees that there is a frozen
// book of every form.
func TestFreeze(t *testing.T) {
	if *freezeAs != "" {
		freeze(t, filepath.Join(frozen, *freezeAs))
	}
	for form := 1; form <= newestForm; form++ {
		if is := func(folder string) bool { return strings.HasPrefix(filepath.Base(folder), fmt.Sprintf("form%d", form)) }; !slices.ContainsFunc(frozenBooks(t), is) {
			t.Errorf("no book of form %d is frozen; see testdata/frozen/README.md", form)
		}
	}
}

func freeze(t *testing.T, folder string) {
	content, err := os.ReadFile(*freezeOf)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "garden.book")
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
	b, err := Open(path, options())
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	var beside []byte
	if *freezeWal {
		beside = crash(t, b)
	}
	// Mkdir fails where a frozen book of this name is there.
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	files := map[string][]byte{"garden.book.gz": packed(t, content), "says.txt": []byte(saysOf(t, b))}
	if *freezeWal {
		files["garden.book-wal.gz"] = packed(t, beside)
	}
	for name, what := range files {
		if err := os.WriteFile(filepath.Join(folder, name), what, 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// crash adds entries to a book, and returns what lies beside its file when the power goes in
// the middle of one more, which is taken back here.
func crash(t *testing.T, b *Book) (beside []byte) {
	t.Helper()
	p := &pen{t: t, n: 1 << 32}
	a := p.takenIn(21)
	must(t)(b.Append(a))
	must(t)(b.Append(p.givenAway(a.ID, 2), p.entry("2026-12-03", "note", `{"text":"Żółw 菊 λ"}`)))
	acknowledged, err := os.ReadFile(b.Path() + "-wal")
	if err != nil {
		t.Fatal(err)
	}
	other := filepath.Join(t.TempDir(), "other.book")
	for suffix, of := range map[string]string{"": *freezeOf, "-wal": b.Path() + "-wal"} {
		if err := copyPlain(of, other+suffix); err != nil {
			t.Fatal(err)
		}
	}
	more, err := Open(other, options())
	if err != nil {
		t.Fatal(err)
	}
	must(t)(more.Append(p.takenIn(5)))
	all, err := os.ReadFile(other + "-wal")
	if err != nil || !bytes.HasPrefix(all, acknowledged) {
		t.Fatalf("what lies beside is not what lay there and more: %v", err)
	}
	_ = more.Close()
	return all[:(len(acknowledged)+len(all))/2]
}

func copyPlain(from, to string) error {
	content, err := os.ReadFile(from)
	if err != nil {
		return err
	}
	return os.WriteFile(to, content, 0o600)
}

func packed(t *testing.T, content []byte) []byte {
	t.Helper()
	var out bytes.Buffer
	w := gzip.NewWriter(&out)
	if _, err := w.Write(content); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// entryLines is a log without its first line, which names the book; the first form had none.
func entryLines(log []byte) []byte {
	if first := line(log, 1); first > 0 {
		if _, is := isIDLine(log[:first]); is {
			return log[first:]
		}
	}
	return log
}

// saysOf is all that a book comes to, as text: papers and people, then what its log alone
// makes again (see counted).
func saysOf(t *testing.T, b *Book) string {
	t.Helper()
	var w strings.Builder
	papers, err := b.Papers()
	if err != nil {
		t.Fatal(err)
	}
	people, err := b.People()
	if err != nil {
		t.Fatal(err)
	}
	fmt.Fprintf(&w, "papers %v\npeople %v\n\n", papers, people) // maps are printed in order
	entries, head := b.Head()
	fmt.Fprintf(&w, "entries %d\nhead %x\nlog, SHA-256 %x\nlots %d\n", entries, head, sha256.Sum256(entryLines(logOf(t, b))), len(b.Stock().Lots()))
	spots := map[string]int{}
	for _, l := range b.Stock().Lots() {
		for _, s := range l.Standing {
			spots[fmt.Sprintf("in %q, as %s", s.Spot.Place, s.Spot.Form)] += s.Count
		}
	}
	for _, spot := range sorted(spots) {
		fmt.Fprintf(&w, "%s: %d\n", spot, spots[spot])
	}
	for _, what := range []string{"garden", "place", "weather", "variety"} {
		for _, d := range b.Stock().Described(what) {
			fmt.Fprintf(&w, "%s %s %s\n", what, d.Name, d.Body)
		}
	}
	if _, id, is := b.Stock().LastOf("decided"); is {
		e, err := b.Entry(id)
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&w, "decided %s\n", e.Body)
	}
	for _, line := range tally(b.Stock()) {
		fmt.Fprintln(&w, line)
	}
	return w.String()
}

// counted is the part of what a book says that its log alone makes again.
func counted(says string) string {
	_, rest, _ := strings.Cut(says, "\n\n")
	return rest
}

func sorted(m map[string]int) (keys []string) {
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// differing lists the lines that only one of two texts has.
func differing(got, want string) string {
	var w strings.Builder
	a, b := strings.Split(got, "\n"), strings.Split(want, "\n")
	for _, line := range a {
		if !slices.Contains(b, line) {
			fmt.Fprintf(&w, "+ %s\n", line)
		}
	}
	for _, line := range b {
		if !slices.Contains(a, line) {
			fmt.Fprintf(&w, "- %s\n", line)
		}
	}
	return w.String()
}
