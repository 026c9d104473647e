package supply

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"eyeup/culture"
	"eyeup/odds"
)

// Units that package culture lacks.
const (
	Litre      culture.Unit = "L"
	Centimetre culture.Unit = "cm"
)

//go:embed data/figures.csv
var figuresCSV string

// figures are all figures of the package, by what they describe and their key.
var figures, figureOrder = readFigures(figuresCSV)

// unknown is a figure without a value.
var unknown = culture.Figure{Low: math.NaN(), Value: math.NaN(), High: math.NaN()}

// figure returns one figure; NaN, never 0, if it is not in the table.
func figure(of, key string) culture.Figure {
	if f, ok := figures[of+" "+key]; ok {
		return f
	}
	return unknown
}

func known(f culture.Figure) bool { return !math.IsNaN(f.Value) }

// exactly is a figure without a range.
func exactly(x float64) culture.Figure { return culture.Figure{Low: x, Value: x, High: x} }

// amounts converts the ranges of figures to distributions.
func amounts(figures ...culture.Figure) []odds.Amount {
	all := make([]odds.Amount, len(figures))
	for i, f := range figures {
		all[i] = odds.Amount{Low: f.Low, Middle: f.Value, High: f.High}
	}
	return all
}

// Figures returns every figure of the package, named by what it describes and its key.
func Figures() []culture.NamedFigure {
	all := make([]culture.NamedFigure, 0, len(figureOrder))
	for _, key := range figureOrder {
		all = append(all, named(key))
	}
	return all
}

// FiguresOf returns the figures that describe one of the names, such as "no1", or have that
// name, such as "clump displaces".
func FiguresOf(names ...string) []culture.NamedFigure {
	var all []culture.NamedFigure
	for _, key := range figureOrder {
		if of, _ := cut(key); slices.Contains(names, of) || slices.Contains(names, key) {
			all = append(all, named(key))
		}
	}
	return all
}

func named(key string) culture.NamedFigure {
	_, what := cut(key)
	return culture.NamedFigure{Key: key, Meaning: meanings[what], Figure: figures[key]}
}

// cut splits a figure's name into what it describes and its key, the last word.
func cut(name string) (of, key string) {
	i := strings.LastIndexByte(name, ' ')
	return name[:i], name[i+1:]
}

// meanings explains each key.
var meanings = map[string]string{
	"volume": "holds, to the brim", "top": "width inside at the rim", "bottom": "width inside at the foot",
	"height": "height inside", "gap": "left empty below the rim", "bench": "bench it takes, pot-tight",
	"settles": "more than the space filled, for settling", "displaces": "room that one takes in the mix",
	"swells": "volume loose, to volume as printed", "spare": "more than the count, for what fails",
	"rate": "feed in the mix", "nitrogen": "nitrogen in the water", "share": "of the mix's volume at a watering",
	"crate": "in a bulb crate", "packing": "packing for one", "weight": "weight of one, or of a litre",
	"tray": "to an open tray", "buried": "of it that lies in the mix",
	"keeps": "keeps under good storage", "standard": "least germination for sale",
	"germination": "germination when new", "temperature": "where a packet lies", "humidity": "of the air where it lies",
	"oil": "oil in the seed",
}

// readFigures reads a table of the program; an error in it is a programming error.
func readFigures(text string) (map[string]culture.Figure, []string) {
	all, order := map[string]culture.Figure{}, []string(nil)
	for _, row := range rows(text, "of,key,low,value,high,unit,sure,source") {
		f := culture.Figure{
			Low: number(row[2]), Value: number(row[3]), High: number(row[4]),
			Unit: culture.Unit(row[5]), Sure: culture.Sureness(row[6]), Source: row[7],
		}
		key := row[0] + " " + row[1]
		if _, twice := all[key]; twice || !(f.Low <= f.Value && f.Value <= f.High) || f.Unit == "" || f.Sure == "" || f.Source == "" {
			panic(fmt.Sprintf("supply: the figure %q appears twice, is out of order or lacks its unit, sureness or source", key))
		}
		all[key], order = f, append(order, key)
	}
	return all, order
}

// rows returns the rows of a table below its header, which must match.
func rows(text, header string) [][]string {
	all, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil || len(all) == 0 || strings.Join(all[0], ",") != header {
		panic(fmt.Sprintf("supply: the table with columns %s can't be read: %v", header, err))
	}
	return all[1:]
}

func number(s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic("supply: " + err.Error())
	}
	return v
}
