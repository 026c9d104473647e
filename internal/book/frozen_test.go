package book

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"eyeup/stock"
)

// freeze writes the book of this form for good: go test ./internal/book -run Frozen -freeze.
// It refuses to write over one.
var freeze = flag.Bool("freeze", false, "write the frozen book of this form")

// everyKind is a book with an entry of every kind, as the first form wrote it.
func everyKind(t *testing.T, b *Book) {
	p := &pen{t: t}
	lots := map[string]string{}
	write := func(name, on, kind, body string) {
		t.Helper()
		for n, id := range lots {
			body = strings.ReplaceAll(body, "@"+n, id)
		}
		e := p.entry(on, kind, body)
		must(t)(b.Append(e))
		lots[name] = e.ID.String()
	}
	write("H", "2026-11-02", "taken in", `{"variety":"Pale Heron","kind":"dahlia","form":"clump","count":14,"place":"cellar","crate":"1","code":"MRMM5","price":{"v":"24.00","currency":"USD"}}`)
	write("F", "2026-11-02", "taken in", `{"candidates":["Plum Ferry","Ember Row"],"kind":"dahlia","form":"clump","count":6,"place":"cellar","crate":"2"}`)
	write("T", "2026-11-02", "taken in", `{"variety":"Red Ladder","kind":"tomato","form":"seed","count":2,"place":"cellar","seeds":60,"year":2026}`)
	write("v", "2026-11-02", "described", `{"what":"variety","name":"Pale Heron","body":{"kind":"dahlia","timing":"late","colour":"#f4efe4","height":{"v":"130","u":"cm"},"plant":16,"reserve":4}}`)
	write("c", "2026-11-03", "cured", `{"lot":"@H/0"}`)
	write("p", "2026-11-10", "packed", `{"lot":"@H/0","medium":"vermiculite","moisture":"barely damp","weight":{"v":"12.5","u":"kg"}}`)
	write("r", "2027-01-10", "round", `{"lot":"@H/0","whole":true,"firm":11,"wrinkled":2,"lost":2}`)
	write("s", "2027-01-10", "round", `{"lot":"@F/0","whole":false,"firm":2,"soft":1}`)
	write("w", "2027-03-06", "woken", `{"lot":"@H/0","count":6,"to":{"place":"back room"}}`)
	write("e", "2027-03-14", "eyed", `{"lot":"@H/0","place":"back room","count":5}`)
	write("a", "2027-03-15", "watered", `{"place":"back room","feed":"none"}`)
	write("D", "2027-03-20", "divided", `{"from":"@H/0","place":"back room","clumps":5,"good":17,"doubtful":4,"waste":6,"sitting":"2027-03-20/bench","knife":"the red one","tools":"cleaned between lots"}`)
	write("S", "2027-03-28", "sown", `{"from":"@T/0","packets":1,"seeds":30,"count":30,"to":{"place":"back room","form":"tray"}}`)
	write("t", "2027-04-05", "started", `{"lot":"@D/0","count":12,"container":"no1","to":{"place":"back room","form":"pot"}}`)
	write("u", "2027-04-24", "up", `{"lot":"@D/0","form":"pot","count":11}`)
	write("C", "2027-04-26", "cuttings taken", `{"from":"@D/0","form":"pot","count":4,"to":{"crate":"tray 3"}}`)
	write("q", "2027-05-01", "potted up", `{"lot":"@S/0","count":24}`)
	write("P", "2027-05-02", "pinched", `{"lot":"@D/0","form":"pot"}`)
	write("h", "2027-05-20", "hardened", `{"lot":"@D/0","form":"pot","all":true,"to":{"place":"cold frame"}}`)
	write("o", "2027-05-30", "planted out", `{"lot":"@D/0","form":"pot","count":11,"to":{"place":"patch","bed":"2","row":"1"}}`)
	write("m", "2027-06-01", "moved", `{"lot":"@C/0","all":true,"to":{"place":"glass","crate":"tray 3"}}`)
	write("f", "2027-08-01", "first flower", `{"lot":"@D/0","place":"patch"}`)
	write("n", "2027-08-15", "name proved", `{"lot":"@D/0","true_to_name":false}`)
	write("N", "2027-08-15", "named", `{"lot":"@D/0","variety":"Quiet Tide","reach":"all"}`)
	write("k", "2027-08-16", "stems cut", `{"lot":"@D/0","place":"patch","stems":9}`)
	write("M", "2027-09-10", "marked", `{"lot":"@D/0","place":"patch","mark":"keep","count":8}`)
	write("i", "2027-09-11", "marked sick", `{"lot":"@D/0","place":"patch","what":"mosaic","count":1}`)
	write("A", "2027-09-11", "set apart", `{"lot":"@D/0","place":"patch","count":1,"why":"sick"}`)
	write("x", "2027-09-12", "destroyed", `{"lot":"@A/0","all":true,"why":"mosaic"}`)
	write("l", "2027-10-20", "lifted", `{"lot":"@D/0","place":"patch","count":9,"lost":1,"to":{"form":"clump","place":"cellar","crate":"4"}}`)
	write("g", "2027-10-21", "given away", `{"lot":"@D/0","form":"clump","count":1,"whom":"p2"}`)
	write("z", "2027-10-22", "sold", `{"lot":"@D/0","form":"division","count":2,"price":{"v":"9.00","currency":"USD"}}`)
	write("X", "2027-10-23", "mixed", `{"from":[{"lot":"@H/0","place":"cellar","count":1},{"lot":"@F/0","count":2}],"to":{"place":"cellar","crate":"9"}}`)
	write("y", "2027-10-24", "note", `{"lot":"@X/0","text":"the crate fell; Ms \"Dot\" O'Dell / Żółw 菊"}`)
	write("d", "2027-10-25", "decided", `{"plan":"usual","lines":[{"line":"1","count":12}],"promised":{"first_flower":"2028-07-20"}}`)
	write("R", "2027-10-26", "put right", `{"target":"@g","body":{"lot":"@D/0","form":"clump","count":2,"whom":"p2"}}`)
	write("Q", "2027-10-27", "put right", `{"target":"@y","nothing":true}`)
}

