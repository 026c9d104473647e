package stock

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"eyeup/civil"
	"eyeup/quantity"
)

// Entry is one thing that happened, as it was written down.
type Entry struct {
	ID      ID
	Kind    string     // "taken in", "round", "divided" …; Kinds lists them
	Version int        // of the body's format; 1 or more
	On      civil.Date // the day it happened, in the grower's own time
	At      string     // time of day HH:MM, or empty
	Written time.Time  // when it was written, in UTC to the second; zero: the book fills it in
	Offset  string     // of the writer's clock from UTC, like -05:00; empty if unknown
	Who     string     // the id of the person who wrote it; names are kept elsewhere
	Device  string     // the device it was written on
	Body    []byte     // canonical JSON, in the format of its kind and version
}

// entryJSON is an entry as one line of JSON.
type entryJSON struct {
	ID      string         `json:"id"`
	Kind    string         `json:"kind"`
	Version int            `json:"v"`
	On      string         `json:"on"`
	At      string         `json:"at,omitzero"`
	Written string         `json:"written,omitzero"`
	Offset  string         `json:"offset,omitzero"`
	Who     string         `json:"who,omitzero"`
	Device  string         `json:"device,omitzero"`
	Body    jsontext.Value `json:"body"`
}

var entryMembers = []string{"id", "kind", "v", "on", "at", "written", "offset", "who", "device", "body"}

// ReadEntry reads an entry from one JSON object. Unknown members are an error. The body is
// checked when the entry is added to a book.
func ReadEntry(line []byte) (Entry, error) {
	var j entryJSON
	if err := decode(line, &j, entryMembers); err != nil {
		return Entry{}, err
	}
	var e Entry
	var err error
	if e.ID, err = ParseID(j.ID); err != nil {
		return Entry{}, fmt.Errorf("id: %w", err)
	}
	if e.On, err = civil.Parse(j.On); err != nil {
		return Entry{}, fmt.Errorf("on: %w", err)
	}
	if e.Written, err = parseWritten(j.Written); err != nil {
		return Entry{}, err
	}
	if len(j.Body) == 0 || j.Body.Kind() != '{' {
		return Entry{}, errors.New("body: an entry needs a body, an object in braces; write {} where there is nothing to say")
	}
	if e.Body, err = Canonical(j.Body); err != nil {
		return Entry{}, fmt.Errorf("body: %w", err)
	}
	e.Kind, e.Version, e.At, e.Offset, e.Who, e.Device = j.Kind, j.Version, j.At, j.Offset, j.Who, j.Device
	return e, e.check()
}

func parseWritten(s string) (time.Time, error) {
	if s == "" {
		return time.Time{}, nil
	}
	t, err := time.Parse(time.RFC3339, s)
	if err != nil {
		return t, fmt.Errorf("written: %q is not a time; write it in UTC like 2027-01-10T14:05:00Z", s)
	}
	if t.Nanosecond() != 0 || !strings.HasSuffix(s, "Z") {
		return t, fmt.Errorf("written: %q must be in UTC and to the second, like 2027-01-10T14:05:00Z", s)
	}
	return t.UTC(), nil
}

// check checks the entry except its body.
func (e *Entry) check() error {
	if e.Kind == "" {
		return errors.New("kind: say what happened, such as moved; the kinds are: " + strings.Join(Kinds(), ", "))
	}
	if e.Version < 1 {
		return fmt.Errorf("v: give the version of the body's format; %q is written with \"v\":1", e.Kind)
	}
	if _, err := minuteOf(e.At); err != nil {
		return fmt.Errorf("at: %w", err)
	}
	if e.Offset != "" {
		if _, err := time.Parse("-07:00", e.Offset); err != nil {
			return fmt.Errorf("offset: %q is not an offset from UTC; write it like -05:00", e.Offset)
		}
	}
	return nil
}

// minuteOf reads a time of day, HH:MM; empty is -1.
func minuteOf(at string) (int16, error) {
	if at == "" {
		return -1, nil
	}
	h, m, cut := strings.Cut(at, ":")
	hour, err1 := strconv.Atoi(h)
	minute, err2 := strconv.Atoi(m)
	if !cut || err1 != nil || err2 != nil || len(at) != 5 || hour < 0 || hour > 23 || minute < 0 || minute > 59 {
		return 0, fmt.Errorf("%q is not a time of day; write it like 14:05", at)
	}
	return int16(60*hour + minute), nil
}

// Canonical returns the entry as canonical JSON (RFC 8785) without empty members. The bytes of
// an entry never change.
func (e *Entry) Canonical() []byte {
	b := make([]byte, 0, len(e.Body)+256)
	b = append(b, '{')
	b = member(b, "at", e.At)
	b = append(append(append(b, `"body":`...), e.Body...), ',')
	b = member(b, "device", e.Device)
	b = member(b, "id", e.ID.String())
	b = member(b, "kind", e.Kind)
	b = member(b, "offset", e.Offset)
	b = member(b, "on", e.On.String())
	b = strconv.AppendInt(append(b, `"v":`...), int64(e.Version), 10)
	if e.Who != "" {
		b = member(append(b, ','), "who", e.Who)
		b = b[:len(b)-1]
	}
	if !e.Written.IsZero() {
		b = member(append(b, ','), "written", e.Written.UTC().Format(time.RFC3339))
		b = b[:len(b)-1]
	}
	return append(b, '}')
}

// member appends one member and a comma; nothing for an empty text.
func member(b []byte, name, text string) []byte {
	if text == "" {
		return b
	}
	b = append(append(append(b, '"'), name...), '"', ':')
	b, err := jsontext.AppendQuote(b, text)
	if err != nil {
		panic("stock: an entry's text is checked to be UTF-8 when it is read: " + err.Error())
	}
	return append(b, ',')
}

// decode reads a JSON object. An unknown member is an error that names the nearest known one.
func decode(value []byte, into any, known []string) error {
	err := json.Unmarshal(value, into, json.RejectUnknownMembers(true))
	if err == nil {
		return nil
	}
	var semantic *json.SemanticError
	if !errors.As(err, &semantic) {
		return plainJSON(err)
	}
	where := strings.ReplaceAll(strings.TrimPrefix(string(semantic.JSONPointer), "/"), "/", " ")
	switch {
	case errors.Is(err, json.ErrUnknownName):
		return unknownMember(semantic.JSONPointer.LastToken(), known)
	case semantic.Err != nil:
		return fmt.Errorf("%s: %w", where, semantic.Err)
	}
	return fmt.Errorf("%s: this is a JSON %v, which does not belong here; %s", where, semantic.JSONKind, wanted(semantic))
}

func wanted(e *json.SemanticError) string {
	if e.GoType == nil {
		return "the guide lists the kinds of entries"
	}
	switch k := e.GoType.Kind().String(); {
	case strings.HasPrefix(k, "int"), strings.HasPrefix(k, "uint"):
		return "write a whole number"
	case k == "bool":
		return "write true or false"
	case k == "string":
		return "write text in quotes"
	case k == "slice":
		return "write a list in brackets"
	}
	return "write an object in braces"
}

func unknownMember(name string, known []string) error {
	known = slices.Sorted(slices.Values(known))
	if near, ok := quantity.Nearest(name, known); ok {
		return fmt.Errorf("%q is not known here; is %q meant?", name, near)
	}
	return fmt.Errorf("%q is not known here; known are: %s", name, strings.Join(known, ", "))
}
