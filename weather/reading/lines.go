package reading

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
)

// longest is how many bytes a line may have. The longest line of the formats read here
// is a heading of some 1100.
const longest = 1 << 16

// mostBytes is how long a text may be, ends of lines counted as one byte: twice that of the
// longest daily record of one place.
const mostBytes = 64 << 20

// Lines reads a text line by line. A line ends in LF, CR LF or CR, in any mixture; a byte
// order mark at the start is dropped. Anything but text is an error.
type Lines struct {
	scanner *bufio.Scanner
	number  int
	bytes   int  // so far
	open    bool // whether the last line had no line ending
	fault   error
}

// NewLines returns the lines of r.
func NewLines(r io.Reader) *Lines {
	l := &Lines{scanner: bufio.NewScanner(io.LimitReader(r, mostBytes+1))}
	l.scanner.Buffer(make([]byte, longest), longest)
	l.scanner.Split(l.split)
	return l
}

// Next returns the next line without its line ending; the bytes are valid until the next call.
// It returns false at the end of the text or on an error; see Err.
func (l *Lines) Next() ([]byte, bool) {
	if l.fault != nil || !l.scanner.Scan() {
		l.fault = errors.Join(l.fault, l.stopped())
		return nil, false
	}
	l.number++
	line := l.scanner.Bytes()
	if l.bytes += len(line) + 1; l.bytes > mostBytes {
		l.fault = &Fault{l.number, fmt.Sprintf("the file is longer than %d MB", mostBytes>>20), "cut it into files of fewer stations or years"}
		return nil, false
	}
	if l.number == 1 {
		line = WithoutMark(line)
	}
	if what := notText(line, l.number == 1); what != "" {
		l.fault = &Fault{l.number, what, "give the weather file itself, as plain text in UTF-8"}
		return nil, false
	}
	return line, true
}

// Number returns the number of the line last read, from 1.
func (l *Lines) Number() int { return l.number }

// Open reports whether the last line had no line ending: the text stops within it, so its last
// value may be incomplete.
func (l *Lines) Open() bool { return l.open }

// Err returns why Next stopped early, or nil at the end of the text.
func (l *Lines) Err() error { return l.fault }

func (l *Lines) stopped() error {
	err := l.scanner.Err()
	if errors.Is(err, bufio.ErrTooLong) {
		return &Fault{l.number + 1, fmt.Sprintf("the line is longer than %d bytes, so this is not a known weather file", longest),
			"give a text file with one day or hour on each line"}
	}
	if err != nil {
		return fmt.Errorf("after line %d the file could not be read: %w", l.number, err)
	}
	return nil
}

// split finds the end of the next line. It searches the buffer in short windows, so that a
// text with CR only is not searched to its end for each LF.
func (l *Lines) split(data []byte, atEnd bool) (int, []byte, error) {
	const window = 512
	for from := 0; from < len(data); from += window {
		piece := data[from:min(from+window, len(data))]
		end := bytes.IndexByte(piece, '\n')
		if end >= 0 {
			piece = piece[:end]
		}
		if cr := bytes.IndexByte(piece, '\r'); cr >= 0 {
			end = cr
		}
		if end >= 0 {
			return l.ended(data, from+end, atEnd)
		}
	}
	if atEnd && len(data) > 0 {
		l.open = true
		return len(data), data, nil
	}
	return 0, nil, nil
}

// ended cuts the line that ends at data[end].
func (l *Lines) ended(data []byte, end int, atEnd bool) (int, []byte, error) {
	next := end + 1
	if data[end] == '\r' {
		if next == len(data) && !atEnd {
			return 0, nil, nil // an LF may follow
		}
		if next < len(data) && data[next] == '\n' {
			next++
		}
	}
	return next, data[:end], nil
}

var mark = []byte("\xef\xbb\xbf")

// WithoutMark returns b without the byte order mark that some programs put before a text.
func WithoutMark(b []byte) []byte { return bytes.TrimPrefix(b, mark) }

// packed maps the first bytes of packed files to a description.
var packed = map[string]string{
	"\x1f\x8b":   "the file is packed with gzip",
	"PK\x03\x04": "the file is a zip archive or a spreadsheet",
	"\xff\xfe":   "the file is text in UTF-16",
	"\xfe\xff":   "the file is text in UTF-16",
	"%PDF":       "the file is a PDF",
}

// notText returns why a line is not text; empty if it is.
func notText(line []byte, first bool) string {
	if first {
		for start, what := range packed {
			if bytes.HasPrefix(line, []byte(start)) {
				return what
			}
		}
	}
	if bytes.IndexByte(line, 0) >= 0 {
		return "the line has bytes that are not text"
	}
	return ""
}
