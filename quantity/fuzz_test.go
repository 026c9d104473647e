package quantity

import (
	"math"
	"testing"
	"unicode/utf8"
)

// seeds are texts that growers, and worse, may type.
var seeds = []string{
	"70F", "21 °C", "-13C", "1.0 K", "3.0 m2", "32 sq ft", "7.3 m", "6 kW", "20000 Btu/h", "52%", "1.0 /h", "150 umol/m2/s",
	"14 h", "0.30 USD/kWh", "9.00 USD/ft3", "0.60 USD", "3.6 W/m2/K", "0 W/K", "2 ft3", "56 L", "", "12", "1e999 m", "-0 F",
	"1,5 m", "\xff\xfe", "5'6\"", "NaN C", "0x10 m", "1 USD/", "1 /", "٣ m", "1 m m",
}

// wholesome checks that a text is either read as a number or refused in words.
func wholesome(t *testing.T, s string, got float64, err error) {
	t.Helper()
	if err == nil && (math.IsNaN(got) || math.IsInf(got, 0)) {
		t.Errorf("%q was read as %v", s, got)
	}
	if err != nil && (err.Error() == "" || got != 0 || !utf8.ValidString(err.Error())) {
		t.Errorf("%q was refused with %q and %v", s, err, got)
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for _, read := range []func(string) (float64, error){
			as(ParseDifference), as(ParseLength), as(ParseArea), as(ParseVolume), as(ParseMass), as(ParsePower), as(ParseEnergy),
			as(ParseConductance), as(ParseTransmittance), as(ParsePhotonFlux), as(ParseDailyLight), as(ParseRate), as(ParsePressure), as(ParseShare),
		} {
			got, err := read(s)
			wholesome(t, s, got, err)
		}
		degrees, err := ParseTemperature(s)
		wholesome(t, s, degrees.Celsius(), err)
		lasting, err := ParseDuration(s)
		wholesome(t, s, float64(lasting), err)
	})
}

func FuzzParseMoney(f *testing.F) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		m, err := ParseMoney(s)
		wholesome(t, s, float64(m.Minor), err)
		if err == nil {
			if again, err := ParseMoney(m.String()); err != nil || again != m {
				t.Errorf("%q: %v was read back as %v, %v", s, m, again, err)
			}
		}
		e, err := ParseEnergyPrice(s)
		wholesome(t, s, e.Per(KilowattHour), err)
		v, err := ParseVolumePrice(s)
		wholesome(t, s, v.Per(Litre), err)
		k, err := ParseMassPrice(s)
		wholesome(t, s, k.Per(Kilogram), err)
	})
}
