package sun_test

import (
	"math"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/quantity"
	"eyeup/sun"
)

// The values of this file are those of the tests of pvlib-python 6382338a, but where
// another source is named.

func TestHaurwitzTable(t *testing.T) {
	for elevation, want := range map[float64]float64{
		5: 48.6299, 10: 135.7417, 30: 487.8941, 50: 778.7667, 90: 1035.0920, 0: 0, -10: 0,
	} {
		near(t, "W/m²", float64(sun.Haurwitz(sun.Sky{Zenith: 90 - elevation})), want, 1e-3)
	}
}

func TestClearHourCase(t *testing.T) {
	level, beam, diffuse := sun.ClearHour(sun.Sky{Zenith: 10}, 1, 3, 0)
	near(t, "level, W/m²", float64(level), 1038.159, 1e-2)
	near(t, "beam, W/m²", float64(beam), 942.208, 1e-2)
	near(t, "diffuse, W/m²", float64(diffuse), 110.265, 1e-2)
	if level, beam, diffuse = sun.ClearHour(sun.Sky{Zenith: 95}, 1, 3, 0); level+beam+diffuse != 0 {
		t.Error("the sun shines below the horizon")
	}
}

// TestAirMass: by definition 1 overhead, and with a flat Earth 2 at 60 degrees.
func TestAirMass(t *testing.T) {
	near(t, "overhead", sun.AirMass(sun.Sky{Zenith: 0}), 1, 0.001)
	near(t, "at 60 degrees", sun.AirMass(sun.Sky{Zenith: 60}), 2, 0.01)
	if mass := sun.AirMass(sun.Sky{Zenith: 91}); !math.IsNaN(mass) {
		t.Errorf("below the horizon the sun shines through %g airs", mass)
	}
}

// TestSplitCases: the first case is listed for day 180, reckoned with a day angle of
// 2 pi 180/365, where Spencer's begins at nothing on 1 January and so has it on day 181.
func TestSplitCases(t *testing.T) {
	june, january := onDay(181), civil.MustOn(2019, 1, 1)
	s := sun.Sky{Zenith: 10}
	beam, diffuse := sun.Split(1000, s, june)
	near(t, "beam, W/m²", float64(beam), 842.358, 1e-2)
	near(t, "diffuse, W/m²", float64(diffuse), 170.439, 1e-2)
	near(t, "clearness", float64(sun.Clearness(1000, s, june)), 0.76892, 1e-5)

	s = sun.Sky{Zenith: 85}
	beam, diffuse = sun.Split(50, s, january)
	near(t, "low sun: beam, W/m²", float64(beam), 96.72, 0.1)
	near(t, "low sun: diffuse, W/m²", float64(diffuse), 41.57, 0.1)
	near(t, "low sun: clearness", float64(sun.Clearness(50, s, january)), 0.4057, 1e-4)
}

// TestErbsHourly compares with the tests of TrenchR ca58d440.
func TestErbsHourly(t *testing.T) {
	for clearness, want := range map[quantity.Share]float64{0.1: 0.991, 0.5: 0.65915, 0.85: 0.165} {
		near(t, "diffuse share", float64(sun.DiffuseShare(clearness)), want, 1e-5)
	}
}

// TestErbsDaily: all light is of the sky under thick cloud; the curve of winter days (sunset
// before an hour angle of 81.4 degrees) runs into 0.143 at a clearness of 0.715, that of
// other days ends at 0.190 where 0.175 begins, at 0.722: the published curve has that step.
func TestErbsDaily(t *testing.T) {
	for _, row := range []struct {
		day                        int
		clearness, want, tolerance float64
	}{
		{15, 0.0, 1, 1e-9}, {15, 0.714999, 0.143, 0.002}, {15, 0.716, 0.143, 1e-9},
		{172, 0.0, 1, 1e-9}, {172, 0.721999, 0.190, 0.002}, {172, 0.723, 0.175, 1e-9},
		// The curve itself at one half, reckoned by hand from the printed coefficients.
		{15, 0.5, 1 - .13635 + .612375 - 1.493925 + .58674375, 1e-9},
		{172, 0.5, 1 + .1416 - .638925 + .1056, 1e-9},
	} {
		level := quantity.Insolation(row.clearness) * sun.Extraterrestrial(45, onDay(row.day))
		got := sun.DiffuseShareOfDay(level, 45, onDay(row.day))
		near(t, onDay(row.day).String()+": diffuse share", float64(got), row.want, row.tolerance)
	}
	near(t, "polar night", float64(sun.DiffuseShareOfDay(0, 80, onDay(355))), 1, 0)
}

func TestTiltedPlane(t *testing.T) {
	roof := sun.Plane{Slope: 40, Facing: 180}
	near(t, "sky's light", 100*roof.SkyView(), 88.3022, 1e-4)
	near(t, "from the ground", 900*0.25*roof.GroundView(), 26.32, 0.01)
	// The parts together: the sun overhead at 900 W/m² level, none of it from the sky.
	overhead := sun.Sky{Zenith: 0}
	got := roof.On(overhead, 900, 0, 0.25)
	near(t, "beam and ground", float64(got), 900*0.7660444+26.32, 0.01)
}

// TestPlanesFaceTheSun: geometry that needs no source.
func TestPlanesFaceTheSun(t *testing.T) {
	low := sun.Sky{Zenith: 60, Azimuth: 120}
	near(t, "floor", sun.Plane{}.Incidence(low), low.Height(), 1e-12)
	near(t, "turned to the sun", sun.Plane{Slope: 60, Facing: 120}.Incidence(low), 1, 1e-12)
	near(t, "wall facing it", sun.Plane{Slope: 90, Facing: 120}.Incidence(low), 0.8660254, 1e-6)
	near(t, "wall behind", sun.Plane{Slope: 90, Facing: 300}.Incidence(low), 0, 0)
	near(t, "night", sun.Plane{Slope: 90, Facing: 120}.Incidence(sun.Sky{Zenith: 95, Azimuth: 120}), 0, 0)
}

// TestLight compares with the abstract of Faust & Logan 2018 (HortScience 53:1250), and
// with lamp arithmetic: µmol/m²/s x hours x 0.0036.
func TestLight(t *testing.T) {
	near(t, "a kilowatt-hour, mol", float64(sun.Light(3.6*quantity.MegajoulePerSquareMetre)), 7.265, 1e-12)
	near(t, "a megajoule, mol", float64(sun.Light(quantity.MegajoulePerSquareMetre)), 2.018, 1e-3)
	near(t, "22.3 MJ, mol", float64(sun.Light(22.3*quantity.MegajoulePerSquareMetre)), 45.0, 0.1)
	for _, lamp := range []struct {
		flux  quantity.PhotonFlux
		hours time.Duration
		want  float64
	}{{200, 16, 11.52}, {100, 14, 5.04}, {250, 18, 16.2}} {
		near(t, "lamps, mol", float64(lamp.flux.For(lamp.hours*time.Hour)), lamp.want, 1e-9)
	}
}
