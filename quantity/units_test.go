package quantity

import (
	"math"
	"testing"
	"time"
)

// near fails the test when got differs from want by more than share of it.
func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if math.Abs(got-want) > share*math.Abs(want) {
		t.Errorf("%s: got %.9g, want %.9g", what, got, want)
	}
}

// The factors are those of NIST Special Publication 811 (2008), Appendix B.8, to its seven
// digits; "exact" are the definitions given there in bold: the foot, the pound, the gallon
// of 231 cubic inches, the bushel of 64 dry pints.
func TestSizesOfUnits(t *testing.T) {
	for _, u := range []struct {
		name      string
		got, want float64
	}{
		{"foot (exact)", float64(Foot), 0.3048},
		{"inch (exact)", float64(Inch), 0.0254},
		{"square foot (exact)", float64(SquareFoot), 0.3048 * 0.3048},
		{"cubic foot (exact)", float64(CubicFoot), 0.3048 * 0.3048 * 0.3048},
		{"cubic inch (exact)", float64(CubicInch), 0.0254 * 0.0254 * 0.0254},
		{"cubic yard (exact)", float64(CubicYard), 0.9144 * 0.9144 * 0.9144},
		{"gallon (exact)", float64(USGallon), 231 * 0.0254 * 0.0254 * 0.0254},
		{"liquid quart (exact)", float64(USLiquidQuart), 57.75 * 0.0254 * 0.0254 * 0.0254},
		{"bushel of 64 dry pints", 64 * float64(USDryPint), 0.03523907},
		{"cord of 128 cubic feet (exact)", float64(Cord), 128 * 0.3048 * 0.3048 * 0.3048},
		{"pound (exact)", float64(Pound), 0.45359237},
		{"short ton of 2000 pounds (exact)", float64(ShortTon), 2000 * 0.45359237},
		{"Btu (IT)", float64(Btu), 1055.056},
		{"Btu (IT) per hour", float64(BtuPerHour), 0.2930711},
		{"Btu (IT) per hour, square foot and °F", float64(BtuPerHourFootFahrenheit), 5.678263},
		{"kilowatt-hour (exact)", float64(KilowattHour), 3.6e6},
	} {
		near(t, u.name, u.got, u.want, 5e-7)
	}
}

// Parts must fit together: a Btu in an hour is a Btu per hour, and a square foot of
// 1 Btu/h·ft²·°F loses one for each degree Fahrenheit.
func TestUnitsFitTogether(t *testing.T) {
	near(t, "Btu/h for an hour", float64(BtuPerHour.For(time.Hour)), float64(Btu), 1e-9)
	near(t, "a square foot and a degree", float64(BtuPerHourFootFahrenheit.Over(SquareFoot).At(FahrenheitStep)), float64(BtuPerHour), 1e-9)
	near(t, "3412 Btu in a kilowatt-hour", float64(KilowattHour/Btu), 3412.142, 1e-6)
	near(t, "a kilowatt for a day", Kilowatt.For(24*time.Hour).KilowattHours(), 24, 1e-12)
	near(t, "a floor of two by three, a metre high", (2 * Metre).Times(3*Metre).Times(Metre).Litres(), 6000, 1e-12)
	near(t, "101.325 kPa", Pressure(101325).Kilopascals(), 101.325, 1e-12)
	near(t, "20 MJ", (20 * MegajoulePerSquareMetre).Megajoules(), 20, 1e-12)
	near(t, "52 %", Share(0.52).Percent(), 52, 1e-12)
}

// Daily light is photons by time: mol/m² = µmol/m²/s × h × 0.0036.
func TestDailyLight(t *testing.T) {
	near(t, "150 µmol/m²/s for 14 h", float64(PhotonFlux(150).For(14*time.Hour)), 150*14*0.0036, 1e-12)
}

// Fixed points of the scales, and the temperature where both say the same.
func TestScales(t *testing.T) {
	for _, p := range []struct{ celsius, fahrenheit float64 }{
		{0, 32}, {100, 212}, {-40, -40}, {37, 98.6}, {-273.15, -459.67},
	} {
		if got := Celsius(p.celsius).Fahrenheit(); math.Abs(got-p.fahrenheit) > 1e-9 {
			t.Errorf("%g °C is %g °F", p.celsius, got)
		}
		if got := Fahrenheit(p.fahrenheit).Celsius(); math.Abs(got-p.celsius) > 1e-9 {
			t.Errorf("%g °F is %g °C", p.fahrenheit, got)
		}
	}
	near(t, "kelvins of ice", Celsius(0).Kelvins(), 273.15, 1e-12)
	near(t, "ten Fahrenheit steps", Fahrenheit(60).Sub(Fahrenheit(50)).Fahrenheits(), 10, 1e-12)
}

func TestTemperatureOrder(t *testing.T) {
	cold, warm := Fahrenheit(42), Fahrenheit(70)
	if !cold.Below(warm) || cold.Above(warm) || warm.Below(warm) || warm.Above(warm) {
		t.Error("42 °F is not below 70 °F")
	}
	if got := cold.Between(warm, 0.5).Fahrenheit(); math.Abs(got-56) > 1e-9 {
		t.Errorf("half way from 42 to 70 °F is %g °F", got)
	}
	if got := cold.Add(warm.Sub(cold)); math.Abs(got.Celsius()-warm.Celsius()) > 1e-12 {
		t.Errorf("42 °F and the difference to 70 °F is %g °C", got.Celsius())
	}
	if Unknown().IsKnown() || Unknown().IsPossible() || !cold.IsKnown() || Celsius(-274).IsPossible() || Celsius(math.Inf(1)).IsPossible() {
		t.Error("known and possible are mixed up")
	}
}

func TestTemperatureJSON(t *testing.T) {
	text, err := Celsius(21.5).MarshalJSON()
	if err != nil || string(text) != "21.5" {
		t.Fatalf("got %s, %v", text, err)
	}
	var back Temperature
	if err := back.UnmarshalJSON(text); err != nil || back != Celsius(21.5) {
		t.Errorf("read back as %v, %v", back, err)
	}
}
