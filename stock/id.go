package stock

import (
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"
)

// ID identifies an entry: a UUID made by whoever writes the entry. NewID makes version 7 (RFC
// 9562); other versions are accepted, since nothing is read from an ID.
type ID [16]byte

// ErrNoID is returned for text that is not a UUID.
var ErrNoID = errors.New("not an entry's id")

// NewID returns a UUID of version 7 for the time at, with random bits from chance. It fails
// only if chance fails. Source: RFC 9562 section 5.7.
func NewID(at time.Time, chance io.Reader) (ID, error) {
	var id ID
	if _, err := io.ReadFull(chance, id[6:]); err != nil {
		return ID{}, fmt.Errorf("can't read random bits for a new id: %w", err)
	}
	ms := uint64(at.UnixMilli())
	for i := range 6 {
		id[i] = byte(ms >> (8 * (5 - i)))
	}
	id[6] = 0x70 | id[6]&0x0f
	id[8] = 0x80 | id[8]&0x3f
	return id, nil
}

// ParseID reads a UUID in its usual form, 8-4-4-4-12 hexadecimal digits.
func ParseID(s string) (ID, error) {
	var id ID
	if len(s) != 36 || s[8] != '-' || s[13] != '-' || s[18] != '-' || s[23] != '-' {
		return id, fmt.Errorf("%q is %w; write a UUID like 0193a1c2-7b1e-7c3a-9f10-2b5d6e8f0a11", s, ErrNoID)
	}
	var digits [32]byte
	n := 0
	for _, part := range []string{s[:8], s[9:13], s[14:18], s[19:23], s[24:]} {
		n += copy(digits[n:], part)
	}
	if _, err := hex.Decode(id[:], digits[:]); err != nil || id == (ID{}) {
		return ID{}, fmt.Errorf("%q is %w; write a UUID like 0193a1c2-7b1e-7c3a-9f10-2b5d6e8f0a11", s, ErrNoID)
	}
	return id, nil
}

// IsZero reports whether id is the zero ID.
func (id ID) IsZero() bool { return id == ID{} }

// String writes the id in lower case.
func (id ID) String() string {
	var b [36]byte
	hex.Encode(b[0:], id[0:4])
	hex.Encode(b[9:], id[4:6])
	hex.Encode(b[14:], id[6:8])
	hex.Encode(b[19:], id[8:10])
	hex.Encode(b[24:], id[10:])
	b[8], b[13], b[18], b[23] = '-', '-', '-', '-'
	return string(b[:])
}

// MarshalText writes the id as String does.
func (id ID) MarshalText() ([]byte, error) { return []byte(id.String()), nil }

// UnmarshalText reads what ParseID reads.
func (id *ID) UnmarshalText(b []byte) error {
	var err error
	*id, err = ParseID(string(b))
	return err
}

// LotID identifies a lot: the entry that created it, and its number among that entry's lots,
// from 0. So a phone can name a lot before the book has acknowledged it.
type LotID struct {
	Entry ID
	Nth   int // 0 to 65535
}

// MaxNth is the greatest number of a lot within its entry.
const MaxNth = 1<<16 - 1

// ParseLotID reads a lot's id, entry/ordinal.
func ParseLotID(s string) (LotID, error) {
	entry, nth, cut := strings.Cut(s, "/")
	id, err := ParseID(entry)
	n, nerr := strconv.ParseUint(nth, 10, 16)
	if !cut || err != nil || nerr != nil || nth != strconv.FormatUint(n, 10) {
		return LotID{}, fmt.Errorf("%q is not a lot's id; write the id of the entry that created it, a slash and its number, like 0193a1c2-7b1e-7c3a-9f10-2b5d6e8f0a11/0", s)
	}
	return LotID{id, int(n)}, nil
}

// IsZero reports whether l is the zero LotID.
func (l LotID) IsZero() bool { return l == LotID{} }

// String writes the id as ParseLotID reads it.
func (l LotID) String() string { return l.Entry.String() + "/" + strconv.Itoa(l.Nth) }

// MarshalText writes the id as String does.
func (l LotID) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// UnmarshalText reads what ParseLotID reads.
func (l *LotID) UnmarshalText(b []byte) error {
	var err error
	*l, err = ParseLotID(string(b))
	return err
}
