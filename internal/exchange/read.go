package exchange

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"time"
	_ "time/tzdata" // a garden's time zone must be known on every machine

	"golang.org/x/text/currency"

	"eyeup/quantity"
	"eyeup/sun"
	"eyeup/weather"
)

// The files of a garden folder.
const (
	gardenFile = "garden.toml"
	stockFile  = "stock.csv"
)

// madeUpWeather is the value of the key weather if there is no file.
const madeUpWeather = "made-up"

// The plausible range of the garden's settings.
const (
	firstYear, lastYear = 1700, 2200
	mostCrates          = 100000
)

// ReadGarden reads the garden in a folder: garden.toml and stock.csv. The name is the
// folder's, for messages. Errors are returned as Faults, all that one reading found. The
// weather file is not read; see LoadWeather.
func ReadGarden(fsys fs.FS, name string) (*Garden, error) {
	var faults Faults
	g := &Garden{folder: name, files: fsys}
	data, err := readFile(fsys, name, gardenFile)
	if err != nil {
		return nil, err
	}
	if len(data) > mostGarden {
		return nil, Fault{File: path.Join(name, gardenFile), What: fmt.Sprintf("it has %d bytes, more than %d, which no garden has; look whether it is the right file", len(data), mostGarden)}
	}
	root, err := outlineOf(path.Join(name, gardenFile), data)
	if err != nil {
		return nil, err
	}
	top := &section{file: path.Join(name, gardenFile), group: root, faults: &faults}
	g.readTop(top)
	g.files = nil
	if err := g.readStock(fsys, name, &faults); err != nil {
		return nil, err
	}
	if err := faults.err(); err != nil {
		return nil, err
	}
	return g, nil
}

// mostGarden is how many bytes garden.toml may have; that of a large garden has a tenth.
const mostGarden = 256 << 10

// mostBytes is the size limit of a file in the folder; real ones are a thousandth of it.
const mostBytes = 16 << 20

func readFile(fsys fs.FS, name, file string) ([]byte, error) {
	full := path.Join(name, file)
	info, err := fs.Stat(fsys, file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, Fault{File: full, What: "there is no such file; a garden folder holds " + gardenFile + " and " + stockFile}
	case err != nil:
		return nil, Fault{File: full, What: fmt.Sprintf("it can't be read (%v); look to its permissions", err)}
	case info.IsDir():
		return nil, Fault{File: full, What: "it is a folder; expected a file"}
	case info.Size() > mostBytes:
		return nil, Fault{File: full, What: fmt.Sprintf("it is larger than %d MB, too large for a garden; check that it is the right file", mostBytes>>20)}
	}
	data, err := fs.ReadFile(fsys, file)
	if err != nil {
		return nil, Fault{File: full, What: fmt.Sprintf("it can't be read (%v); look to its permissions", err)}
	}
	return data, nil
}

func (g *Garden) readTop(top *section) {
	if s := top.sub("garden", due); s != nil {
		g.readGarden(s, top.has("normals"))
	}
	if s := top.sub("normals", free); s != nil {
		g.readNormals(s)
	}
	if s := top.sub("offset", free); s != nil {
		g.readOffset(s)
	}
	if s := top.sub("season", due); s != nil {
		g.readSeason(s)
	}
	if s := top.sub("prices", free); s != nil {
		g.readPrices(s)
	}
	if s := top.sub("figures", free); s != nil {
		g.readFigures(s)
	}
	g.readPlaces(top)
	if s := top.sub("patch", free); s != nil {
		g.readPatch(s)
	}
	top.rest()
}

func (g *Garden) readGarden(s *section, hasNormals bool) {
	g.Name = s.text("name", due)
	g.readSite(s)
	if zone := s.text("time_zone", due); zone != "" {
		var err error
		if g.Zone, err = time.LoadLocation(zone); err != nil || zone == "Local" {
			s.refuseKey("time_zone", "there is no time zone %q; write it as region/city, such as America/New_York", zone)
		}
	}
	if units := s.choice("units", due, "us", "metric"); units == "us" {
		g.System = quantity.US
	}
	g.readCurrency(s)
	g.Weather.File = s.text("weather", due)
	switch {
	case g.Weather.File == madeUpWeather && !hasNormals:
		const none = "weather is to be made up, but there are no "
		s.refuseAs(s.place("weather"), "weather", "weather: "+none+"[normals]; give twelve monthly lows and highs, or a weather file", none+"mean lows and highs of the months; give twelve of each, or a weather file")
	case g.Weather.File == madeUpWeather:
		g.Weather.File = ""
	case g.Weather.File != "" && !fs.ValidPath(g.Weather.File):
		s.refuseFile("weather", fmt.Sprintf("%q is not in the folder; put the file beside %s and give its name", g.Weather.File, gardenFile), g.Weather.File)
	}
	g.Weather.Station = s.text("station", free)
	g.readYears(s)
	if g.Weather.IsMadeUp() {
		g.Weather.Station, g.Weather.FromYear, g.Weather.ToYear = "", 0, 0
	}
	s.rest()
}

