package exchange

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"time"

	"github.com/emersion/go-ical"

	"eyeup/civil"
)

func aCalendar() Calendar {
	monday := civil.MustOn(2027, time.April, 12)
	week := func(n civil.Days) civil.Span {
		return civil.Span{From: monday.AddDays(7 * n), To: monday.AddDays(7*n + 6)}
	}
	return Calendar{Garden: "Tamsel Hollow", Season: 2027, Written: time.Date(2027, time.January, 15, 8, 30, 0, 0, time.UTC), Entries: []CalendarEntry{
		{"start\x00dahlia\x00glass", week(0), "Start 102 dahlia: glass", "Tallow Bell, Kiln Brick; and a long list of others, so long that its line must be folded by the rules; Ünterwell, 白い鷺, \"quoted\", back\\slash.\nAbout 4.2 hours."},
		{"round\x00\x00cellar", week(1), "Go through the crates:\r\ncellar", ""},
		{"round\x00\x00cellar", week(5), "Go through the crates: cellar", ""},
	}}
}

func writtenCalendar(t *testing.T, c Calendar) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := WriteCalendar(&b, c); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// events reads a calendar by another library, and keeps its events by their UIDs.
func events(t *testing.T, text []byte) map[string]ical.Event {
	t.Helper()
	cal, err := ical.NewDecoder(bytes.NewReader(text)).Decode()
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]ical.Event{}
	for _, e := range cal.Events() {
		uid, err := e.Props.Text(ical.PropUID)
		if err != nil || uid == "" {
			t.Fatalf("an event without UID: %v", err)
		}
		all[uid] = e
	}
	return all
}

// TestCalendarByAnotherReader reads the calendar by another library: what each entry says,
// and that it fills whole days of which the last is not counted (RFC 5545, 3.6.1).
func TestCalendarByAnotherReader(t *testing.T) {
	c := aCalendar()
	all := events(t, writtenCalendar(t, c))
	if len(all) != 3 {
		t.Fatalf("%d events, want 3", len(all))
	}
	for i, want := range c.Entries {
		e, there := all[c.uid(want.Key, min(max(i-1, 0), 1))]
		if !there {
			t.Fatalf("no event for entry %d", i)
		}
		what, _ := e.Props.Text(ical.PropSummary)
		more, _ := e.Props.Text(ical.PropDescription)
		from, err1 := e.DateTimeStart(time.UTC)
		to, err2 := e.DateTimeEnd(time.UTC)
		if what != strings.Join(strings.Fields(want.What), " ") || more != want.More || err1 != nil || err2 != nil ||
			!from.Equal(want.Days.From.UTC()) || !to.Equal(want.Days.To.AddDays(1).UTC()) {
			t.Errorf("entry %d: %q, %q, %v to %v (%v, %v)", i, what, more, from, to, err1, err2)
		}
		if dated := e.Props.Get(ical.PropDateTimeStart).Params.Get(ical.ParamValue); dated != "DATE" {
			t.Errorf("entry %d begins at a %q, want a DATE", i, dated)
		}
	}
}

// TestCalendarLines holds lines to RFC 5545, 3.1: ended by CRLF, no longer than 75 octets.
func TestCalendarLines(t *testing.T) {
	text := string(writtenCalendar(t, aCalendar()))
	if strings.Count(text, "\n") != strings.Count(text, "\r\n") || !strings.HasSuffix(text, "END:VCALENDAR\r\n") {
		t.Error("lines must end with CRLF")
	}
	for _, line := range strings.Split(text, "\r\n") {
		if len(line) > 75 {
			t.Errorf("%d octets: %s", len(line), line)
		}
	}
	for _, due := range []string{"VERSION:2.0", "PRODID:", "DTSTAMP:20270115T083000Z", "METHOD:PUBLISH"} {
		if !strings.Contains(text, "\r\n"+due) {
			t.Errorf("%s is missing", due)
		}
	}
}

// TestChangedPlanMovesEntries writes the calendar again ten minutes later, with one entry moved
// and its count changed: the same UIDs, newer sequences, and no entry left behind.
func TestChangedPlanMovesEntries(t *testing.T) {
	c := aCalendar()
	before := events(t, writtenCalendar(t, c))
	c.Written = c.Written.Add(10 * time.Minute)
	c.Entries[0].Days.From, c.Entries[0].Days.To = c.Entries[0].Days.From.AddDays(7), c.Entries[0].Days.To.AddDays(7)
	c.Entries[0].What = "Start 98 dahlia: glass"
	after := events(t, writtenCalendar(t, c))
	if len(before) != len(after) {
		t.Fatalf("%d events, then %d", len(before), len(after))
	}
	for uid, old := range before {
		now, there := after[uid]
		if !there {
			t.Errorf("%s is gone", uid)
			continue
		}
		was, _ := old.Props.Get(ical.PropSequence).Int()
		is, _ := now.Props.Get(ical.PropSequence).Int()
		if is <= was {
			t.Errorf("%s: sequence %d, then %d", uid, was, is)
		}
	}
	c.Season++
	for uid := range events(t, writtenCalendar(t, c)) {
		if _, there := after[uid]; there {
			t.Errorf("%s names an entry of two seasons", uid)
		}
	}
}

func TestCalendarRefused(t *testing.T) {
	c := aCalendar()
	c.Written = time.Time{}
	if err := WriteCalendar(io.Discard, c); err == nil {
		t.Error("a calendar without its time was written")
	}
	for _, e := range []CalendarEntry{{"", c.Entries[0].Days, "x", ""}, {"x", civil.Span{}, "x", ""}, {"x", civil.Span{From: c.Entries[1].Days.To, To: c.Entries[1].Days.From}, "x", ""}} {
		c := aCalendar()
		c.Entries = []CalendarEntry{e}
		if err := WriteCalendar(io.Discard, c); err == nil {
			t.Errorf("%+v was written", e)
		}
	}
}
