package reckon

import (
	"fmt"
	"math"
	"strings"
	"time"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/report"
	"eyeup/odds"
	"eyeup/place"
	"eyeup/quantity"
)

// HeatQuestion asks how much heat it takes to hold a place at a temperature, its level.
type HeatQuestion struct {
	Place  string
	Levels []*quantity.Temperature // one, or several to compare; nil is off
	Steps  []HeatStep              // changes of the one level, in order
	From   civil.MonthDay          // from when heat is on; none: from the season's first day
	To     civil.MonthDay          // the last day of it; none: for a year
	Why    bool
}

// HeatStep is a change of level on a day of the year.
type HeatStep struct {
	On    civil.MonthDay
	Level *quantity.Temperature // nil is off
}

// HeatAnswer is the heat, fuel and cost of holding a place at a level, with the spread over the years.
type HeatAnswer struct {
	Garden  string               `json:"garden"`
	Place   string               `json:"place"`
	Weather garden.WeatherSource `json:"weather"`
	Span    civil.Span           `json:"span" jsonschema:"description=the days that are computed"`
	Years   int                  `json:"years"`
	Loss    float64              `json:"loss_w_per_k" jsonschema:"description=heat lost for each kelvin warmer than outside, vents shut and screen open"`
	Heater  *HeaterAnswer        `json:"heater,omitempty"`
	HeatLevel
	Weeks   []HeatWeek     `json:"weeks"`
	Nights  []HeatNight    `json:"coldest_nights" jsonschema:"description=the coldest of each year, the coldest first, five at most"`
	Holds   []HeaterHolds  `json:"heaters_that_hold"`
	HotShut *odds.Amount   `json:"hot_hours_unopened,omitempty" jsonschema:"description=hours above 30 °C if the vents were never opened"`
	Levels  []HeatLevel    `json:"levels,omitempty" jsonschema:"description=every level that was asked for, the first among them"`
	ByHand  float64        `json:"by_hand_kwh" jsonschema:"description=loss times degree hours by monthly mean and spread: no sun, no floor, no limit"`
	Figures []FigureAnswer `json:"figures"`
	Notes   []string       `json:"notes"`

	why bool
}

// HeaterAnswer describes the place's heater.
type HeaterAnswer struct {
	Power      float64 `json:"power_w"`
	Fuel       string  `json:"fuel"`
	Efficiency float64 `json:"efficiency"`
}

// HeatLevel is the heat, fuel and cost of one level.
type HeatLevel struct {
	Setting    string      `json:"setting"`
	Asked      odds.Amount `json:"asked_kwh" jsonschema:"description=heat that a heater without limit would give"`
	Given      odds.Amount `json:"given_kwh" jsonschema:"description=heat that the heater there is can give"`
	Cost       odds.Amount `json:"cost" jsonschema:"description=of the heat given; null where its price is not known"`
	Currency   string      `json:"currency"`
	Fuel       odds.Amount `json:"fuel_bought" jsonschema:"description=for the heat given, in the fuel's unit; null where there is no heater"`
	FuelUnit   string      `json:"fuel_unit,omitempty"`
	CostReason string      `json:"cost_reason,omitempty" jsonschema:"description=why there is no cost"`
	Short      odds.Amount `json:"hours_short" jsonschema:"description=hours more than 0.5 K below the level"`
	Worst      odds.Amount `json:"worst_short_k"`
	Freezing   int         `json:"years_below_freezing" jsonschema:"description=years in which an hour inside falls below 0 °C"`
	BelowFive  int         `json:"years_below_5c"`
	Hot        odds.Amount `json:"hot_hours" jsonschema:"description=hours above 30 °C"`
	WarmBench  odds.Amount `json:"warm_bench_kwh" jsonschema:"description=electricity of the warm bench"`
	Lamps      odds.Amount `json:"lamp_kwh" jsonschema:"description=electricity of the lamps"`
	HeldBack   float64     `json:"hours_held_back" jsonschema:"description=mean hours in which the model made an unheated cover warmer on a frost night than measured covers are; the measured limit is used"`
}

// HeatWeek is the heat and cost of one week.
type HeatWeek struct {
	Week  civil.Date  `json:"week" jsonschema:"description=its Monday"`
	Asked odds.Amount `json:"asked_kwh"`
	Given odds.Amount `json:"given_kwh"`
	Cost  odds.Amount `json:"cost"`
}

// HeatNight is the coldest hour inside of one year.
type HeatNight struct {
	Date    civil.Date `json:"date" jsonschema:"description=in the record"`
	Inside  float64    `json:"inside_c"`
	Outside float64    `json:"outside_c"`
}

// HeaterHolds is a heater that holds a temperature through the days of heat.
type HeaterHolds struct {
	Holds     float64 `json:"holds_c"`
	EveryYear float64 `json:"every_year_w"`
	NineInTen float64 `json:"nine_years_in_ten_w"`
}

