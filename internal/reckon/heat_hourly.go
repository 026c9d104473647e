package reckon

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/place"
	"eyeup/weather"
)

// hourlyHeading names the columns of HeatByHour. Hours are by the sun's clock.
var hourlyHeading = []string{"weather_of", "date", "hour", "outside_c", "sun_w_m2", "air_c", "root_c", "asked_w", "given_w"}

// HeatByHour writes every hour of the first level of a question, of every year, as CSV:
// temperatures are means of the hour, by the sun's clock.
func HeatByHour(g *garden.Garden, q HeatQuestion, w io.Writer) error {
	r, err := newHeating(g, q)
	if err != nil {
		return err
	}
	setting, err := r.setting(q.Levels[0], q.Steps)
	if err != nil {
		return err
	}
	out := csv.NewWriter(w)
	if err := out.Write(hourlyHeading); err != nil {
		return fmt.Errorf("the hours can't be written: %w", err)
	}
	for i, h := range r.hours {
		if err := r.writeHours(out, h, g.Members[i].Year, setting); err != nil {
			return fmt.Errorf("the hours can't be written: %w", err)
		}
	}
	out.Flush()
	if err := out.Error(); err != nil {
		return fmt.Errorf("the hours can't be written: %w", err)
	}
	return nil
}

// writeHours writes the hours of one year.
func (r *Heating) writeHours(out *csv.Writer, h *weather.Hours, year int, s place.Setting) error {
	asked, given, course := r.heatOfHours(h, s)
	from, to := course.Within(r.span)
	for i := 24 * from; i < 24*to; i++ {
		err := out.Write([]string{
			strconv.Itoa(year), h.Span.From.AddDays(civil.Days(i / 24)).String(), strconv.Itoa(i % 24),
			decimal(h.Air[i], 2), decimal(h.Sun[i], 1), decimal(course.Air[i], 2), decimal(course.Root[i], 2),
			decimal(asked[i], 0), decimal(given[i], 0),
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// heatOfHours returns the heat asked and given in every hour, in W, and the course.
func (r *Heating) heatOfHours(h *weather.Hours, s place.Setting) (asked, given []float64, c *place.Course) {
	asked, given = make([]float64, len(h.Air)), make([]float64, len(h.Air))
	if r.Covered != nil {
		c = r.Covered.Watch(h, r.garden.Site, s, func(hour place.Hour) {
			asked[hour.Index], given[hour.Index] = hour.Asked, hour.Given
		})
		return asked, given, c
	}
	c = r.place.Model.Run(h, r.garden.Site, s)
	for i, air := range c.Air {
		asked[i] = float64(r.loss()) * max(air-h.Air[i], 0)
		given[i] = asked[i]
	}
	return asked, given, c
}

func decimal(x float64, places int) string { return strconv.FormatFloat(x, 'f', places, 64) }
