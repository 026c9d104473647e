package reckon

import (
	"fmt"
	"math"
	"strings"

	"eyeup/civil"
	"eyeup/frost"
	"eyeup/internal/garden"
	"eyeup/internal/report"
	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/sun"
)

// FrostQuestion asks for the dates of the first and last freezes at a station.
type FrostQuestion struct {
	garden.WeatherFile
	From, To  int                  // first and last year to use; 0: as far as the record goes
	Threshold quantity.Temperature // a freeze is a low at or below it
	After     civil.MonthDay       // the odds of one more freeze later than this; none: not asked
}

// FrostAnswer holds the dates of the first and last freezes and their spread over the years.
type FrostAnswer struct {
	Station    garden.StationAnswer `json:"station"`
	Threshold  float64              `json:"threshold_c" jsonschema:"description=a freeze is a day whose low is at or below it"`
	Hemisphere string               `json:"hemisphere" jsonschema:"enum=north,enum=south"`
	Assumed    bool                 `json:"hemisphere_assumed,omitempty" jsonschema:"description=the file does not say where the station lies"`
	Years      int                  `json:"years" jsonschema:"description=years of which the record can tell the spring or the autumn or both"`
	FirstYear  int                  `json:"first_year"`
	LastYear   int                  `json:"last_year"`
	Spring     FreezeDates          `json:"spring" jsonschema:"description=last freeze before midsummer"`
	Autumn     FreezeDates          `json:"autumn" jsonschema:"description=first freeze after midsummer"`
	SeasonDays odds.Amount          `json:"season_days" jsonschema:"description=days between the last and the first freeze"`
	LongestRun odds.Amount          `json:"longest_run_days" jsonschema:"description=longest run of days without a freeze"`
	PlantOut   []PlantOut           `json:"plant_out" jsonschema:"description=for each risk the first day after which the odds of one more freeze are no greater"`
	After      *FreezeAfter         `json:"after,omitempty"`
	ByYear     []FreezeYear         `json:"by_year"`
	LeftOut    []LeftOutYear        `json:"left_out"`
	Note       string               `json:"note"`
}

// FreezeDates are the spread of a freeze over the years.
type FreezeDates struct {
	civil.WhenInYear
	Years  int                `json:"years" jsonschema:"description=years that the record can tell about; those without a freeze are among them"`
	Bounds frost.BoundsInYear `json:"bounds" jsonschema:"description=between which days the dates lie four times in five, since there are only so many years"`
	Reason string             `json:"reason,omitempty" jsonschema:"description=why there is no early, middle or late day"`
}

// PlantOut is the first day from which the risk of a later freeze is no greater than Risk.
type PlantOut struct {
	Risk   quantity.Share `json:"risk"`
	From   civil.MonthDay `json:"from"`
	Reason string         `json:"reason,omitempty" jsonschema:"description=why there is no day"`
}

// FreezeAfter counts the springs in which a freeze came after a day.
type FreezeAfter struct {
	Day civil.MonthDay `json:"day"`
	frost.Odds
}

// FreezeYear is one year's last and first freeze.
type FreezeYear struct {
	Year  int        `json:"year"`
	Last  civil.Date `json:"last" jsonschema:"description=null: none came, or the record cannot tell"`
	First civil.Date `json:"first" jsonschema:"description=null: none came, or the record cannot tell"`
}

// LeftOutYear is a year, or half of one, in which the record has too many gaps.
type LeftOutYear struct {
	Year int    `json:"year"`
	Why  string `json:"why"`
}

// risks are the risks for which the answer gives a day to plant out.
var risks = []quantity.Share{0.5, 0.3, 0.2, 0.1, 0.05}

const FrostNote = "A station is not your patch: low ground freezes later in spring, walls and water protect. " +
	"Leaves freeze on still, clear nights with the thermometer in its screen a little above the threshold. " +
	"Published normals come from records that were filled in and adjusted; a raw record differs from them by days."

