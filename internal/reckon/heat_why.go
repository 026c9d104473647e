package reckon

import (
	"fmt"
	"math"
	"strings"

	"eyeup/civil"
	"eyeup/place"
	"eyeup/quantity"
)

// byHand is the heat from monthly means alone, in kWh: the loss times the degrees that the air outside is
// below the level. The air is taken to be normally distributed about each month's mean. It leaves out sun,
// floor and the heater's limit, so that a grower can check it on paper.
func (r *Heating) byHand(s place.Setting) float64 {
	var kWh float64
	for d := r.span.From; !d.After(r.span.To); {
		m := month(d, r.span)
		level, on := s.At(m.To)
		if on {
			mean, spread := r.outside(m)
			short := place.MeanShort(level, mean, spread)
			kWh += float64(r.loss().At(short)) * hoursOf(m) / 1000
		}
		d = m.To.AddDays(1)
	}
	return kWh
}

// outside returns the mean of the hours of a span over all years, and their spread.
func (r *Heating) outside(s civil.Span) (quantity.Temperature, quantity.Difference) {
	var n, sum, squares float64
	for _, h := range r.hours {
		from := 24 * int(s.From.Sub(h.Span.From))
		for _, t := range h.Air[from : from+24*int(s.Days())] {
			n, sum, squares = n+1, sum+t, squares+t*t
		}
	}
	mean := sum / n
	return quantity.Celsius(mean), quantity.Difference(math.Sqrt(max(squares/n-mean*mean, 0)))
}

// Figures returns the figures that the answer is computed from.
func (r *Heating) Figures() []FigureAnswer {
	all := []FigureAnswer{}
	if r.Covered == nil {
		return all
	}
	rows := place.FiguresOf("covers", r.Covered.Cover.Name)
	if h := r.Covered.Heater; h != nil {
		rows = append(rows, place.FiguresOf("fuels", h.Fuel)...)
	}
	rows = append(rows, place.Figures("leakage")...)
	for _, f := range append(rows, place.Figures("body")...) {
		all = append(all, FigureAnswer{f.Key, meaningIn(f.Key), f.Low, f.Value, f.High, f.Unit, f.Sure, f.Source})
	}
	return all
}

// meaningIn says in words what a figure of a covered place, its cover or its fuel is.
func meaningIn(key string) string {
	if said, known := placeMeanings[key]; known {
		return said
	}
	row, figure, _ := strings.Cut(key, ".")
	return map[string]string{
		"u":          "heat through " + row + " for each m² and kelvin",
		"light":      "share of the outside light that " + row + " leaves to the plants",
		"frost_lift": "the most that unheated " + row + " is promised on a frost night",
		"changes":    "changes of air in an hour, everything shut: " + strings.ReplaceAll(row, "-", " "),
		"heat":       "heat in " + row,
		"efficiency": "share of it that is useful, as is usual",
	}[figure]
}

// placeMeanings says in words what the figures of a covered place are.
var placeMeanings = map[string]string{
	"body.air":         "heat that warms the air, pots and benches, for each m² of floor",
	"body.floor":       "heat that warms the floor, for each m²",
	"body.coupling":    "between the air and the floor, for each m²",
	"body.edge":        "from the floor to the outside, for each metre round it",
	"body.deep":        "from the floor to the ground beneath, for each m²",
	"body.sensible":    "share of the sun that is felt as warmth",
	"body.to_air":      "share of that warmth which the air feels at once",
	"body.capture":     "share of the low sun on walls and roof that stays inside",
	"body.pot_hours":   "hours in which a pot goes 63 % of the way to the air",
	"body.pot_sun":     "by how much sun warms a pot above the air",
	"vent.most":        "changes of air in an hour with the vents fully open",
	"bench.per_kelvin": "heat of a warm bench for each kelvin it warms the roots",
	"screen.saves":     "share of the cover's loss that a drawn screen saves",
}

// AskedMeans explains the heat asked and the heat given.
const AskedMeans = "Asked is the heat that a heater without limit would give over the same hours. Given is the heat that this heater can give. Both are useful heat, not fuel. After a step up, the level rises 1 K (1.8 °F) an hour."

// The safety warnings for heaters that burn fuel and for electricity.
const (
	fuelCaution  = "A heater that burns anything makes carbon monoxide, which kills unnoticed, and ethylene, which spoils plants: vent its fumes outside, let fresh air in, hang up a carbon monoxide alarm, and have it fitted by licensed people under your local code."
	PowerCaution = "Electricity beside water: a ground-fault breaker, cable and sockets made for wet places, wiring by licensed people under your local code."
)

// notes returns the limits of the figures and the safety warnings.
func (r *Heating) notes(a *HeatAnswer) []string {
	notes := []string{}
	if a.Weather.MadeUp {
		notes = append(notes, "This weather is made up from monthly normals: no station measured it, and the coldest nights of real years may be colder.")
	}
	if a.HeldBack > 0 {
		lift := r.Covered.Cover.FrostLift
		notes = append(notes, fmt.Sprintf("Unheated, this cover is promised no more than %.1f K (%.1f °F) above the outside on a frost night, which is the most that was measured; that limit applied in %.0f hours a year.", float64(lift), lift.Fahrenheits(), a.HeldBack))
	}
	if r.Covered == nil {
		return append(notes, "The room is assumed to be as warm as garden.toml says. Its heat is its W/K times the degrees above the outside, without limit.")
	}
	notes = append(notes, "The spread is that of the record's years alone. Cover, leaks and floor add as much uncertainty again: about 20 % either way. Compare with a thermometer.")
	burns, plugged := false, r.Covered.WarmBench != nil || r.Covered.Lamps != nil
	if h := r.Covered.Heater; h != nil {
		fuel, known := place.FuelNamed(h.Fuel)
		burns = known && fuel.Burns()
		plugged = plugged || !burns
	}
	if burns {
		notes = append(notes, fuelCaution)
	}
	if plugged {
		notes = append(notes, PowerCaution)
	}
	return notes
}
