package ghcn

import (
	"bufio"
	"bytes"
	"errors"
	"io"

	"eyeup/weather"
	"eyeup/weather/reading"
)

// Read reads a file in any of the forms, which it tells apart by the first line. Several
// stations give several records, in the order of the file. What it refuses it refuses
// with a *reading.Fault.
func Read(r io.Reader) ([]*weather.Record, error) {
	b := bufio.NewReaderSize(r, 1<<14)
	head, err := b.Peek(lineLength)
	if err != nil && !errors.Is(err, io.EOF) {
		return nil, err
	}
	if RecognisesMonths(head) {
		return ReadMonths(b)
	}
	return ReadTable(b)
}

// RecognisesMonths reports whether a file that begins with head looks like a .dly file.
func RecognisesMonths(head []byte) bool {
	head = reading.WithoutMark(head)
	if len(head) < firstValue {
		return false
	}
	if _, ok := reading.Whole(head[11:17]); !ok {
		return false
	}
	return isName(head[:11]) && isName(head[17:firstValue])
}

// RecognisesTable reports whether a file that begins with head looks like a table of the archive.
func RecognisesTable(head []byte) bool {
	line := reading.WithoutMark(head)
	if end := bytes.IndexAny(line, "\r\n"); end >= 0 {
		line = line[:end]
	}
	c, err := columnsOf(line)
	return err == nil && c.station != none && c.date != none && c.isNamed
}

// isName reports whether b is of capital letters and digits, as stations and elements are called.
func isName(b []byte) bool {
	for _, c := range b {
		if (c < 'A' || c > 'Z') && (c < '0' || c > '9') && c != '_' && c != '-' {
			return false
		}
	}
	return true
}
