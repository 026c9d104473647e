package archive

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"

	"eyeup/quantity"
	"eyeup/sun"
	"eyeup/weather"
	"eyeup/weather/reading"
)

// Station is a station in the archive's lists.
type Station struct {
	weather.Station
	From     int             // first year with both lows and highs
	To       int             // last such year; years between may have gaps
	Distance quantity.Length // from the place searched for
}

// Years returns how many years the record spans.
func (s Station) Years() int { return s.To - s.From + 1 }

// Long is how many years a record should span to show one year in ten: the thirty of a climate
// normal (World Meteorological Organization, No. 1203).
const Long = 30

// stale is how many years before the newest of the archive a record may end.
const stale = 5

// Nearest returns at most the given number of stations, nearest first, whose daily lows and
// highs span at least years and end within five years of the archive's newest. It downloads
// the archive's long lists, unless current copies are kept.
func (a *Archive) Nearest(ctx context.Context, latitude, longitude float64, years, most int) ([]Station, error) {
	if err := (sun.Site{Latitude: latitude, Longitude: longitude}).Check(); err != nil {
		return nil, err
	}
	inventory, err := a.list(ctx, "ghcnd-inventory.txt", mostInventory)
	if err != nil {
		return nil, err
	}
	all, err := readInventory(inventory)
	if err != nil {
		return nil, err
	}
	near := nearest(all, latitude, longitude, years, most)
	if len(near) == 0 {
		return nil, fmt.Errorf("the archive has no station with %d years of lows and highs up to now; ask for fewer years", years)
	}
	names, err := a.list(ctx, "ghcnd-stations.txt", mostStations)
	if err != nil {
		return nil, err
	}
	return near, nameStations(names, near)
}

// list downloads a list of the archive to the folder and returns its path.
func (a *Archive) list(ctx context.Context, name string, most int64) (string, error) {
	path, err := a.kept(name)
	if err != nil {
		return "", err
	}
	return path, a.fetch(ctx, name, path, most)
}

// spans are the years with lows and highs of a station.
type spans struct {
	latitude, longitude float64
	years               [2][2]int // of TMIN and TMAX: first, last
}

// mostListed limits the memory for the list; the archive has some 40,000 stations with
// temperatures.
const mostListed = 500_000

// readInventory reads the years of temperatures of every station.
func readInventory(path string) (map[string]*spans, error) {
	all := map[string]*spans{}
	err := eachLine(path, func(line []byte) error {
		if len(line) < 45 {
			return fmt.Errorf("the line has %d characters instead of 45", len(line))
		}
		element := slices.Index([]string{"TMIN", "TMAX"}, string(line[31:35]))
		if element < 0 {
			return nil
		}
		latitude, ok1 := reading.Number([]byte(strings.TrimSpace(string(line[12:20]))))
		longitude, ok2 := reading.Number([]byte(strings.TrimSpace(string(line[21:30]))))
		from, ok3 := reading.Whole(line[36:40])
		to, ok4 := reading.Whole(line[41:45])
		if !ok1 || !ok2 || !ok3 || !ok4 {
			return fmt.Errorf("%s is not latitude, longitude, element, first and last year", reading.Shown(line[11:45]))
		}
		id := string(line[:11])
		s := all[id]
		if s == nil {
			if len(all) == mostListed {
				return fmt.Errorf("the list has more than %d stations", mostListed)
			}
			s = &spans{latitude: latitude, longitude: longitude}
			all[id] = s
		}
		s.years[element] = [2]int{from, to}
		return nil
	})
	return all, err
}

// eachLine calls see for every line of a list; its error names the line.
func eachLine(path string, see func([]byte) error) error {
	file, err := os.Open(path)
	if err != nil {
		return err
	}
	defer file.Close() //nolint:errcheck // it was only read
	lines := reading.NewLines(file)
	for {
		line, ok := lines.Next()
		if !ok {
			break
		}
		if err := see(line); err != nil {
			return fmt.Errorf("%s: line %d: %w; delete the file, so that it is fetched again", path, lines.Number(), err)
		}
	}
	if err := lines.Err(); err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	return nil
}

// nearest selects the stations for Nearest.
func nearest(all map[string]*spans, latitude, longitude float64, years, most int) []Station {
	newest := 0
	for _, s := range all {
		newest = max(newest, s.years[0][1])
	}
	var near []Station
	for id, s := range all {
		from, to := max(s.years[0][0], s.years[1][0]), min(s.years[0][1], s.years[1][1])
		if s.years[0][0] == 0 || s.years[1][0] == 0 || to-from+1 < years || to < newest-stale {
			continue
		}
		near = append(near, Station{
			Station: weather.Station{ID: id, Latitude: s.latitude, Longitude: s.longitude, Elevation: quantity.Length(math.NaN())},
			From:    from, To: to,
			Distance: distance(latitude, longitude, s.latitude, s.longitude),
		})
	}
	slices.SortFunc(near, func(a, b Station) int {
		return cmp.Or(cmp.Compare(a.Distance, b.Distance), strings.Compare(a.ID, b.ID))
	})
	return near[:min(most, len(near))]
}

// nameStations adds names and elevations from the list of stations.
func nameStations(path string, near []Station) error {
	byID := map[string]*Station{}
	for i := range near {
		byID[near[i].ID] = &near[i]
	}
	return eachLine(path, func(line []byte) error {
		if len(line) < 42 {
			return fmt.Errorf("the line has %d characters, too few for a station", len(line))
		}
		s := byID[string(line[:11])]
		if s == nil {
			return nil
		}
		s.Name = reading.Plain(line[41:min(71, len(line))])
		metres, err := strconv.ParseFloat(strings.TrimSpace(string(line[31:37])), 64)
		if err == nil && metres != -999.9 {
			s.Elevation = quantity.Length(metres)
		}
		return nil
	})
}

// earth is the mean radius of the Earth (IUGG, 2a+b over 3 of the GRS 80 ellipsoid).
const earth = 6371008.8

// distance returns the distance of two places given in degrees, on a sphere: the haversine
// formula, accurate to half a percent.
func distance(latitude1, longitude1, latitude2, longitude2 float64) quantity.Length {
	const degree = math.Pi / 180
	north := math.Sin((latitude2 - latitude1) * degree / 2)
	east := math.Sin((longitude2 - longitude1) * degree / 2)
	h := north*north + math.Cos(latitude1*degree)*math.Cos(latitude2*degree)*east*east
	return quantity.Length(2 * earth * math.Asin(math.Sqrt(min(1, h))))
}
