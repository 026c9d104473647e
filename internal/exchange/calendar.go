package exchange

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	ics "github.com/arran4/golang-ical"

	"eyeup/civil"
)

// Calendar is what a garden exports to a calendar program.
type Calendar struct {
	Garden  string
	Season  int       // the year of planting out
	Written time.Time // when it is written
	Entries []CalendarEntry
}

// CalendarEntry is one thing to do, on whole days.
type CalendarEntry struct {
	Key  string // identifies the task; unchanged when its days change
	Days civil.Span
	What string
	More string // why, which varieties, how long it takes
}

// WriteCalendar writes a calendar by RFC 5545. An entry's UID is made from the garden, the
// season, its key and its number among entries of that key, so that importing a changed plan
// moves entries and leaves none behind. The sequence number grows with the minute of writing.
// Entries don't mark their days as busy. An entry without a key or days is an error.
func WriteCalendar(w io.Writer, c Calendar) error {
	if c.Written.IsZero() {
		return errors.New("the calendar has no time of writing")
	}
	cal := ics.NewCalendar()
	cal.SetProductId("-//Eyeup//garden//EN")
	cal.SetMethod(ics.MethodPublish)
	cal.SetName(c.Garden)
	cal.SetXWRCalName(c.Garden)
	cal.SetRefreshInterval("P1D")
	nth := map[string]int{}
	for _, e := range c.Entries {
		if e.Key == "" || e.Days.From.IsZero() || e.Days.Days() < 1 {
			return fmt.Errorf("the calendar's entry %q has no key or no days", e.What)
		}
		c.add(cal, e, nth[e.Key])
		nth[e.Key]++
	}
	return cal.SerializeTo(w, ics.WithNewLineWindows)
}

// longAgo is the zero of sequence numbers, which count minutes. Any time before the first
// calendar would do.
var longAgo = time.Date(2020, time.January, 1, 0, 0, 0, 0, time.UTC)

func (c Calendar) add(cal *ics.Calendar, e CalendarEntry, nth int) {
	event := cal.AddEvent(c.uid(e.Key, nth))
	event.SetDtStampTime(c.Written.UTC())
	event.SetSequence(int(c.Written.Sub(longAgo) / time.Minute))
	event.SetAllDayStartAt(e.Days.From.UTC())
	event.SetAllDayEndAt(e.Days.To.AddDays(1).UTC())
	event.SetSummary(oneLine(e.What))
	if e.More != "" {
		event.SetDescription(e.More)
	}
	event.SetTimeTransparency(ics.TransparencyTransparent)
}

// uid returns an id for an entry that does not depend on its days: a UUID of version 8 from a
// hash, as RFC 9562 section 5.8 allows.
func (c Calendar) uid(key string, nth int) string {
	h := sha256.Sum256(fmt.Appendf(nil, "%s\x00%d\x00%s\x00%d", c.Garden, c.Season, key, nth))
	h[6] = h[6]&0x0f | 0x80
	h[8] = h[8]&0x3f | 0x80
	return fmt.Sprintf("%x-%x-%x-%x-%x", h[0:4], h[4:6], h[6:8], h[8:10], h[10:16])
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }
