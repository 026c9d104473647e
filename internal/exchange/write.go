package exchange

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strconv"

	"github.com/pelletier/go-toml/v2"

	"eyeup/place"
	"eyeup/quantity"
	"eyeup/stock"
)

// WriteGarden writes the garden as a folder that ReadGarden reads back the same: garden.toml
// and stock.csv. create opens each file by its name. The caller copies the weather file, if
// there is one.
func WriteGarden(g *Garden, create func(name string) (io.WriteCloser, error)) error {
	if g.Zone == nil {
		return errors.New("the garden has no time zone; set one before writing it")
	}
	text, err := toml.Marshal(g.written())
	if err != nil {
		return fmt.Errorf("%s: %w", gardenFile, err)
	}
	if err := writeFile(create, gardenFile, func(w io.Writer) error {
		_, err := w.Write(text)
		return err
	}); err != nil {
		return err
	}
	return writeFile(create, stockFile, func(w io.Writer) error { return writeStock(w, g.Stock) })
}

func writeFile(create func(string) (io.WriteCloser, error), name string, write func(io.Writer) error) error {
	f, err := create(name)
	if err != nil {
		return err
	}
	if err := write(f); err != nil {
		_ = f.Close()
		return fmt.Errorf("%s: %w", name, err)
	}
	return f.Close()
}

// writtenGarden is the content of garden.toml.
type writtenGarden struct {
	Garden  writtenSite                  `toml:"garden"`
	Normals *writtenNormals              `toml:"normals,omitempty"`
	Offset  writtenOffset                `toml:"offset"`
	Season  writtenSeason                `toml:"season"`
	Prices  map[string]string            `toml:"prices,omitempty"`
	Figures map[string]map[string]string `toml:"figures,omitempty"`
	Patch   *writtenPatch                `toml:"patch,omitempty"`
	Places  []writtenPlace               `toml:"place"`
}

type writtenSite struct {
	Name      string  `toml:"name"`
	Latitude  float64 `toml:"latitude"`
	Longitude float64 `toml:"longitude"`
	Elevation string  `toml:"elevation"`
	Zone      string  `toml:"time_zone"`
	Units     string  `toml:"units"`
	Currency  string  `toml:"currency"`
	Weather   string  `toml:"weather"`
	Station   string  `toml:"station,omitempty"`
	FromYear  int     `toml:"from_year,omitempty"`
	ToYear    int     `toml:"to_year,omitempty"`
}

type writtenNormals struct {
	Low  []string `toml:"low"`
	High []string `toml:"high"`
}

type writtenOffset struct {
	Night string `toml:"night"`
	Day   string `toml:"day"`
}

type writtenSeason struct {
	PlantYear    int    `toml:"plant_year"`
	FrostRisk    string `toml:"frost_risk"`
	Fits         string `toml:"fits"`
	HoursPerWeek string `toml:"hours_per_week"`
	StemsSold    string `toml:"stems_sold"`
}

func (g *Garden) written() writtenGarden {
	w := writtenGarden{
		Garden: writtenSite{
			g.Name, g.Site.Latitude, g.Site.Longitude, g.Site.Elevation.Written(), g.Zone.String(), g.System.String(), g.Currency,
			g.Weather.File, g.Weather.Station, g.Weather.FromYear, g.Weather.ToYear,
		},
		Offset: writtenOffset{g.Offset.Night.Written(), g.Offset.Day.Written()},
		Season: writtenSeason{
			g.Season.PlantYear, g.Season.FrostRisk.Written(), g.Season.Fits.Written(),
			quantity.WrittenDuration(g.Season.HoursPerWeek), g.Season.StemsSold.Written(),
		},
		Prices: g.writtenPrices(), Patch: g.Patch.written(),
	}
	if g.Weather.IsMadeUp() {
		w.Garden.Weather = madeUpWeather
	}
	if n := g.Weather.Normals; n != nil {
		w.Normals = &writtenNormals{writtenMonths(n.Low, quantity.Temperature.Written), writtenMonths(n.High, quantity.Temperature.Written)}
	}
	for kind, figures := range g.Figures {
		if w.Figures == nil {
			w.Figures = map[string]map[string]string{}
		}
		w.Figures[kind] = map[string]string{}
		for _, f := range figures {
			w.Figures[kind][f.Key] = f.Text
		}
	}
	for _, p := range g.Places {
		w.Places = append(w.Places, p.written())
	}
	return w
}

func writtenMonths[T any](months [12]T, written func(T) string) []string {
	texts := make([]string, len(months))
	for m, one := range months {
		texts[m] = written(one)
	}
	return texts
}

func (g *Garden) writtenPrices() map[string]string {
	prices := map[string]string{}
	if !g.Prices.Electricity.IsZero() {
		prices["electricity"] = g.Prices.Electricity.Written()
	}
	if !g.Prices.Mix.IsZero() {
		prices["mix"] = g.Prices.Mix.Written()
	}
	for key, money := range map[string]quantity.Money{"stem": g.Prices.Stem, "hour": g.Prices.Hour, "stretched_day": g.Prices.Stretched} {
		if money.Currency != "" {
			prices[key] = money.String()
		}
	}
	for id, money := range g.Prices.Pots {
		prices["pot_"+id] = money.String()
	}
	for name, price := range g.Prices.Fuels {
		if fuel, known := place.FuelNamed(name); known {
			prices[name] = writtenFuelPrice(fuel, price)
		}
	}
	return prices
}

func writeStock(w io.Writer, holdings []stock.Holding) error {
	rows := csv.NewWriter(w)
	if err := rows.Write(stockColumns); err != nil {
		return err
	}
	for _, h := range holdings {
		height := ""
		if h.Variety.Height != 0 {
			height = h.Variety.Height.Written()
		}
		if err := rows.Write([]string{
			h.Code, Defused(h.Variety.Name), Defused(h.Variety.Kind), string(h.Form), strconv.Itoa(h.Count), Defused(h.Place), Defused(h.Crate), Defused(h.Bed), Defused(h.Row), Defused(h.Pack),
			string(h.Variety.Timing), h.Variety.Colour, height, strconv.Itoa(h.Plant), strconv.Itoa(h.Reserve), Defused(h.Note),
		}); err != nil {
			return err
		}
	}
	rows.Flush()
	return rows.Error()
}