// Heat answers a HeatQuestion. It refuses an unknown or unheated place, impossible levels, and days that
// are out of order.
func Heat(g *garden.Garden, q HeatQuestion) (*HeatAnswer, error) {
	r, err := newHeating(g, q)
	if err != nil {
		return nil, err
	}
	a := &HeatAnswer{
		Garden: g.Name, Place: q.Place, Weather: g.Source(), Span: r.span, Years: len(r.hours),
		Loss: *report.Rounded(float64(r.loss()), 2), Figures: r.Figures(), why: q.Why,
	}
	for i, level := range q.Levels {
		setting, err := r.setting(level, q.Steps)
		if err != nil {
			return nil, err
		}
		years := r.run(setting)
		one := years.level(r, setting)
		if i == 0 {
			a.HeatLevel, a.Weeks, a.Nights = one, years.weeks(r), years.nights(r)
			a.Holds, a.HotShut = r.holds(setting, level), r.hotUnopened(setting)
			a.ByHand = *report.Rounded(r.byHand(setting), 0)
		}
		if len(q.Levels) > 1 {
			a.Levels = append(a.Levels, one)
		}
	}
	if r.Covered != nil && r.Covered.Heater != nil {
		a.Heater = heaterAnswer(*r.Covered.Heater)
	}
	a.Notes = r.notes(a)
	return a, nil
}

func heaterAnswer(h place.Heater) *HeaterAnswer {
	efficiency := h.Efficiency
	if fuel, known := place.FuelNamed(h.Fuel); known && efficiency == 0 {
		efficiency = fuel.Efficiency
	}
	return &HeaterAnswer{float64(h.Power), h.Fuel, float64(efficiency)}
}

// heatable returns a place and, if it is covered, its model. It refuses open ground.
func heatable(g *garden.Garden, name string) (*exchange.Place, *place.Covered, error) {
	p, known := g.Place(name)
	if !known {
		return nil, nil, fmt.Errorf("the garden has no place named %q; it has: %s", name, strings.Join(placeNames(g), ", "))
	}
	switch model := p.Model.(type) {
	case place.Covered:
		return p, &model, model.Check()
	case place.Ground:
		return nil, nil, fmt.Errorf("%q is open ground, which nobody heats; ask for one of the other places", name)
	}
	return p, nil, nil
}

// daysOf returns the days to compute: from the first to the last day named, as they first come in the
// season.
func daysOf(season civil.Span, from, to civil.MonthDay) (civil.Span, error) {
	span := civil.Span{From: season.From, To: season.To}
	if !from.IsZero() {
		span.From = firstOn(from, season.From)
	}
	if !to.IsZero() {
		span.To = firstOn(to, span.From)
	} else if year := span.From.AddDays(364); year.Before(span.To) {
		span.To = year
	}
	if span.To.After(season.To) || span.From.After(span.To) {
		return span, fmt.Errorf("%v to %v is not within the season, %v to %v; choose --from and --to in it", span.From, span.To, season.From, season.To)
	}
	return span, nil
}

// firstOn returns the first day on or after a date that falls on m.
func firstOn(m civil.MonthDay, after civil.Date) civil.Date {
	if d := m.In(after.Year()); !d.Before(after) {
		return d
	}
	return m.In(after.Year() + 1)
}

// costOf returns the cost of amounts of heat, or NaN if the price is not known.
func (r *Heating) costOf(kWh odds.Amount) odds.Amount {
	if !r.price.Known {
		return odds.Exactly(math.NaN())
	}
	return report.RoundedAmount(kWh.Times(r.price.Amount), 2)
}

// fuelOf returns the fuel to buy for amounts of heat, and its unit.
func (r *Heating) fuelOf(kWh odds.Amount) (odds.Amount, string) {
	if r.Covered == nil || r.Covered.Heater == nil {
		return odds.Exactly(math.NaN()), ""
	}
	fuel, known := place.FuelNamed(r.Covered.Heater.Fuel)
	if !known {
		return odds.Exactly(math.NaN()), ""
	}
	each := fuel.Needs(quantity.KilowattHour, quantity.Share(heaterAnswer(*r.Covered.Heater).Efficiency))
	return report.RoundedAmount(kWh.Times(each), 2), fuel.Unit
}

// inRecord returns the day of the record that supplies day d of the season in a member.
func (r *Heating) inRecord(d civil.Date, member int) civil.Date {
	m := r.garden.Members[member]
	return d.MonthDay().In(d.Year() + m.Year - r.garden.Season.PlantYear)
}

// month returns the days of the span that lie in the month of d.
func month(d civil.Date, span civil.Span) civil.Span {
	first := civil.MustOn(d.Year(), d.Month(), 1)
	next := firstOn(civil.MonthDay{Month: d.Month()%12 + 1, Day: 1}, first.AddDays(1))
	m := civil.Span{From: first, To: next.AddDays(-1)}
	if m.From.Before(span.From) {
		m.From = span.From
	}
	if m.To.After(span.To) {
		m.To = span.To
	}
	return m
}

// hoursOf is how many hours a span has.
func hoursOf(s civil.Span) float64 { return float64(s.Days()) * (24 * time.Hour).Hours() }
