package reckon

import (
	"context"
	"fmt"
	"io"
	"math"
	"os"

	"eyeup/civil"
	"eyeup/internal/archive"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/report"
	"eyeup/weather"
)

// WeatherAnswer is what weather files hold, and where one was fetched from.
type WeatherAnswer struct {
	Files   []WeatherFileAnswer `json:"files"`
	Nearest []NearStation       `json:"nearest,omitempty" jsonschema_description:"stations of the archive with long records, nearest first"`
	Note    string              `json:"note"`
}

// WeatherFileAnswer is what one file holds.
type WeatherFileAnswer struct {
	Name     string           `json:"name"`
	Fetched  int64            `json:"bytes_fetched,omitempty"`
	Stations []WeatherStation `json:"stations"`
}

// WeatherStation is what a file holds of one station.
type WeatherStation struct {
	garden.StationAnswer
	Latitude   *float64         `json:"latitude_deg" jsonschema:"oneof_type=number;null"`
	Longitude  *float64         `json:"longitude_deg" jsonschema:"oneof_type=number;null"`
	ElevationM *float64         `json:"elevation_m" jsonschema:"oneof_type=number;null"`
	Days       int              `json:"days" jsonschema_description:"of the calendar, from the first to the last"`
	Known      int              `json:"days_known" jsonschema_description:"days with a low and a high that agree"`
	NoLow      int              `json:"days_without_low"`
	NoHigh     int              `json:"days_without_high"`
	Sun        int              `json:"days_with_sun"`
	Soil       int              `json:"days_with_soil"`
	LongestGap int              `json:"longest_gap_days" jsonschema_description:"longest run of days without a low and a high that agree"`
	GapFrom    civil.Date       `json:"longest_gap_from"`
	Findings   []WeatherFinding `json:"findings" jsonschema_description:"faults found, whose values were left out"`
}

// WeatherFinding is a fault in a weather file, whose values were left out.
type WeatherFinding struct {
	Line  int    `json:"line" jsonschema_description:"the first that shows it"`
	What  string `json:"what"`
	Count int    `json:"count"`
}

// NearStation is a station of the archive.
type NearStation struct {
	ID         string   `json:"id"`
	Name       string   `json:"name"`
	Latitude   float64  `json:"latitude_deg"`
	Longitude  float64  `json:"longitude_deg"`
	ElevationM *float64 `json:"elevation_m" jsonschema:"oneof_type=number;null"`
	DistanceKm float64  `json:"distance_km"`
	FromYear   int      `json:"from_year"`
	ToYear     int      `json:"to_year"`
	IsFetched  bool     `json:"fetched"`
}

const weatherNote = "Missing values stay missing. The faults listed were left out, not corrected by guessing."

// ReadWeather sums up a weather file. It refuses a file that can't be read.
func ReadWeather(name string, file io.Reader) (*WeatherFileAnswer, error) {
	records, err := exchange.ReadWeather(name, file)
	if err != nil {
		return nil, err
	}
	a := &WeatherFileAnswer{Name: name}
	for _, r := range records {
		a.Stations = append(a.Stations, weatherStation(r))
	}
	return a, nil
}

// Weather answers for the files looked through.
func Weather(files []WeatherFileAnswer) *WeatherAnswer {
	return &WeatherAnswer{Files: files, Note: weatherNote}
}

