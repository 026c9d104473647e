package reading

import (
	"bytes"
	"errors"
)

// errQuote is returned for a field whose quotation mark is not closed.
var errQuote = errors.New("a quotation mark is not closed")

// Fields splits a line at sep into fields without surrounding blanks, reusing into. A quoted
// field may contain sep, and two quotation marks for one. An unclosed quotation mark is an
// error.
func Fields(into [][]byte, line []byte, sep byte) ([][]byte, error) {
	into = into[:0]
	for {
		rest := bytes.TrimLeft(line, " ")
		if len(rest) > 0 && rest[0] == '"' {
			field, after, err := quoted(rest[1:], sep)
			if err != nil {
				return into, err
			}
			into = append(into, field)
			if after == nil {
				return into, nil
			}
			line = after
			continue
		}
		end := bytes.IndexByte(line, sep)
		if end < 0 {
			return append(into, bytes.TrimSpace(line)), nil
		}
		into = append(into, bytes.TrimSpace(line[:end]))
		line = line[end+1:]
	}
}

// quoted reads a field up to its closing mark and returns the rest after the next sep; nil at
// the end of the line.
func quoted(b []byte, sep byte) (field, after []byte, err error) {
	var whole []byte // what stood before a doubled mark
	for {
		end := bytes.IndexByte(b, '"')
		if end < 0 {
			return nil, nil, errQuote
		}
		if end+1 < len(b) && b[end+1] == '"' {
			whole = append(whole, b[:end+1]...)
			b = b[end+2:]
			continue
		}
		field = b[:end]
		if whole != nil {
			field = append(whole, field...)
		}
		rest := bytes.TrimLeft(b[end+1:], " ")
		if len(rest) == 0 {
			return bytes.TrimSpace(field), nil, nil
		}
		if rest[0] != sep {
			return nil, nil, errQuote
		}
		return bytes.TrimSpace(field), rest[1:], nil
	}
}