func (g *Garden) readSite(s *section) {
	latitude, hasLatitude := s.decimal("latitude", due)
	longitude, hasLongitude := s.decimal("longitude", due)
	elevation, hasElevation := measured(s, "elevation", due, quantity.ParseLength)
	g.Site = sun.Site{Latitude: latitude, Longitude: longitude, Elevation: elevation}
	key := "latitude"
	if hasLatitude && hasLongitude && hasElevation {
		if err := g.Site.Check(); err != nil {
			if g.Site.Latitude >= -90 && g.Site.Latitude <= 90 {
				key = "longitude"
			}
			if key == "longitude" && longitude >= -180 && longitude <= 180 {
				key = "elevation"
			}
			s.refuseAs(s.place(key), key, err.Error(), err.Error())
		}
	}
}

func (g *Garden) readCurrency(s *section) {
	g.Currency = s.text("currency", due)
	if g.Currency == "" {
		return
	}
	if unit, err := currency.ParseISO(g.Currency); err != nil || unit.String() != g.Currency {
		s.refuseKey("currency", "there is no currency %q; write its three capital letters, such as USD or EUR", g.Currency)
	}
}

func (g *Garden) readYears(s *section) {
	from, hasFrom := s.whole("from_year", free, firstYear, lastYear)
	to, hasTo := s.whole("to_year", free, firstYear, lastYear)
	if hasFrom && hasTo && to < from {
		s.refuseKey("to_year", "the years end (%d) before they begin (%d); swap them", to, from)
	}
	g.Weather.FromYear, g.Weather.ToYear = from, to
}

func (g *Garden) readNormals(s *section) {
	low, hasLow := monthly(s, "low", due, quantity.ParseTemperature)
	high, hasHigh := monthly(s, "high", due, quantity.ParseTemperature)
	if hasLow && hasHigh {
		g.Weather.Normals = &weather.Normals{Low: low, High: high}
		if err := g.Weather.Normals.Check(); err != nil {
			s.refuse(s.group.at, "%v", err)
		}
	}
	s.rest()
}

// monthly reads twelve measures, January first.
func monthly[T any](s *section, key string, n need, parse func(string) (T, error)) (months [12]T, ok bool) {
	v, there := s.get(key, n)
	if !there {
		return months, false
	}
	if len(v.list) != 12 {
		s.refuseAt(v.at, key, "expected twelve measures, January first; there are %d", len(v.list))
		return months, false
	}
	ok = true
	for m, one := range v.list {
		got, good := measuredIn(s, fmt.Sprintf("%s for %v", key, time.Month(m+1)), one, parse)
		months[m], ok = got, ok && good
	}
	return months, ok
}

// steadyOrMonthly reads one measure for the whole year, or twelve, January first.
func steadyOrMonthly[T any](s *section, key string, n need, parse func(string) (T, error)) (months [12]T, ok bool) {
	v, there := s.get(key, n)
	if !there {
		return months, false
	}
	if v.list != nil {
		return monthly(s, key, n, parse)
	}
	one, ok := measuredIn(s, key, v, parse)
	for m := range months {
		months[m] = one
	}
	return months, ok
}

func (g *Garden) readOffset(s *section) {
	const most = 10 * quantity.Kelvin
	night, ok := measured(s, "night", due, quantity.ParseDifference)
	within(s, "night", night, ok, -most, most, g.System.Difference)
	day, ok := measured(s, "day", due, quantity.ParseDifference)
	within(s, "day", day, ok, -most, most, g.System.Difference)
	g.Offset = Offset{Night: night, Day: day}
	s.rest()
}

func (g *Garden) readSeason(s *section) {
	g.Season.PlantYear, _ = s.whole("plant_year", due, firstYear+1, lastYear-1)
	var ok bool
	if g.Season.FrostRisk, ok = measured(s, "frost_risk", due, quantity.ParseShare); ok && (g.Season.FrostRisk <= 0 || g.Season.FrostRisk >= 1) {
		s.refuseKey("frost_risk", "0%% and 100%% can't be planned for; give the risk that you accept, such as 10%%")
	}
	if g.Season.Fits, ok = measured(s, "fits", due, quantity.ParseShare); ok && g.Season.Fits <= 0 {
		s.refuseKey("fits", "benches must be large enough in some years; give a share such as 90%%")
	}
	g.Season.HoursPerWeek, ok = measured(s, "hours_per_week", due, quantity.ParseDuration)
	if ok && (g.Season.HoursPerWeek < 0 || g.Season.HoursPerWeek > 1000*time.Hour) {
		s.refuseKey("hours_per_week", "%v is outside 0 to 1000 hours; check the number", g.Season.HoursPerWeek)
	}
	g.Season.StemsSold, _ = measured(s, "stems_sold", due, quantity.ParseShare)
	s.rest()
}
