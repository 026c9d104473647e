package desk

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"github.com/pelletier/go-toml/v2"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/stockbook"
	"eyeup/quantity"
	"eyeup/stock"
	"eyeup/sun"
	"eyeup/weather"
)

// Draft is a new garden as the grower types it, before it is written into a book.
type Draft struct {
	Name, Latitude, Longitude, Elevation string
	Zone, Units, Currency                string
	Lows, Highs                          []string // twelve each, January first; none where a file serves
	File                                 string   // name of a weather file
	Content                              []byte   // of that file
	Station                              string   // which of its stations
	Night, Day                           string   // how much warmer the patch is than the station
	FrostRisk, Hours                     string
	Electricity                          string // its price, such as 0.30 USD/kWh; empty: not known
	Places                               []DraftPlace
}

// DraftPlace is a place as it is typed: the keys of a place in a garden folder.
type DraftPlace struct {
	Name string
	Body map[string]any
}

// CheckSite fails where name, position, elevation or time zone of the garden is wrong, and says what.
func (d Draft) CheckSite() error {
	if strings.TrimSpace(d.Name) == "" {
		return fmt.Errorf("give the garden a name")
	}
	var site sun.Site
	var err error
	if site.Latitude, err = degreesTyped(d.Latitude, "latitude"); err != nil {
		return err
	}
	if site.Longitude, err = degreesTyped(d.Longitude, "longitude"); err != nil {
		return err
	}
	if site.Elevation, err = quantity.ParseLength(d.Elevation); err != nil {
		return fmt.Errorf("elevation: %w", err)
	}
	if err := site.Check(); err != nil {
		return err
	}
	if _, err := time.LoadLocation(d.Zone); err != nil || d.Zone == "" || d.Zone == "Local" {
		return fmt.Errorf("there is no time zone %q; write it as region/city, such as America/New_York", d.Zone)
	}
	return nil
}

func degreesTyped(typed, what string) (float64, error) {
	x, err := strconv.ParseFloat(strings.TrimSpace(typed), 64)
	if err != nil {
		return 0, fmt.Errorf("%s: %q is not a number of degrees; write it like 44.55, and -69.63 for west or south", what, typed)
	}
	return x, nil
}

// CheckClimate fails where the weather file, or one of the twelve lows and highs, can't be read, and says
// what is wrong.
func (d Draft) CheckClimate() error {
	if d.File != "" {
		records, err := exchange.ReadWeather(d.File, strings.NewReader(string(d.Content)))
		if err == nil {
			_, err = exchange.Station(records, d.Station)
		}
		return err
	}
	var n weather.Normals
	for _, half := range []struct {
		name  string
		typed []string
		into  *[12]quantity.Temperature
	}{{"lows", d.Lows, &n.Low}, {"highs", d.Highs, &n.High}} {
		if len(half.typed) != 12 {
			return fmt.Errorf("%s: give twelve values, January first; you gave %d", half.name, len(half.typed))
		}
		for m, text := range half.typed {
			t, err := quantity.ParseTemperature(text)
			if err != nil {
				return fmt.Errorf("%s, %s: %w", half.name, time.Month(m+1), err)
			}
			half.into[m] = t
		}
	}
	return n.Check()
}

// Begin writes the garden of the draft into an empty book, for the next season from today on. Its errors
// name the keys of a garden folder.
func (d Draft) Begin(b *stockbook.Book, today civil.Date) error {
	text, err := toml.Marshal(d.table(today))
	if err != nil {
		return err
	}
	folder := stockbook.MemoryFolder{stockbook.GardenFile: text, "stock.csv": []byte(stockbook.StockHeader)}
	if d.File != "" {
		folder[d.File] = d.Content
	}
	read, err := exchange.ReadGarden(folder, "the garden")
	if err != nil {
		return err
	}
	if _, err := garden.New(read, folder); err != nil {
		return err
	}
	return b.TakeFolder(folder, "the garden", today)
}

// table is garden.toml.
func (d Draft) table(today civil.Date) map[string]any {
	latitude, _ := strconv.ParseFloat(strings.TrimSpace(d.Latitude), 64) // checked
	longitude, _ := strconv.ParseFloat(strings.TrimSpace(d.Longitude), 64)
	garden := map[string]any{
		"name": d.Name, "latitude": latitude, "longitude": longitude, "elevation": d.Elevation,
		"time_zone": d.Zone, "units": d.Units, "currency": d.Currency, "weather": "made-up",
	}
	table := map[string]any{
		"garden": garden,
		"offset": map[string]any{"night": d.Night, "day": d.Day},
		"season": map[string]any{"plant_year": d.plantYear(today), "frost_risk": d.FrostRisk, "fits": "90%", "hours_per_week": d.Hours, "stems_sold": "0%"},
	}
	if d.File != "" {
		garden["weather"] = d.File
		if d.Station != "" {
			garden["station"] = d.Station
		}
	} else {
		table["normals"] = map[string]any{"low": d.Lows, "high": d.Highs}
	}
	if d.Electricity != "" {
		table["prices"] = map[string]any{"electricity": d.Electricity}
	}
	var places []any
	for _, p := range d.Places {
		body := map[string]any{"name": p.Name}
		for k, v := range p.Body {
			body[k] = v
		}
		places = append(places, body)
	}
	table["place"] = places
	return table
}

// plantYear is the year of the next planting out. In the north it is next year from August on; in the
// south it is this year.
func (d Draft) plantYear(today civil.Date) int {
	if strings.HasPrefix(strings.TrimSpace(d.Latitude), "-") || today.Month() < time.August {
		return today.Year()
	}
	return today.Year() + 1
}

// IsDescribed reports whether the book says where its garden lies.
func IsDescribed(s *stockbook.Book) (is bool) {
	s.Read(func(b *stock.Book) { is = len(b.Described("garden")) > 0 })
	return is
}
