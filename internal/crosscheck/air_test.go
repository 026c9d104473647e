package crosscheck

import (
	"fmt"
	"math"
	"testing"

	"eyeup/air"
	"eyeup/quantity"
)

type airQuestion struct {
	Celsius  float64 `json:"celsius"`
	Humidity float64 `json:"humidity"`
	Pressure float64 `json:"pressure"`
}

type airAnswer struct {
	Saturation, Ratio, FrostPoint, WetBulb, Enthalpy, Volume, Density float64
}

// airs is a grid of temperatures, humidities and pressures from sea level to the mountains.
func airs() []airQuestion {
	var all []airQuestion
	for c := -29.5; c <= 50; c += 5.3 {
		for _, humidity := range []float64{0.05, 0.2, 0.4, 0.6, 0.8, 0.95, 1} {
			for _, pressure := range []float64{101325, 89875, 61640} {
				all = append(all, airQuestion{c, humidity, pressure})
			}
		}
	}
	return all
}

// TestMoistAirOverAGrid compares with psychrolib 1.1.1 of npm, which has Hyland & Wexler's
// coefficients too, so that what is straight from the handbook agrees to rounding. It finds
// the wet bulb to 0.001 K and rounds 1/0.621945 in a volume.
func TestMoistAirOverAGrid(t *testing.T) {
	const rounding = 1e-12
	question := airs()
	var theirs []airAnswer
	ask(t, "air.js", question, &theirs)

	var saturation, ratio, frostPoint, wetBulb, enthalpy, volume, density worst
	apart := func(got, want float64) float64 { return math.Abs(got-want) / want }
	for i, q := range question {
		where, want := fmt.Sprintf("%+v", q), theirs[i]
		at, total := quantity.Celsius(q.Celsius), quantity.Pressure(q.Pressure)
		full := air.OverSurface(at)
		vapour := quantity.Pressure(q.Humidity) * full
		w := air.HumidityRatio(vapour, total)
		saturation.show(apart(float64(full), want.Saturation), where)
		ratio.show(apart(w, want.Ratio), where)
		frostPoint.show(math.Abs(air.FrostPoint(vapour).Celsius()-want.FrostPoint), where)
		wetBulb.show(math.Abs(air.WetBulb(at, quantity.Share(q.Humidity), total).Celsius()-want.WetBulb), where)
		enthalpy.show(math.Abs(air.Enthalpy(at, w)-want.Enthalpy), where)
		volume.show(apart(air.Volume(at, w, total), want.Volume), where)
		density.show(apart(air.Density(at, w, total), want.Density), where)
	}
	saturation.hold(t, "saturation", rounding)
	ratio.hold(t, "humidity ratio", rounding)
	frostPoint.hold(t, "frost and dew point, K", 1e-6)
	wetBulb.hold(t, "wet bulb, K", 0.001)
	enthalpy.hold(t, "enthalpy, J/kg", 1e-6)
	volume.hold(t, "volume", 1e-6)
	density.hold(t, "density", 1e-6)
}
