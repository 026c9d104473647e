package weather

import (
	"math"

	"eyeup/civil"
	"eyeup/quantity"
)

// Station is where a record was made.
type Station struct {
	ID        string
	Name      string
	Latitude  float64         // degrees north; NaN where the file does not say
	Longitude float64         // degrees east; NaN where the file does not say
	Elevation quantity.Length // NaN where the file does not say
}

// Day is the weather of one day. What was not measured is NaN; it is never filled.
type Day struct {
	Low      quantity.Temperature // lowest air temperature
	High     quantity.Temperature // highest air temperature
	Sun      quantity.Insolation  // on level ground over the day; NaN: unknown
	DewPoint quantity.Temperature // mean dew point
	Soil     quantity.Temperature // measured at 10 cm, if the file has it
}

// Unmeasured is a day of which nothing is known.
func Unmeasured() Day {
	u := quantity.Unknown()
	return Day{Low: u, High: u, Sun: quantity.Insolation(math.NaN()), DewPoint: u, Soil: u}
}

// HasExtremes reports whether both the low and the high are known and in order.
func (d Day) HasExtremes() bool {
	return d.Low.IsKnown() && d.High.IsKnown() && !d.High.Below(d.Low)
}

// Record is what one station measured, with one Day for every calendar day.
type Record struct {
	Station  Station
	From     civil.Date
	Days     []Day     // Days[i] is the day From + i
	Findings []Finding // problems found while reading, in the order of the file
	MadeUp   bool      // true when no station measured it: see MakeUp
}

// Finding is something in a file that the reader did not accept as it is: a flagged value,
// reversed extremes, radiation that means missing. Equal findings are counted together under
// the first line with one.
type Finding struct {
	Line  int    // line of the file, from 1
	What  string // what was found and what was done, in words
	Count int    // how often
}

// Span returns the days of the record, first to last.
func (r *Record) Span() civil.Span {
	return civil.Span{From: r.From, To: r.From.AddDays(civil.Days(len(r.Days) - 1))}
}

// On returns the weather of date d; a day outside the record is Unmeasured.
func (r *Record) On(d civil.Date) Day {
	i := int(d.Sub(r.From))
	if d.IsZero() || i < 0 || i >= len(r.Days) {
		return Unmeasured()
	}
	return r.Days[i]
}

// Put sets the weather of date d; it extends the record with unmeasured days as needed.
func (r *Record) Put(d civil.Date, day Day) {
	if len(r.Days) == 0 {
		r.From = d
	}
	for d.Before(r.From) {
		missing := make([]Day, r.From.Sub(d))
		for i := range missing {
			missing[i] = Unmeasured()
		}
		r.Days, r.From = append(missing, r.Days...), d
	}
	for int(d.Sub(r.From)) >= len(r.Days) {
		r.Days = append(r.Days, Unmeasured())
	}
	r.Days[d.Sub(r.From)] = day
}

// Shifted returns the record for a patch whose nights and days differ from the station's by
// the given amounts.
func (r *Record) Shifted(night, day quantity.Difference) *Record {
	s := *r
	s.Days = make([]Day, len(r.Days))
	for i, d := range r.Days {
		d.Low, d.High = d.Low.Add(night), d.High.Add(day)
		s.Days[i] = d
	}
	return &s
}
