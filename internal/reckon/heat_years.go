package reckon

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/report"
	"eyeup/odds"
	"eyeup/place"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/weather"
)

// Heating is a place with all that is needed to simulate it in each year of the record.
type Heating struct {
	garden  *garden.Garden
	place   *exchange.Place
	Covered *place.Covered // nil: a store or a room
	span    civil.Span
	price   season.Price // of a kilowatt-hour of useful heat
	why     string       // there is no price
	hours   []*weather.Hours
}

func newHeating(g *garden.Garden, q HeatQuestion) (*Heating, error) {
	p, covered, err := heatable(g, q.Place)
	if err != nil {
		return nil, err
	}
	if len(q.Levels) == 0 {
		return nil, fmt.Errorf("no level is given; add one, such as --level 50F, or --level off")
	}
	if len(q.Levels) > 1 && len(q.Steps) > 0 {
		return nil, fmt.Errorf("several levels and steps can't be compared at once; give one level with its steps")
	}
	r := &Heating{garden: g, place: p, Covered: covered}
	if r.span, err = daysOf(g.Span, q.From, q.To); err != nil {
		return nil, err
	}
	r.price, r.why = r.heatPrice()
	r.hours = g.Hours()
	return r, nil
}

// heatPrice returns what a kilowatt-hour of heat costs, or why that is not known.
func (r *Heating) heatPrice() (season.Price, string) {
	if r.Covered == nil {
		return season.Price{}, "what this room is heated with is not in the garden's folder"
	}
	if r.Covered.Heater == nil {
		return season.Price{}, "there is no heater here"
	}
	price := r.garden.UsefulHeat(*r.Covered.Heater)
	if !price.Known {
		return price, "[prices] in garden.toml has no price of " + r.Covered.Heater.Fuel
	}
	return price, ""
}

func (r *Heating) loss() quantity.Conductance {
	if r.Covered != nil {
		return r.Covered.Loss()
	}
	room, _ := r.place.Model.(place.Steady)
	return room.HeatPerKelvin
}

// alreadyOn is how many days before the first day computed the heat is switched on, so that the place has
// reached its level when that day begins.
const alreadyOn = 3

// setting returns a setting that is on through the days computed and alreadyOn days before.
func (r *Heating) setting(level *quantity.Temperature, steps []HeatStep) (place.Setting, error) {
	if level == nil && len(steps) == 0 {
		return place.Off(), nil
	}
	before := r.span.From.AddDays(-alreadyOn)
	if before.Before(r.garden.Span.From) {
		before = r.garden.Span.From
	}
	s := place.Setting{Steps: []place.Step{stepAt(before, level)}}
	for _, step := range steps {
		on := firstOn(step.On, r.span.From)
		if on.After(r.span.To) {
			return s, fmt.Errorf("the step on %v lies outside the days computed, %v to %v; choose a day within them", step.On, r.span.From, r.span.To)
		}
		s.Steps = append(s.Steps, stepAt(on, step.Level))
	}
	if r.span.To.Before(r.garden.Span.To) {
		s.Steps = append(s.Steps, stepAt(r.span.To.AddDays(1), nil))
	}
	if r.Covered != nil {
		return s, r.Covered.Accepts(s)
	}
	return s, s.Check()
}

func stepAt(d civil.Date, level *quantity.Temperature) place.Step {
	if level == nil {
		return place.Step{From: d, Off: true}
	}
	return place.Step{From: d, Level: *level}
}

// heatYears are the courses of a place, one for each year.
type heatYears []*place.Course

func (r *Heating) run(s place.Setting) heatYears {
	years := make(heatYears, len(r.hours))
	for i, h := range r.hours {
		years[i] = r.place.Model.Run(h, r.garden.Site, s)
	}
	return years
}

// over sums up one of the daily figures of every year over a span.
func (y heatYears) over(s civil.Span, daily func(*place.Course) []float64) odds.Amount {
	sums := make([]float64, len(y))
	for i, c := range y {
		sums[i] = c.Sum(daily(c), s)
	}
	return report.RoundedAmount(odds.AmountOf(sums), 1)
}

func asked(c *place.Course) []float64 { return c.AskedKWh }
func given(c *place.Course) []float64 { return c.GivenKWh }
func hot(c *place.Course) []float64   { return c.Hot }