// Every form of the book that was ever written opens for ever, says what it said, and
// is made again by its log.
func TestFrozenBooks(t *testing.T) {
	if *freeze {
		frozen := filepath.Join("testdata", "frozen", fmt.Sprintf("form%d", newestForm))
		if err := os.MkdirAll(frozen, 0o755); err != nil {
			t.Fatal(err)
		}
		b, err := Create(filepath.Join(frozen, "garden.book"), options())
		if err != nil {
			t.Fatal(err)
		}
		everyKind(t, b)
		var log bytes.Buffer
		if err := b.WriteLog(&log); err != nil {
			t.Fatal(err)
		}
		says := strings.Join(tally(b.Stock()), "\n") + "\n"
		for name, content := range map[string][]byte{"log.jsonl": log.Bytes(), "says.txt": []byte(says)} {
			if err := os.WriteFile(filepath.Join(frozen, name), content, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		err = errors.Join(b.Close(), os.Remove(b.Path()+lockSuffix), os.Remove(b.Path()+journalSuffix))
		if err != nil {
			t.Fatal(err)
		}
	}
	books, err := filepath.Glob("testdata/frozen/*/garden.book")
	if err != nil || len(books) < newestForm {
		t.Fatalf("%d frozen books of %d forms, %v", len(books), newestForm, err)
	}
	for _, path := range books {
		t.Run(filepath.Base(filepath.Dir(path)), func(t *testing.T) { thaw(t, path) })
	}
}

func thaw(t *testing.T, path string) {
	read := func(name string) []byte {
		content, err := os.ReadFile(filepath.Join(filepath.Dir(path), name))
		if err != nil {
			t.Fatal(err)
		}
		return content
	}
	mine := filepath.Join(t.TempDir(), "garden.book")
	if err := os.WriteFile(mine, read("garden.book"), 0o600); err != nil {
		t.Fatal(err)
	}
	if r := checked(t, mine); !r.Whole() {
		t.Fatalf("%v", r.Wrong)
	}
	again, err := Create(filepath.Join(t.TempDir(), "again.book"), options())
	if err != nil {
		t.Fatal(err)
	}
	defer again.Close()
	if err := again.ReadLog(bytes.NewReader(read("log.jsonl"))); err != nil {
		t.Fatal(err)
	}
	first, err := Open(mine, options())
	if err != nil {
		t.Fatal(err)
	}
	defer first.Close()
	for _, b := range []*Book{first, again} {
		var log bytes.Buffer
		if err := b.WriteLog(&log); err != nil || !bytes.Equal(entries(log.Bytes()), entries(read("log.jsonl"))) {
			t.Errorf("the log is another: %v", err)
		}
		if says := strings.Join(tally(b.Stock()), "\n") + "\n"; says != string(read("says.txt")) {
			t.Errorf("it says\n%s", says)
		}
	}
	if first.ID() != again.ID() {
		t.Errorf("the book is %s, read from its log %s", first.ID(), again.ID())
	}
	if n, head := first.Head(); n == 0 || head != again.head {
		t.Errorf("%d entries to %x, again to %x", n, head, again.head)
	}
}

// entries is a log without the line that names its book, which the first form lacked.
func entries(log []byte) []byte {
	if _, is := isIDLine(log[:line(log, 1)]); is {
		return log[line(log, 1):]
	}
	return log
}

// A frozen sample of every kind there is.
func TestEveryKindIsFrozen(t *testing.T) {
	log, err := os.ReadFile(filepath.Join("testdata", "frozen", fmt.Sprintf("form%d", newestForm), "log.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	var seen []string
	err = ReadLines(bytes.NewReader(log), func(one []Line) error {
		for _, l := range one {
			seen = append(seen, l.Entry.Kind)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, kind := range stock.Kinds() {
		if !slices.Contains(seen, kind) {
			t.Errorf("no %s is frozen", kind)
		}
	}
}

// FuzzReadLines: whatever is sent, it is read or refused, never a panic; what is read
// comes out again the same.
func FuzzReadLines(f *testing.F) {
	log, err := os.ReadFile(filepath.Join("testdata", "frozen", "form1", "log.jsonl"))
	if err != nil {
		f.Fatal(err)
	}
	for _, line := range bytes.SplitAfter(log, []byte("\n")) {
		f.Add(line)
	}
	f.Add([]byte(`[{"id":"0193a1c2-7b1e-7c3a-9f10-2b5d6e8f0a11","kind":"note","v":1,"on":"2027-01-01","body":{"text":"a"}}]`))
	f.Add([]byte("{\"sequence\":1,\"id\":1}\n\n\xff"))
	f.Fuzz(func(t *testing.T, data []byte) {
		_ = ReadLines(bytes.NewReader(data), func(one []Line) error {
			for _, l := range one {
				again, err := stock.ReadEntry(l.Entry.Canonical())
				if err != nil || !bytes.Equal(again.Canonical(), l.Entry.Canonical()) {
					t.Errorf("%s comes out otherwise: %v", l.Entry.Canonical(), err)
				}
				s := stock.New()
				if _, err := s.Add(l.Entry); err == nil {
					s.TakeBack()
				}
			}
			return nil
		})
	})
}
