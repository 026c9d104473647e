package reckon

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/internal/exchange"
	"eyeup/internal/report"
	"eyeup/place/logger"
	"eyeup/quantity"
)

// LoggerAnswer is what a logger recorded in a cellar, a store or a room.
type LoggerAnswer struct {
	Name       string        `json:"name"`
	From       civil.Date    `json:"from"`
	To         civil.Date    `json:"to"`
	Readings   int           `json:"readings"`
	Missing    int           `json:"readings_missing" jsonschema_description:"lines without a temperature"`
	Hours      int           `json:"hours" jsonschema_description:"from the first day to the last"`
	Known      int           `json:"hours_known" jsonschema_description:"hours with a reading, or between two at most three hours apart"`
	LongestGap int           `json:"longest_gap_hours"`
	Coldest    float64       `json:"coldest_c"`
	Warmest    float64       `json:"warmest_c"`
	Stirs      civil.Date    `json:"stirs_from" jsonschema_description:"first day after the coldest on which the week past had a mean of 10 °C (50 °F) or more: dormant stock there grows"`
	Months     []LoggerMonth `json:"months"`
	Passed     []string      `json:"columns_passed_over"`
	Note       string        `json:"note"`
}

// LoggerMonth is one month of the record.
type LoggerMonth struct {
	Month    string   `json:"month" jsonschema_description:"year and month"`
	Days     float64  `json:"days_known"`
	Mean     float64  `json:"mean_c"`
	Low      float64  `json:"low_c" jsonschema_description:"of the hours"`
	High     float64  `json:"high_c"`
	Humidity *float64 `json:"humidity_percent" jsonschema:"oneof_type=number;null"`
}

const loggerNote = `Put the file beside garden.toml and write logged = "FILE" at its place. These hours are then used on the days they cover; other days use temperature = ….`

// stirs is the temperature in store, in °C, from which clumps begin to grow in spring.
var stirs = culture.Usual("store.stirs")

// ReadLogger sums up a logger's file. It refuses a file that can't be read.
func ReadLogger(name string, file io.Reader) (*LoggerAnswer, error) {
	record, err := exchange.ReadLog(name, file)
	if err != nil {
		return nil, err
	}
	s := record.Series
	days := len(s.Celsius) / 24
	a := &LoggerAnswer{
		Name: name, From: s.From, To: s.From.AddDays(civil.Days(days - 1)), Readings: record.Readings, Missing: record.Missing,
		Hours: len(s.Celsius), Coldest: math.Inf(1), Warmest: math.Inf(-1), Months: loggerMonths(record), Passed: append([]string{}, record.Passed...), Note: loggerNote,
	}
	for i, gap := 0, 0; i < len(s.Celsius); i++ {
		if t := s.Celsius[i]; t == t {
			a.Known++
			a.Coldest, a.Warmest, gap = min(a.Coldest, t), max(a.Warmest, t), 0
			continue
		}
		gap++
		a.LongestGap = max(a.LongestGap, gap)
	}
	a.Coldest, a.Warmest = *report.Rounded(a.Coldest, 2), *report.Rounded(a.Warmest, 2)
	if day, found := stirsFrom(s.Celsius); found {
		a.Stirs = s.From.AddDays(civil.Days(day))
	}
	return a, nil
}

// loggerMonths sums a record up by the months of the calendar.
func loggerMonths(record *logger.Record) []LoggerMonth {
	var all []LoggerMonth
	s := record.Series
	var warm, damp []float64
	close := func(date civil.Date) {
		if len(warm) == 0 {
			return
		}
		m := LoggerMonth{
			Month: fmt.Sprintf("%d-%02d", date.Year(), int(date.Month())), Days: *report.Rounded(float64(len(warm))/24, 1),
			Mean: *report.Rounded(mean(warm), 2), Low: *report.Rounded(slices.Min(warm), 2), High: *report.Rounded(slices.Max(warm), 2),
		}
		if len(damp) > 0 {
			m.Humidity = report.Rounded(100*mean(damp), 1)
		}
		all = append(all, m)
		warm, damp = warm[:0], damp[:0]
	}
	for day := range len(s.Celsius) / 24 {
		date := s.From.AddDays(civil.Days(day))
		if date.Day() == 1 {
			close(date.AddDays(-1))
		}
		warm, damp = known(warm, s.Celsius[24*day:24*day+24]), known(damp, s.Humidity[24*day:24*day+24])
	}
	close(s.From.AddDays(civil.Days(len(s.Celsius)/24 - 1)))
	return all
}

// known appends to all the numbers of more that are not NaN.
func known(all, more []float64) []float64 {
	for _, v := range more {
		if v == v {
			all = append(all, v)
		}
	}
	return all
}

func mean(all []float64) float64 {
	sum := 0.0
	for _, v := range all {
		sum += v
	}
	return sum / float64(len(all))
}

// stirsFrom returns the first day, after the coldest week, whose week past was warm enough
// for what rests to move.
func stirsFrom(celsius []float64) (day int, found bool) {
	var weeks []float64 // the mean of the week up to each day
	for d := 6; d < len(celsius)/24; d++ {
		weeks = append(weeks, mean(known(nil, celsius[24*(d-6):24*(d+1)])))
	}
	coldest := -1
	for i, w := range weeks {
		if w == w && (coldest < 0 || w < weeks[coldest]) {
			coldest = i
		}
	}
	if coldest < 0 || weeks[coldest] >= stirs {
		return 0, false
	}
	for i := coldest; i < len(weeks); i++ {
		if weeks[i] >= stirs {
			return i + 6, true
		}
	}
	return 0, false
}

// Print writes the answer for the grower.
func (a *LoggerAnswer) Print(w io.Writer, units quantity.System) {
	degrees := func(c float64) string { return units.FineTemperature(quantity.Celsius(c)) }
	fmt.Fprintf(w, "%s\n\n", a.Name)
	fmt.Fprintf(w, "  %s to %s, %d readings", a.From, a.To, a.Readings)
	if a.Missing > 0 {
		fmt.Fprintf(w, ", %d lines without a temperature", a.Missing)
	}
	fmt.Fprintf(w, "\n  %d of %d hours known (%.1f %%); longest gap %d hours\n", a.Known, a.Hours, 100*float64(a.Known)/float64(a.Hours), a.LongestGap)
	fmt.Fprintf(w, "  coldest %s, warmest %s\n\n", degrees(a.Coldest), degrees(a.Warmest))
	fmt.Fprintf(w, "  %-10s %6s %9s %9s %9s %9s\n", "month", "days", "mean", "coldest", "warmest", "humidity")
	for _, m := range a.Months {
		damp := "-"
		if m.Humidity != nil {
			damp = fmt.Sprintf("%.0f %%", *m.Humidity)
		}
		fmt.Fprintf(w, "  %-10s %6.4g %9s %9s %9s %9s\n", m.Month, m.Days, degrees(m.Mean), degrees(m.Low), degrees(m.High), damp)
	}
	if !a.Stirs.IsZero() {
		fmt.Fprintf(w, "\nFrom %s a week's mean was %s or more: dormant stock there grows.\n", a.Stirs.Short(), degrees(stirs))
	}
	if len(a.Passed) > 0 {
		fmt.Fprintf(w, "\nColumns ignored: %s.\n", strings.Join(a.Passed, ", "))
	}
	fmt.Fprintf(w, "\nPut the file beside garden.toml and write  logged = \"FILE\"  at its place. These\nhours are then used on the days they cover; other days use  temperature = … .\n")
}
