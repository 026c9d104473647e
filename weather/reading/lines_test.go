package reading

import (
	"errors"
	"io"
	"slices"
	"strings"
	"testing"
	"testing/iotest"

	"pgregory.net/rapid"
)

func linesOf(r io.Reader) ([]string, *Lines) {
	l := NewLines(r)
	var all []string
	for {
		line, ok := l.Next()
		if !ok {
			return all, l
		}
		all = append(all, string(line))
	}
}

// TestLinesWhateverEndsThem joins lines by each of the three ends and reads them back.
func TestLinesWhateverEndsThem(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.SliceOfN(rapid.StringMatching(`[a-z,]{0,700}`), 1, 8).Draw(t, "lines")
		var text strings.Builder
		end := ""
		for i, line := range want {
			// a CR before an empty line's LF would be one end, not two
			ends := []string{"\n", "\r\n", "\r"}
			if line == "" && end == "\r" {
				ends = ends[1:]
			}
			end = rapid.SampledFrom(ends).Draw(t, "end")
			text.WriteString(line)
			if i < len(want)-1 || line == "" {
				text.WriteString(end)
			}
		}
		var r io.Reader = strings.NewReader(text.String())
		if rapid.Bool().Draw(t, "slow") {
			r = iotest.OneByteReader(r)
		}
		got, l := linesOf(r)
		if l.Err() != nil || !slices.Equal(got, want) {
			t.Errorf("%q read as %q, %v", text.String(), got, l.Err())
		}
		if open := want[len(want)-1] != ""; l.Open() != open {
			t.Errorf("%q: Open() = %v", text.String(), l.Open())
		}
	})
}

func TestLinesRefuse(t *testing.T) {
	for name, c := range map[string]struct{ text, want string }{
		"gzip":        {"\x1f\x8b\x08rest\n", "line 1: the file is packed with gzip"},
		"spreadsheet": {"PK\x03\x04rest\n", "line 1: the file is a zip archive or a spreadsheet"},
		"UTF-16":      {"\xff\xfed\x00a\x00\n", "line 1: the file is text in UTF-16"},
		"binary":      {"a\nb\x00c\n", "line 2: the line has bytes that are not text"},
		"long":        {"a\n" + strings.Repeat("x", 70000), "line 2: the line is longer than 65536 bytes"},
	} {
		_, l := linesOf(strings.NewReader(c.text))
		if err := l.Err(); err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%s: %v; want %s", name, err, c.want)
		}
		var f *Fault
		if !errors.As(l.Err(), &f) || f.Do == "" {
			t.Errorf("%s: the refusal does not say what to do: %v", name, l.Err())
		}
	}
}

func TestLinesDropMark(t *testing.T) {
	if got, _ := linesOf(strings.NewReader("\xef\xbb\xbfdate\n\n")); !slices.Equal(got, []string{"date", ""}) {
		t.Errorf("got %q", got)
	}
}

func TestLinesPassOnFailures(t *testing.T) {
	_, l := linesOf(iotest.ErrReader(io.ErrUnexpectedEOF))
	if !errors.Is(l.Err(), io.ErrUnexpectedEOF) {
		t.Errorf("got %v", l.Err())
	}
}

// rubbish gives bytes without end, and counts them.
type rubbish struct {
	line string
	read int
}

func (r *rubbish) Read(p []byte) (int, error) {
	n := 0
	for n < len(p) {
		n += copy(p[n:], r.line)
	}
	r.read += n
	return n, nil
}

// TestLinesGiveUpEarly checks that a file without lines is given up after the longest line.
func TestLinesGiveUpEarly(t *testing.T) {
	r := &rubbish{line: "rubbish "}
	if _, l := linesOf(r); l.Err() == nil || r.read > 4*longest {
		t.Errorf("%v after %d bytes", l.Err(), r.read)
	}
}
