package stock_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"eyeup/stock"
)

// TestStories plays every awkward afternoon of testdata/stories. A story is text; these
// of its lines are played, the rest is told:
//
//	2026-11-02 [14:05] NAME: taken in {"variety": …}   an entry; @NAME is its lot, @NAME/1 its second, @@NAME itself
//	+ 2026-11-03 …                                      another entry in the same go
//	! words                                             the go before is refused, in these words among others
//	? words                                             the go before is told about, in these words among others
//	= NAME: 9 clump cellar 1; 2 pot glass               how the lot stands now; "nothing" for none
//	~ NAME is called Brass Lantern                      what the lot is called now
func TestStories(t *testing.T) {
	files, err := filepath.Glob("testdata/stories/*.txt")
	if err != nil || len(files) < 20 {
		t.Fatalf("%d stories, %v", len(files), err)
	}
	for _, f := range files {
		t.Run(strings.TrimSuffix(filepath.Base(f), ".txt"), func(t *testing.T) {
			text, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			s := &story{t: t, file: f, book: stock.New(), ids: map[string]stock.ID{}}
			for i, line := range strings.Split(string(text), "\n") {
				s.line = i + 1
				s.play(line)
			}
			s.end()
		})
	}
}

type story struct {
	t       *testing.T
	file    string
	line    int
	book    *stock.Book
	ids     map[string]stock.ID
	going   []stock.Entry
	goLine  int
	outcome string // "", or how the last go was refused
	notices string
	played  bool
}

var (
	entryLine = regexp.MustCompile(`^(\+ )?(\d{4}-\d\d-\d\d)(?: (\d\d:\d\d))? (\w+): ([a-z ]+) (\{.*\})$`)
	lotRef    = regexp.MustCompile(`@@(\w+)|@(\w+)(?:/(\d+))?`)
)

func (s *story) play(line string) {
	if m := entryLine.FindStringSubmatch(line); m != nil {
		if m[1] == "" {
			s.end()
			s.goLine = s.line
		}
		s.going = append(s.going, s.entry(m))
		return
	}
	if len(line) < 2 || !strings.Contains("!?=~", line[:1]) || line[1] != ' ' {
		return
	}
	s.settle()
	said := strings.TrimSpace(line[2:])
	switch line[0] {
	case '!':
		if !strings.Contains(s.outcome, said) {
			s.t.Errorf("%s:%d: want a refusal with %q, got %q", s.file, s.line, said, s.outcome)
		}
		s.outcome = ""
	case '?':
		if !strings.Contains(s.notices, said) {
			s.t.Errorf("%s:%d: want to be told %q, got %q", s.file, s.line, said, s.notices)
		}
	case '=':
		name, want, _ := strings.Cut(said, ": ")
		if got := s.standing(name); got != want {
			s.t.Errorf("%s:%d: %s stands as %q, want %q", s.file, s.line, name, got, want)
		}
	case '~':
		name, want, _ := strings.Cut(said, " is called ")
		if l := s.lot(name); l.Name() != want {
			s.t.Errorf("%s:%d: %s is called %q, want %q", s.file, s.line, name, l.Name(), want)
		}
	}
}

func (s *story) entry(m []string) stock.Entry {
	id, err := stock.NewID(time.UnixMilli(int64(len(s.ids))), bytes.NewReader(make([]byte, 16)))
	if err != nil {
		s.t.Fatal(err)
	}
	id[15] = byte(len(s.ids) + 1)
	s.ids[m[4]] = id
	body := lotRef.ReplaceAllStringFunc(m[6], func(ref string) string {
		p := lotRef.FindStringSubmatch(ref)
		if p[1] != "" {
			return s.ids[p[1]].String()
		}
		if p[3] == "" {
			p[3] = "0"
		}
		return s.ids[p[2]].String() + "/" + p[3]
	})
	line := fmt.Sprintf(`{"id":%q,"kind":%q,"v":1,"on":%q,"body":%s}`, id, m[5], m[2], body)
	e, err := stock.ReadEntry([]byte(line))
	if err != nil {
		s.t.Fatalf("%s:%d: %v", s.file, s.line, err)
	}
	e.At = m[3]
	return e
}

// settle adds the go in hand.
func (s *story) settle() {
	if len(s.going) == 0 {
		return
	}
	added, err := s.book.Add(s.going...)
	s.going, s.notices, s.outcome, s.played = nil, "", "", true
	if err != nil {
		s.outcome = err.Error()
		return
	}
	s.book.Keep()
	for _, a := range added {
		s.notices += strings.Join(a.Notices, "\n")
	}
}

// end settles, and sees that nothing was refused unexpectedly.
func (s *story) end() {
	s.settle()
	if s.outcome != "" {
		s.t.Errorf("%s:%d: refused: %s", s.file, s.goLine, s.outcome)
	}
	if s.line > 0 && !s.played && len(s.ids) > 0 {
		s.t.Errorf("%s: nothing was played", s.file)
	}
	s.outcome = ""
}

func (s *story) lot(name string) stock.Lot {
	base, nth, _ := strings.Cut(name, "/")
	if nth == "" {
		nth = "0"
	}
	l, err := s.book.Find(s.ids[base].String() + "/" + nth)
	if err != nil {
		s.t.Fatalf("%s:%d: %v", s.file, s.line, err)
	}
	return l
}

func (s *story) standing(name string) string {
	var all []string
	l := s.lot(name)
	for _, st := range l.Standing {
		words := []string{fmt.Sprint(st.Count), string(st.Spot.Form), st.Spot.Place}
		for _, w := range []string{st.Spot.Crate, st.Spot.Bed, st.Spot.Row} {
			if w != "" {
				words = append(words, w)
			}
		}
		all = append(all, strings.Join(words, " "))
	}
	if len(all) == 0 {
		return "nothing"
	}
	return strings.Join(all, "; ")
}