// level sums up what a setting takes.
func (y heatYears) level(r *Heating, s place.Setting) HeatLevel {
	l := HeatLevel{
		Setting: r.settingText(s), Currency: r.garden.Currency, CostReason: r.why,
		Asked: y.over(r.span, asked), Given: y.over(r.span, given), Hot: y.over(r.span, hot),
		Short:     y.over(r.span, func(c *place.Course) []float64 { return c.HoursShort }),
		WarmBench: y.over(r.span, func(c *place.Course) []float64 { return c.WarmBenchKWh }),
		Lamps:     y.over(r.span, func(c *place.Course) []float64 { return c.LampKWh }),
	}
	l.Cost = r.costOf(l.Given)
	l.Fuel, l.FuelUnit = r.fuelOf(l.Given)
	worst := make([]float64, len(y))
	var held float64
	for i, c := range y {
		from, to := c.Within(r.span)
		worst[i] = slices.Max(c.WorstShort[from:to])
		held += c.Sum(c.HeldBack, r.span) / float64(len(y))
		coldest, _ := c.Coldest(r.span)
		if coldest.Celsius() < 0 {
			l.Freezing++
		}
		if coldest.Celsius() < 5 {
			l.BelowFive++
		}
	}
	l.Worst, l.HeldBack = report.RoundedAmount(odds.AmountOf(worst), 2), *report.Rounded(held, 1)
	return l
}

// settingText writes the part of a setting that lies within the days computed.
func (r *Heating) settingText(s place.Setting) string {
	within := place.Setting{}
	for _, step := range s.Steps {
		if !step.From.After(r.span.To) {
			within.Steps = append(within.Steps, step)
		}
	}
	if len(within.Steps) > 0 {
		within.Steps[0].From = civil.Date{}
	}
	return within.String()
}

// weeks sums up every week, by its Monday, with the days of it that are reckoned.
func (y heatYears) weeks(r *Heating) []HeatWeek {
	all := []HeatWeek{}
	for _, monday := range r.span.Mondays() {
		week := civil.Span{From: monday, To: monday.AddDays(6)}
		if week.From.Before(r.span.From) {
			week.From = r.span.From
		}
		if week.To.After(r.span.To) {
			week.To = r.span.To
		}
		w := HeatWeek{Week: monday, Asked: y.over(week, asked), Given: y.over(week, given)}
		w.Cost = r.costOf(w.Given)
		all = append(all, w)
	}
	return all
}

// mostNights is the most of the coldest nights in an answer.
const mostNights = 5

// nights returns the coldest hours of the years, one for each year, coldest first. A room has none, since
// its temperature does not depend on the weather.
func (y heatYears) nights(r *Heating) []HeatNight {
	all := []HeatNight{}
	if r.Covered == nil {
		return all
	}
	for i, c := range y {
		from, to := c.Within(r.span)
		at := 24 * from
		for j := 24 * from; j < 24*to; j++ {
			if c.Air[j] < c.Air[at] {
				at = j
			}
		}
		day := c.Span.From.AddDays(civil.Days(at / 24))
		all = append(all, HeatNight{r.inRecord(day, i), *report.Rounded(c.Air[at], 2), *report.Rounded(r.hours[i].Air[at], 2)})
	}
	slices.SortStableFunc(all, func(a, b HeatNight) int { return cmp.Compare(a.Inside, b.Inside) })
	return all[:min(len(all), mostNights)]
}

// holds returns the power of heaters that would hold 0 °C, 5 °C and the highest level of the setting.
func (r *Heating) holds(s place.Setting, level *quantity.Temperature) []HeaterHolds {
	all := []HeaterHolds{}
	if r.Covered == nil || level == nil {
		return all
	}
	highest := level.Celsius()
	for _, step := range s.Steps {
		if !step.Off {
			highest = max(highest, step.Level.Celsius())
		}
	}
	targets := []float64{0, 5, highest}
	slices.Sort(targets)
	for _, target := range slices.Compact(targets) {
		if target > highest {
			break
		}
		low := s.AtMost(quantity.Celsius(target))
		peaks := make([]float64, len(r.hours))
		for i, h := range r.hours {
			peaks[i] = float64(r.Covered.Peak(h, r.garden.Site, low, r.span))
		}
		all = append(all, HeaterHolds{target, math.Ceil(slices.Max(peaks)), math.Ceil(odds.AmountOf(peaks).High)})
	}
	return all
}

// hotUnopened returns how many hours would be hot if the vents were never opened; nil if there are no vents.
func (r *Heating) hotUnopened(s place.Setting) *odds.Amount {
	if r.Covered == nil || r.Covered.Vent == (place.Vent{}) {
		return nil
	}
	shut := *r.Covered
	shut.Vent = place.Vent{}
	years := make(heatYears, len(r.hours))
	for i, h := range r.hours {
		years[i] = shut.Run(h, r.garden.Site, s)
	}
	amount := years.over(r.span, hot)
	return &amount
}
