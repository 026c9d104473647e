package exchange

import (
	"errors"
	"fmt"
	"io/fs"
	"path"

	"eyeup/weather"
)

// madeUpYears is the number of years of made-up weather. madeUpSeed is the random seed, so
// that the same garden always gets the same weather.
const (
	madeUpYears = 30
	madeUpSeed  = 1
)

// LoadWeather reads the garden's weather file, or makes weather up from its monthly normals.
// It returns the weather at the patch: the garden's offset is already added to nights and
// days. Record.MadeUp tells which it is.
func (g *Garden) LoadWeather(fsys fs.FS) (*weather.Record, error) {
	record, err := g.stationWeather(fsys)
	if err != nil {
		return nil, err
	}
	if g.Offset == (Offset{}) {
		return record, nil
	}
	return record.Shifted(g.Offset.Night, g.Offset.Day), nil
}

func (g *Garden) stationWeather(fsys fs.FS) (*weather.Record, error) {
	if g.Weather.IsMadeUp() {
		if g.Weather.Normals == nil {
			return nil, errors.New("the weather is to be made up, but there are no normals; give twelve monthly lows and highs")
		}
		return weather.MakeUp(*g.Weather.Normals, g.Site, madeUpYears, madeUpSeed), nil
	}
	name := path.Join(g.folder, g.Weather.File)
	f, err := fsys.Open(g.Weather.File)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, Fault{File: name, What: "there is no weather file with that name; put it into the garden folder, or name another"}
	}
	if err != nil {
		return nil, Fault{File: name, What: fmt.Sprintf("it can't be read (%v); check its permissions", err)}
	}
	defer func() { _ = f.Close() }()
	records, err := ReadWeather(name, f)
	if err != nil {
		return nil, err
	}
	record, err := Station(records, g.Weather.Station)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return record, nil
}