// Frost answers a FrostQuestion. It refuses files that can't be read, and years that all have too many
// gaps.
func Frost(q FrostQuestion) (*FrostAnswer, error) {
	if q.From != 0 && q.To != 0 && q.From > q.To {
		return nil, fmt.Errorf("the years run backwards from %d to %d; swap --from and --to", q.From, q.To)
	}
	record, site, err := q.Open()
	if err != nil {
		return nil, err
	}
	a := &FrostAnswer{Station: garden.StationOf(record), Threshold: *report.Rounded(q.Threshold.Celsius(), 4), Hemisphere: "north", Note: FrostNote}
	if a.Assumed = math.IsNaN(site.Latitude); a.Assumed {
		site = sun.Site{Latitude: garden.UsualLatitude}
	}
	if site.IsSouthern() {
		a.Hemisphere = "south"
	}
	f := frost.Dates(record, site, q.Threshold, q.From, q.To)
	if err := a.Tell(f); err != nil {
		return nil, fmt.Errorf("%s: %w", q.Name, err)
	}
	if !q.After.IsZero() {
		a.After = &FreezeAfter{q.After, f.OddsAfter(q.After)}
	}
	return a, nil
}

// Tell fills in the answer from the freezes of each year. It fails if no year has a dated spring or autumn.
func (a *FrostAnswer) Tell(f frost.Freezes) error {
	a.ByYear, a.LeftOut = []FreezeYear{}, []LeftOutYear{}
	for _, y := range f.Years {
		if y.Why != "" {
			a.LeftOut = append(a.LeftOut, LeftOutYear{y.Year, y.Why})
		}
		if y.SpringValid || y.AutumnValid {
			a.ByYear = append(a.ByYear, FreezeYear{y.Year, y.Last, y.First})
		}
	}
	springs, autumns := f.Valid()
	if springs == 0 || autumns == 0 {
		return fmt.Errorf("the record has too many gaps to date the freezes of any year asked for (%s); give other years or another station", firstWhy(a.LeftOut))
	}
	a.Years = len(a.ByYear)
	a.FirstYear, a.LastYear = a.ByYear[0].Year, a.ByYear[a.Years-1].Year
	a.Spring = freezeDates(f.Spring(), f.SpringBounds(), springs, "spring")
	a.Autumn = freezeDates(f.Autumn(), f.AutumnBounds(), autumns, "autumn")
	a.SeasonDays, a.LongestRun = f.SeasonDays(), f.LongestRun()
	for _, risk := range risks {
		a.PlantOut = append(a.PlantOut, plantOut(f, risk, springs))
	}
	return nil
}

func firstWhy(left []LeftOutYear) string {
	if len(left) == 0 {
		return "it holds no whole year"
	}
	return fmt.Sprintf("%d: %s", left[0].Year, left[0].Why)
}

func freezeDates(w civil.WhenInYear, b frost.BoundsInYear, years int, half string) FreezeDates {
	d := FreezeDates{WhenInYear: w, Years: years, Bounds: b}
	var none []string
	for _, part := range []struct {
		day  civil.MonthDay
		name string
	}{{w.Early, "early"}, {w.Middle, "middle"}, {w.Late, "late"}} {
		if part.day.IsZero() {
			none = append(none, part.name)
		}
	}
	if len(none) > 0 {
		d.Reason = fmt.Sprintf("no %s day: in too many years no freeze comes in %s", strings.Join(none, " or "), half)
	}
	return d
}

func plantOut(f frost.Freezes, risk quantity.Share, springs int) PlantOut {
	day, ok := f.SafeFrom(risk)
	switch {
	case !ok:
		return PlantOut{Risk: risk, Reason: fmt.Sprintf("%d springs are too few to tell so small a risk", springs)}
	case day.IsZero():
		return PlantOut{Risk: risk, Reason: "more springs than that have no freeze at all"}
	}
	return PlantOut{Risk: risk, From: day}
}
