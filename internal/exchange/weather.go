package exchange

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"

	"eyeup/weather"
	"eyeup/weather/epw"
	"eyeup/weather/ghcn"
	"eyeup/weather/meteireann"
	"eyeup/weather/reading"
	"eyeup/weather/table"
	"eyeup/weather/tmy3"
)

// headLength is how many bytes of a weather file are used to recognise its format.
const headLength = 1 << 13

// weatherFormat is one format of weather files.
type weatherFormat struct {
	name       string
	recognises func(head []byte) bool
	read       func(io.Reader) ([]*weather.Record, error)
}

// weatherFormats are the known formats, the easiest to recognise first.
var weatherFormats = []weatherFormat{
	{"a GHCN-Daily .dly file", ghcn.RecognisesMonths, ghcn.ReadMonths},
	{"a GHCN-Daily table", ghcn.RecognisesTable, ghcn.ReadTable},
	{"a daily file of Met Éireann", meteireann.Recognises, meteireann.Read},
	{"an EPW file", epw.Recognises, epw.Read},
	{"a TMY3 file", tmy3.Recognises, tmy3.Read},
	{`a table with a heading like "date,low (C),high (C)"`, table.Recognises, table.Read},
}

// ReadWeather reads a weather file in any known format, which it recognises by the first
// bytes. The name is used only in messages. A file with several stations gives several
// records: see Station. Errors name the file, the line, what is wrong and what to do.
func ReadWeather(name string, r io.Reader) ([]*weather.Record, error) {
	b := bufio.NewReaderSize(r, headLength)
	head, err := b.Peek(headLength)
	if err != nil && !errors.Is(err, io.EOF) {
		return nil, fmt.Errorf("%s: the file could not be read: %w", name, err)
	}
	for _, f := range weatherFormats {
		if f.recognises(head) {
			records, err := f.read(b)
			if err != nil {
				return nil, fmt.Errorf("%s: %w", name, err)
			}
			return records, nil
		}
	}
	return nil, fmt.Errorf("%s: %w", name, unknownFormat(head, b))
}

// unknownFormat returns the error for a file of no known format.
func unknownFormat(head []byte, r io.Reader) error {
	if len(head) == 0 {
		return &reading.Fault{What: "the file is empty", Do: "check that the download was complete"}
	}
	lines := reading.NewLines(r)
	first, _ := lines.Next()
	if err := lines.Err(); err != nil {
		return err
	}
	names := make([]string, len(weatherFormats))
	for i, f := range weatherFormats {
		names[i] = f.name
	}
	return &reading.Fault{Line: 1,
		What: fmt.Sprintf("a file that begins with %s is not a known weather file", reading.Shown(first)),
		Do:   "give " + strings.Join(names, ", or ")}
}

// Station returns the record of a station. An empty id selects the only one. Its error lists
// the stations with their years.
func Station(records []*weather.Record, id string) (*weather.Record, error) {
	if id == "" && len(records) == 1 {
		return records[0], nil
	}
	id = strings.TrimPrefix(id, "GHCND:") // as the archive's tables write it
	for _, r := range records {
		if id != "" && strings.EqualFold(r.Station.ID, id) {
			return r, nil
		}
	}
	what := fmt.Sprintf("the weather file has no station %q", id)
	if id == "" {
		what = fmt.Sprintf("the weather file has %d stations", len(records))
	}
	return nil, fmt.Errorf("%s; name one of these: %s", what, stationList(records))
}

// stationList lists at most twelve stations with the years of their records.
func stationList(records []*weather.Record) string {
	const most = 12
	var names []string
	for i, r := range records {
		if i == most {
			names = append(names, fmt.Sprintf("and %d more", len(records)-most))
			break
		}
		span := r.Span()
		names = append(names, strings.TrimSpace(fmt.Sprintf("%s %s", r.Station.ID, r.Station.Name))+fmt.Sprintf(" (%d to %d)", span.From.Year(), span.To.Year()))
	}
	return strings.Join(names, ", ")
}
