package reckon

import (
	"errors"
	"fmt"
	"io"
	"math"

	"eyeup/air"
	"eyeup/internal/report"
	"eyeup/quantity"
)

// AirQuestion asks for the properties of air at a temperature and a humidity. Give either the humidity or
// the reading of a ventilated wet-bulb thermometer; the other is unknown.
type AirQuestion struct {
	Temperature quantity.Temperature
	Humidity    quantity.Share       // NaN: computed from the wet bulb
	WetBulb     quantity.Temperature // unknown: the humidity is given
	Pressure    quantity.Pressure    // NaN: computed from the elevation
	Elevation   quantity.Length      // above the sea
}

// AirAnswer holds the properties of the air.
type AirAnswer struct {
	Temperature   float64  `json:"temperature_c"`
	Humidity      float64  `json:"relative_humidity_percent"`
	Pressure      float64  `json:"pressure_kpa"`
	Saturation    float64  `json:"saturation_kpa" jsonschema_description:"vapour pressure of air that can hold no more (FAO 56)"`
	Vapour        float64  `json:"vapour_kpa"`
	Deficit       float64  `json:"vpd_kpa" jsonschema_description:"how strongly the air dries what lies in it"`
	DewPoint      *float64 `json:"dew_point_c" jsonschema:"oneof_type=number;null" jsonschema_description:"null for air without any water"`
	FrostPoint    *float64 `json:"frost_point_c,omitempty" jsonschema_description:"where frost forms; given when the dew point lies below freezing"`
	WetBulb       float64  `json:"wet_bulb_c"`
	HumidityRatio float64  `json:"humidity_ratio" jsonschema_description:"kg of water to each kg of dry air"`
	Enthalpy      float64  `json:"enthalpy_kj_kg" jsonschema_description:"heat in it for each kg of dry air from 0 °C"`
	Density       float64  `json:"density_kg_m3"`
}

// Air answers an AirQuestion. It refuses impossible values: see air.Check.
func Air(q AirQuestion) (*AirAnswer, error) {
	pressure := q.Pressure
	if math.IsNaN(float64(pressure)) {
		pressure = air.PressureAt(q.Elevation)
		if !(pressure >= 0) {
			return nil, fmt.Errorf("an elevation of %.0f m lies outside -5000 to 11000 m; give that of the garden above the sea", float64(q.Elevation))
		}
	}
	humidity, err := q.humidity(pressure)
	if err != nil {
		return nil, err
	}
	if err := air.Check(q.Temperature, humidity, pressure); err != nil {
		return nil, err
	}
	return describe(q.Temperature, humidity, pressure)
}

// humidity returns the relative humidity, computed from the wet bulb if that was given.
func (q AirQuestion) humidity(pressure quantity.Pressure) (quantity.Share, error) {
	isGiven := !math.IsNaN(float64(q.Humidity))
	if isGiven == q.WetBulb.IsKnown() {
		return 0, errors.New("give the humidity with --rh 60 or a wet-bulb thermometer with --wet 19C, one of the two")
	}
	if isGiven {
		return q.Humidity, nil
	}
	if err := air.Check(q.Temperature, 0, pressure); err != nil {
		return 0, err
	}
	if q.WetBulb.Above(q.Temperature) {
		return 0, fmt.Errorf("a wet bulb of %g °C above the dry one of %g °C can't be; are the two swapped?", q.WetBulb.Celsius(), q.Temperature.Celsius())
	}
	vapour := air.VapourFromWetBulb(q.Temperature, q.WetBulb, pressure)
	if !(vapour >= 0) {
		return 0, fmt.Errorf("no air is so dry that %g °C comes with a wet bulb of %g °C; read the thermometers again", q.Temperature.Celsius(), q.WetBulb.Celsius())
	}
	return quantity.Share(vapour / air.Saturation(q.Temperature)), nil
}

// describe computes the answer from temperature, relative humidity and pressure.
func describe(t quantity.Temperature, humidity quantity.Share, pressure quantity.Pressure) (*AirAnswer, error) {
	vapour := air.Vapour(t, humidity)
	ratio := air.HumidityRatio(vapour, pressure)
	wet := air.WetBulbOfRatio(t, ratio, pressure)
	if math.IsNaN(ratio) || !wet.IsKnown() {
		return nil, fmt.Errorf("at %g °C and %.4g kPa water boils; give a lower temperature", t.Celsius(), pressure.Kilopascals())
	}
	a := &AirAnswer{
		Temperature:   t.Celsius(),
		Humidity:      *report.Rounded(humidity.Percent(), 2),
		Pressure:      *report.Rounded(pressure.Kilopascals(), 3),
		Saturation:    *report.Rounded(air.Saturation(t).Kilopascals(), 5),
		Vapour:        *report.Rounded(vapour.Kilopascals(), 5),
		Deficit:       *report.Rounded(air.Deficit(t, humidity).Kilopascals(), 5),
		WetBulb:       *report.Rounded(wet.Celsius(), 3),
		HumidityRatio: *report.Rounded(ratio, 7),
		Enthalpy:      *report.Rounded(air.Enthalpy(t, ratio)/1000, 3),
		Density:       *report.Rounded(air.Density(t, ratio, pressure), 5),
	}
	if dew := air.DewPoint(vapour); dew.IsKnown() {
		a.DewPoint = report.Rounded(dew.Celsius(), 3)
		if frost := air.FrostPoint(vapour); frost.IsKnown() && dew.Celsius() < 0 {
			a.FrostPoint = report.Rounded(frost.Celsius(), 3)
		}
	}
	return a, nil
}

// Print writes the answer for the grower.
func (a *AirAnswer) Print(w io.Writer, units quantity.System) {
	degrees := func(c float64) string { return units.FineTemperature(quantity.Celsius(c)) }
	fmt.Fprintf(w, "Air of %s and %.0f %% humidity, at %.1f kPa\n\n", degrees(a.Temperature), a.Humidity, a.Pressure)
	fmt.Fprintf(w, "  vapour pressure deficit  %.2f kPa (the air holds %.2f of %.2f kPa)\n", a.Deficit, a.Vapour, a.Saturation)
	switch {
	case a.DewPoint == nil:
		fmt.Fprintln(w, "  dew                      never: there is no water in it")
	case a.FrostPoint != nil:
		fmt.Fprintf(w, "  frost forms below        %s (dew point over water %s)\n", degrees(*a.FrostPoint), degrees(*a.DewPoint))
	default:
		fmt.Fprintf(w, "  dew forms below          %s\n", degrees(*a.DewPoint))
	}
	fmt.Fprintf(w, "  wet-bulb temperature     %s\n", degrees(a.WetBulb))
	fmt.Fprintf(w, "  water content            %.1f g to each kg of dry air\n", 1000*a.HumidityRatio)
	fmt.Fprintf(w, "  heat content             %.1f kJ to each kg of dry air\n", a.Enthalpy)
	fmt.Fprintf(w, "  density                  %.3f kg/m³\n", a.Density)
}
