package exchange

import (
	"errors"
	"fmt"
	"io/fs"
	"path"

	"eyeup/weather"
)

// madeUpYears is for how many years weather is made up, and madeUpSeed where its chance
// begins: the same weather for the same garden, always.
const (
	madeUpYears = 30
	madeUpSeed  = 1
)

// LoadWeather reads the weather file that the garden names, or makes weather up from its
// monthly normals, and returns it as it is at the patch: nights and days already shifted
// by the garden's offset. Record.MadeUp tells which it is.
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
		return nil, Fault{File: name, What: "there is no weather file of that name; put it into the garden folder, or name another"}
	}
	if err != nil {
		return nil, Fault{File: name, What: fmt.Sprintf("it can't be read (%v); look to its permissions", err)}
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
