package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"strconv"
	"strings"

	"eyeup/internal/reckon"
	"eyeup/quantity"
)

// readCommand holds the commands that read data.
type readCommand struct {
	Logger  readLoggerCommand  `cmd:"" help:"Check the file of a temperature logger from a cellar, store or room."`
	Stock   readStockCommand   `cmd:"" help:"Check a stock list, or write it into a book."`
	Weather readWeatherCommand `cmd:"" help:"Check weather files, or download the nearest long record."`
}

// readWeatherCommand checks weather files, or downloads one.
type readWeatherCommand struct {
	Files   []string `arg:"" optional:"" name:"file" help:"Weather files: GHCN-Daily, Met Éireann, EPW, TMY3 or a plain table."`
	Nearest string   `placeholder:"LAT,LON" help:"List the nearest long records in the public archive and download one. Latitude and longitude in degrees; south and west are negative."`
	Fetch   string   `placeholder:"ID" help:"Download this station of the list, not the nearest."`
	List    bool     `help:"Only list the stations; download no record."`
	Years   int      `help:"How many years the record must span. If not given, 30."`
	Out     string   `placeholder:"FILE" help:"The file to write the record to. If not given, ID.dly."`
	Base    string   `placeholder:"URL" help:"Address of the archive. If not given, that of the US National Centers for Environmental Information."`
	Lists   string   `placeholder:"FOLDER" help:"The folder for the archive's lists of stations. If not given, your cache folder."`
}

// Run checks the files, or asks the archive.
func (c readWeatherCommand) Run(d *door) error {
	switch {
	case c.Nearest != "" && len(c.Files) > 0:
		return fmt.Errorf("--nearest downloads a record, and a file name checks one; give one of the two")
	case c.Nearest != "":
		return c.fetch(d)
	case len(c.Files) == 0:
		return fmt.Errorf("name a weather file to check, or download a record with --nearest LAT,LON")
	}
	var all []reckon.WeatherFileAnswer
	for _, name := range c.Files {
		a, err := readWeatherFile(name)
		if err != nil {
			return err
		}
		all = append(all, *a)
	}
	return d.answer(reckon.Weather(all), quantity.Metric)
}

func readWeatherFile(name string) (*reckon.WeatherFileAnswer, error) {
	file, err := os.Open(name)
	if err != nil {
		return nil, fmt.Errorf("%w; name a weather file that exists", err)
	}
	defer file.Close()
	return reckon.ReadWeather(name, file)
}

// fetch lists the nearest stations and downloads a record.
func (c readWeatherCommand) fetch(d *door) error {
	q := reckon.NearestQuestion{
		Years: c.Years, Most: 10, Station: c.Fetch, ListOnly: c.List,
		Base: c.Base, Folder: c.Lists, Out: c.Out, Progress: progress(d),
	}
	if c.Years < 0 {
		return fmt.Errorf("--years: %d is not a number of years; give 1 or more", c.Years)
	}
	var err error
	if q.Latitude, q.Longitude, err = parsePlace(c.Nearest); err != nil {
		return fmt.Errorf("--nearest: %w", err)
	}
	if q.Base == "" {
		q.Base = reckon.ArchiveBase
	}
	if q.Folder == "" {
		cache, err := os.UserCacheDir()
		if err != nil {
			return fmt.Errorf("the archive's lists have no folder (%w); name one with --lists", err)
		}
		q.Folder = filepath.Join(cache, "eyeup", "archive")
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	fmt.Fprintf(d.errs, "asking %s for the lists of stations (the first time about 45 MB)\n", q.Base)
	a, err := reckon.NearestWeather(ctx, q)
	if err != nil {
		return err
	}
	return d.answer(a, quantity.Metric)
}

// parsePlace reads latitude and longitude, with a comma between.
func parsePlace(text string) (latitude, longitude float64, err error) {
	first, second, found := strings.Cut(text, ",")
	latitude, err1 := strconv.ParseFloat(strings.TrimSpace(first), 64)
	longitude, err2 := strconv.ParseFloat(strings.TrimSpace(second), 64)
	if !found || err1 != nil || err2 != nil {
		return 0, 0, fmt.Errorf("%q is not a place; write latitude and longitude in degrees, as in 44.55,-69.63", text)
	}
	return latitude, longitude, nil
}

// progress prints on standard error how far a download has come, in tenths of each file.
func progress(d *door) func(name string, done, total int64) {
	const unsized = 4 << 20 // the step where the length is not known
	last, next := "", int64(0)
	return func(name string, done, total int64) {
		if name != last {
			last, next = name, 0
		}
		if done < next && done != total {
			return
		}
		next = done + unsized
		of := ""
		if total > 0 {
			next = done + max(total/10, 1<<16)
			of = fmt.Sprintf(" of %.1f", float64(total)/1e6)
		}
		fmt.Fprintf(d.errs, "  %s: %.1f%s MB\n", name, float64(done)/1e6, of)
	}
}
