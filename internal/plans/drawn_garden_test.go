package plans

import (
	"encoding/csv"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"eyeup/internal/demo"
)

// drawing draws the folder of a garden by chance, with no thought of whether it is a wise one.
type drawing struct {
	strings.Builder
	*rand.Rand
}

func (d *drawing) between(low, high float64) float64 { return low + (high-low)*d.Float64() }
func (d *drawing) odds(share float64) bool           { return d.Float64() < share }

func (d *drawing) one(of ...string) string { return of[d.IntN(len(of))] }

// drawnGarden is the folder of the garden of a number: its weather, places, stock and prices.
func drawnGarden(t *testing.T, number uint64) fstest.MapFS {
	d := &drawing{Rand: rand.New(rand.NewPCG(number, 7))}
	d.weather()
	d.prices()
	d.rooms()
	for house := range d.IntN(3) {
		d.house(house)
	}
	for frame := range d.IntN(3) {
		fmt.Fprintf(d, "[[place]]\nname = 'frame %d'\nsort = 'frame'\nbench = '%.1f m2'\n", frame, d.between(0.5, 8))
	}
	fmt.Fprintf(d, "[[place]]\nname = 'patch'\nsort = 'ground'\nbench = '%.0f m2'\nspacing = '%.0f cm'\n", d.between(20, 120), d.between(30, 60))
	return fstest.MapFS{"garden.toml": {Data: []byte(d.String())}, "stock.csv": {Data: d.stock(t)}}
}

// weather draws where the garden lies, in either hemisphere, and twelve lows and highs.
func (d *drawing) weather() {
	latitude, south := d.between(32, 56), d.odds(0.3)
	mean, swing, wide := d.between(4, 15), d.between(5, 14), d.between(3, 7)
	if south {
		latitude, swing = -latitude, -swing
	}
	var low, high []string
	for month := range 12 {
		winter := swing * math.Cos(2*math.Pi*(float64(month)-0.3)/12)
		low = append(low, fmt.Sprintf("'%.1f C'", mean-winter-wide))
		high = append(high, fmt.Sprintf("'%.1f C'", mean-winter+wide))
	}
	fmt.Fprintf(d, "[garden]\nname = 'Drawn'\nlatitude = %.2f\nlongitude = 10.0\nelevation = '100 m'\ntime_zone = 'UTC'\nunits = 'metric'\ncurrency = 'EUR'\nweather = 'made-up'\n", latitude)
	fmt.Fprintf(d, "[normals]\nlow = [%s]\nhigh = [%s]\n[offset]\nnight = '%.1f K'\nday = '0 K'\n", strings.Join(low, ","), strings.Join(high, ","), d.between(-2, 1))
	fmt.Fprintf(d, "[season]\nplant_year = 2027\nfrost_risk = '%d %%'\nfits = '%d %%'\nhours_per_week = '%d h'\nstems_sold = '%d %%'\n", 5+d.IntN(30), 70+d.IntN(30), 1+d.IntN(20), d.IntN(100))
}

// prices draws which prices are known.
func (d *drawing) prices() {
	d.WriteString("[prices]\n")
	for _, price := range []struct {
		share float64
		line  string
	}{
		{0.8, "electricity = '0.30 EUR/kWh'"}, {0.7, "mix = '0.25 EUR/l'\npot_no1 = '0.50 EUR'\npot_tray50 = '1.30 EUR'"},
		{0.6, "stem = '0.80 EUR'"}, {0.4, "hour = '15 EUR'"}, {0.4, "stretched_day = '0.02 EUR'"},
	} {
		if d.odds(price.share) {
			fmt.Fprintln(d, price.line)
		}
	}
}

// rooms draws a cellar and, often, a warm room, which may be lit or cost heat.
func (d *drawing) rooms() {
	fmt.Fprintf(d, "[[place]]\nname = 'cellar'\nsort = 'store'\ntemperature = '%.1f C'\nhumidity = '60 %%'\ncrates = 60\n", d.between(3, 11))
	if d.odds(0.2) {
		return
	}
	warmth := d.between(17, 24)
	if d.odds(0.5) {
		warmth = math.Round(warmth) // sums of round warmth end on the very day
	}
	fmt.Fprintf(d, "[[place]]\nname = 'warm room'\nsort = 'room'\ntemperature = '%.1f C'\nhumidity = '40 %%'\nshelf = '%.1f m2'\n", warmth, d.between(0.3, 6))
	if d.odds(0.5) {
		d.WriteString("lamps = {area = '1.5 m2', hours = '14 h', light = '160 umol/m2/s', power = '240 W'}\n")
	}
	if d.odds(0.4) {
		fmt.Fprintf(d, "heat = '%.0f W/K'\n", d.between(5, 60))
	}
}

// house draws a piece of glass.
func (d *drawing) house(number int) {
	fmt.Fprintf(d, "[[place]]\nname = 'glass %d'\nsort = 'glass'\nlength = '%.1f m'\nwidth = '3.5 m'\neaves = '1.8 m'\nridge = '2.6 m'\n", number, d.between(2, 10))
	fmt.Fprintf(d, "cover = '%s'\nair_changes = '1 /h'\nbench = '%.1f m2'\n", d.one("twin-wall", "single-glass", "single-film"), d.between(1, 12))
	if d.odds(0.8) {
		fmt.Fprintf(d, "heater = {efficiency = '100 %%', fuel = 'electricity', power = '%.1f kW'}\n", d.between(1, 9))
		fmt.Fprintf(d, "levels = [%s]\n", d.one("'off', '5 C', '10 C', '15 C'", "'off', '8 C'", "'off', '4 C', '7 C', '10 C', '13 C', '16 C', '18 C'"))
	}
	fmt.Fprintf(d, "vent = {by = '%s', opens = '24 C'}\n", d.one("thermostat", "hand"))
	if d.odds(0.5) {
		d.WriteString("warm_bench = {area = '1 m2', power = '200 W', root = '20 C'}\n")
	}
}

// stock draws some of the invented garden's lots, wanted in other numbers; there is always
// one.
func (d *drawing) stock(t *testing.T) []byte {
	f, err := demo.Garden().Open("stock.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	wanted := slices.Index(rows[0], "plant")
	kept, share := rows[:2], d.Float64()
	for _, row := range rows[2:] {
		if d.odds(share) {
			row[wanted] = strconv.Itoa(d.IntN(40))
			kept = append(kept, row)
		}
	}
	var b strings.Builder
	if err := csv.NewWriter(&b).WriteAll(kept); err != nil {
		t.Fatal(err)
	}
	return []byte(b.String())
}
