package meteireann

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
	"eyeup/weather"
	"eyeup/weather/reading"
)

// mostHeading is how many lines may stand before the line that names the columns.
const mostHeading = 100

// joulesPerSquareCentimetre is the unit of glorad.
const joulesPerSquareCentimetre = 1e4 * float64(quantity.Joule)

// Recognises reports whether a file that begins with head looks like one of these.
func Recognises(head []byte) bool {
	head = bytes.ToLower(reading.WithoutMark(head))
	return bytes.HasPrefix(head, []byte("station name:")) || bytes.Contains(head, []byte(",maxtp,")) && bytes.Contains(head, []byte("mintp"))
}

// Read reads a daily file; it gives one record. What it refuses it refuses with a *reading.Fault.
func Read(r io.Reader) ([]*weather.Record, error) {
	f := file{drafts: reading.NewDrafts(), at: map[string]int{}}
	lines := reading.NewLines(r)
	if err := f.heading(lines); err != nil {
		return nil, err
	}
	for {
		line, ok := lines.Next()
		if !ok {
			break
		}
		if err := f.line(lines.Number(), line, lines.Open()); err != nil {
			return nil, err
		}
	}
	if err := lines.Err(); err != nil {
		return nil, err
	}
	return f.drafts.Records()
}

type file struct {
	drafts  *reading.Drafts
	draft   *reading.Draft
	at      map[string]int // columns by name
	count   int
	fields  [][]byte
	sunSeen bool // whether sun was measured on an earlier line
}

// heading reads all before the days.
func (f *file) heading(lines *reading.Lines) error {
	name := ""
	whereabouts := map[string]float64{}
	for lines.Number() < mostHeading {
		line, ok := lines.Next()
		if !ok {
			if err := lines.Err(); err != nil {
				return err
			}
			break
		}
		if bytes.HasPrefix(bytes.ToLower(line), []byte("date,")) {
			return f.columns(lines.Number(), line, name, whereabouts)
		}
		if rest, ok := strings.CutPrefix(string(line), "Station Name:"); ok {
			name = reading.Plain([]byte(rest))
		}
		for part := range strings.SplitSeq(string(line), ",") {
			key, value, _ := strings.Cut(part, ":")
			value = strings.TrimSuffix(strings.TrimSpace(value), " M")
			if v, ok := reading.Number([]byte(value)); ok {
				whereabouts[strings.ToLower(strings.TrimSpace(key))] = v
			}
		}
	}
	return &reading.Fault{Line: lines.Number(), What: `no line that begins with "date," names the columns`, Do: "fetch the daily file again, whole"}
}

// columns reads the line that names the columns.
func (f *file) columns(number int, line []byte, name string, whereabouts map[string]float64) error {
	fields, err := reading.Fields(nil, line, ',')
	if err != nil {
		return &reading.Fault{Line: number, What: err.Error(), Do: "fetch the file again"}
	}
	f.count = len(fields)
	for i, field := range fields {
		column := strings.ToLower(string(field))
		if _, twice := f.at[column]; twice && column != "ind" {
			return &reading.Fault{Line: number, What: fmt.Sprintf("the column %s stands twice", column), Do: "fetch the file again"}
		}
		f.at[column] = i
	}
	for _, need := range []string{"maxtp", "mintp"} {
		if _, ok := f.at[need]; !ok {
			return &reading.Fault{Line: number, What: "the column " + need + " is missing", Do: "fetch the daily file with air temperatures, not the hourly or monthly one"}
		}
	}
	if f.draft, err = f.drafts.Of(number, name); err != nil {
		return err
	}
	f.draft.Station.Name = name
	f.draft.Station.ID = name
	for key, into := range map[string]*float64{
		"latitude": &f.draft.Station.Latitude, "longitude": &f.draft.Station.Longitude, "station height": (*float64)(&f.draft.Station.Elevation),
	} {
		if v, ok := whereabouts[key]; ok {
			*into = v
		}
	}
	return nil
}

// line reads one day.
func (f *file) line(number int, line []byte, open bool) error {
	if len(bytes.TrimSpace(line)) == 0 {
		return nil
	}
	var err error
	f.fields, err = reading.Fields(f.fields, line, ',')
	if err != nil || len(f.fields) != f.count {
		return &reading.Fault{Line: number, What: fmt.Sprintf("%d fields where the heading has %d", len(f.fields), f.count), Do: "put the line right or fetch the file again"}
	}
	date, err := reading.Date(f.fields[f.at["date"]])
	if err != nil {
		return &reading.Fault{Line: number, What: err.Error(), Do: "put the date right, like 08-nov-1973"}
	}
	if err := f.draft.Visit(number, date); err != nil {
		return err
	}
	if open {
		f.draft.Note(number, "the last line has no end, so its last value may be cut short: the day is left out", date.String())
		return nil
	}
	for _, c := range []struct {
		name    string
		element reading.Element
		unit    float64
	}{{"mintp", reading.Low, 1}, {"maxtp", reading.High, 1}, {"soil", reading.Soil, 1}, {"glorad", reading.Sun, joulesPerSquareCentimetre}} {
		if err := f.value(number, date, c.name, c.element, c.unit); err != nil {
			return err
		}
	}
	return nil
}

// value takes one element of a day.
func (f *file) value(number int, date civil.Date, name string, e reading.Element, unit float64) error {
	i, ok := f.at[name]
	if !ok || reading.Missing(f.fields[i]) {
		return nil
	}
	v, ok := reading.Number(f.fields[i])
	if !ok {
		return &reading.Fault{Line: number, What: fmt.Sprintf("%s is not a number, in the column %s", reading.Shown(f.fields[i]), name), Do: "put the line right or fetch the file again"}
	}
	if e == reading.Sun && f.isDark(number, date, v) {
		return nil
	}
	return f.draft.Set(number, date, e, v*unit)
}

// isDark reports, and notes, a day without sun that must have had some.
func (f *file) isDark(number int, date civil.Date, glorad float64) bool {
	if glorad != 0 {
		f.sunSeen = true
		return false
	}
	if lat := f.draft.Station.Latitude; lat >= -90 && lat <= 90 && sun.DayLength(lat, date) == 0 {
		return false // the polar night
	}
	what := "no sun on a day when the sun rises, amid days with sun: taken as missing"
	if !f.sunSeen {
		what = "no sun before the first day with sun, as where it was not yet measured: taken as missing"
	}
	f.draft.Note(number, what, date.String())
	return true
}