// weatherStation counts what a record holds.
func weatherStation(r *weather.Record) WeatherStation {
	s := WeatherStation{
		StationAnswer: garden.StationOf(r), Days: len(r.Days), Findings: []WeatherFinding{},
		Latitude: knownOrNil(r.Station.Latitude, 5), Longitude: knownOrNil(r.Station.Longitude, 5), ElevationM: knownOrNil(float64(r.Station.Elevation), 1),
	}
	gap := 0
	for i, d := range r.Days {
		if !d.Low.IsKnown() {
			s.NoLow++
		}
		if !d.High.IsKnown() {
			s.NoHigh++
		}
		if !math.IsNaN(float64(d.Sun)) {
			s.Sun++
		}
		if d.Soil.IsKnown() {
			s.Soil++
		}
		if d.HasExtremes() {
			s.Known++
			gap = 0
			continue
		}
		if gap++; gap > s.LongestGap {
			s.LongestGap, s.GapFrom = gap, r.From.AddDays(civil.Days(i+1-gap))
		}
	}
	for _, f := range r.Findings {
		s.Findings = append(s.Findings, WeatherFinding{f.Line, f.What, f.Count})
	}
	return s
}

// knownOrNil returns x rounded to a number of decimals, or nil if x is NaN (not known).
func knownOrNil(x float64, decimals int) *float64 {
	if math.IsNaN(x) {
		return nil
	}
	return report.Rounded(x, decimals)
}

// ArchiveBase is where the public archive lies unless another address is given.
const ArchiveBase = archive.Base

// NearestQuestion asks for the long record nearest to a place.
type NearestQuestion struct {
	Latitude, Longitude float64
	Years               int    // that the record spans at least; 0: as many as tell one year in ten
	Most                int    // stations listed
	Station             string // which of them to fetch; empty: the nearest
	ListOnly            bool   // fetch none
	Base                string // address of the archive
	Folder              string // for the archive's lists
	Out                 string // where the file goes; empty: the station's identity, with .dly
	Progress            func(name string, done, total int64)
}

// NearestWeather lists the nearest stations with long records and fetches one. It refuses to
// write over a file that is there.
func NearestWeather(ctx context.Context, q NearestQuestion) (*WeatherAnswer, error) {
	a := &archive.Archive{Base: q.Base, Folder: q.Folder, Progress: func(p archive.Progress) {
		if q.Progress != nil {
			q.Progress(p.Name, p.Done, p.Total)
		}
	}}
	if q.Years == 0 {
		q.Years = archive.Long
	}
	near, err := a.Nearest(ctx, q.Latitude, q.Longitude, q.Years, q.Most)
	if err != nil {
		return nil, err
	}
	answer := &WeatherAnswer{Files: []WeatherFileAnswer{}, Note: weatherNote}
	chosen := 0
	for i, s := range near {
		if s.ID == q.Station {
			chosen = i
		}
		answer.Nearest = append(answer.Nearest, NearStation{
			ID: s.ID, Name: s.Name, Latitude: s.Latitude, Longitude: s.Longitude, ElevationM: knownOrNil(float64(s.Elevation), 1),
			DistanceKm: *report.Rounded(float64(s.Distance)/1000, 1), FromYear: s.From, ToYear: s.To,
		})
	}
	if q.ListOnly {
		return answer, nil
	}
	if q.Station != "" && near[chosen].ID != q.Station {
		return nil, fmt.Errorf("%s is not among the %d nearest stations with long records; list them with --list", q.Station, len(near))
	}
	file, err := fetch(ctx, a, near[chosen], q.Out)
	if err != nil {
		return nil, err
	}
	answer.Nearest[chosen].IsFetched = true
	answer.Files = append(answer.Files, *file)
	return answer, nil
}

// fetch brings a station's file.
func fetch(ctx context.Context, a *archive.Archive, s archive.Station, out string) (*WeatherFileAnswer, error) {
	if out == "" {
		out = s.ID + ".dly"
	}
	if _, err := os.Stat(out); err == nil {
		return nil, fmt.Errorf("%s is there already; name another file with --out, or move it away", out)
	}
	f, err := a.Fetch(ctx, s.ID, out)
	if err != nil {
		return nil, err
	}
	f.Record.Station = s.Station // the file itself does not say where it lies
	return &WeatherFileAnswer{Name: out, Fetched: f.Bytes, Stations: []WeatherStation{weatherStation(f.Record)}}, nil
}
