package quantity

import (
	"strings"
	"testing"
	"time"
)

// The amounts follow from the factors tested in units_test.go.
func TestParse(t *testing.T) {
	celsius := func(s string) (float64, error) { v, err := ParseTemperature(s); return v.Celsius(), err }
	for _, c := range []struct {
		text string
		read func(string) (float64, error)
		want float64
	}{
		{"70F", celsius, 190.0 / 9}, {"21 °C", celsius, 21}, {"-13C", celsius, -13}, {"\u22125 °C", celsius, -5},
		{"50 degF", celsius, 10}, {"10 celsius", celsius, 10}, {" 32 \u00a0°F ", celsius, 0},
		{"1.0 K", as(ParseDifference), 1}, {"-2F", as(ParseDifference), -10.0 / 9}, {"0 K", as(ParseDifference), 0},
		{"7.3 m", as(ParseLength), 7.3}, {"45 cm", as(ParseLength), 0.45}, {"27 ft", as(ParseLength), 8.2296}, {"18 in", as(ParseLength), 0.4572}, {"-3 m", as(ParseLength), -3},
		{"3.0 m2", as(ParseArea), 3}, {"32 sq ft", as(ParseArea), 2.97289728}, {"32 ft²", as(ParseArea), 2.97289728}, {"32 ft^2", as(ParseArea), 2.97289728},
		{"2 ft3", as(ParseVolume), 0.056633693184}, {"56 L", as(ParseVolume), 0.056}, {"5 gal", as(ParseVolume), 0.01892705892}, {"8 dry qt", as(ParseVolume), 0.008809767536},
		{"6 kW", as(ParsePower), 6000}, {"20000 Btu/h", as(ParsePower), 5861.4214034}, {"180 W", as(ParsePower), 180}, {"2e4 BTU/hr", as(ParsePower), 5861.4214034},
		{"52%", as(ParseShare), 0.52}, {"0 %", as(ParseShare), 0}, {"100 percent", as(ParseShare), 1},
		{"1.0 /h", as(ParseRate), 1}, {"2 per hour", as(ParseRate), 2},
		{"150 umol/m2/s", as(ParsePhotonFlux), 150}, {"150 µmol/m²/s", as(ParsePhotonFlux), 150},
		{"12 mol/m2", as(ParseDailyLight), 12},
		{"3.6 W/m2/K", as(ParseTransmittance), 3.6}, {"0.634 Btu/h/ft2/F", as(ParseTransmittance), 3.6000189582},
		{"0 W/K", as(ParseConductance), 0}, {"1 Btu/h/F", as(ParseConductance), 0.527527926306},
		{"10 kWh", as(ParseEnergy), 3.6e7}, {"1 therm", as(ParseEnergy), 105505585.262},
		{"51 lb", as(ParseMass), 23.13321087}, {"4 oz", as(ParseMass), 0.1133980925},
		{"1013.25 hPa", as(ParsePressure), 101325},
	} {
		got, err := c.read(c.text)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if c.want == 0 && got == 0 {
			continue
		}
		near(t, c.text, got, c.want, 1e-9)
	}
	if got, err := ParseDuration("14 h"); err != nil || got != 14*time.Hour {
		t.Errorf("14 h: %v, %v", got, err)
	}
	if got, err := ParseDuration("45 min"); err != nil || got != 45*time.Minute {
		t.Errorf("45 min: %v, %v", got, err)
	}
}

// as makes a parser of any quantity one of plain numbers.
func as[T ~float64](read func(string) (T, error)) func(string) (float64, error) {
	return func(s string) (float64, error) {
		v, err := read(s)
		return float64(v), err
	}
}

// Every refusal says what is wrong and what to do: the words looked for.
func TestRefusals(t *testing.T) {
	temperature := func(s string) error { _, err := ParseTemperature(s); return err }
	area := func(s string) error { _, err := ParseArea(s); return err }
	power := func(s string) error { _, err := ParsePower(s); return err }
	volume := func(s string) error { _, err := ParseVolume(s); return err }
	share := func(s string) error { _, err := ParseShare(s); return err }
	lasting := func(s string) error { _, err := ParseDuration(s); return err }
	money := func(s string) error { _, err := ParseMoney(s); return err }
	energyPrice := func(s string) error { _, err := ParseEnergyPrice(s); return err }
	for _, c := range []struct {
		read func(string) error
		text string
		says []string
	}{
		{temperature, "70", []string{"no unit", "70 F or 70 C"}},
		{temperature, "70 K", []string{"no temperature", "temperature difference"}},
		{temperature, "-300 C", []string{"absolute zero"}},
		{temperature, "1,5 C", []string{"without commas"}},
		{temperature, "", []string{"number", "12 F"}},
		{temperature, "NaN C", []string{"number"}},
		{temperature, "Inf C", []string{"number"}},
		{temperature, "1e400 C", []string{"larger"}},
		{area, "14", []string{"no unit", "14 m2 or 14 ft2"}},
		{area, "14 m", []string{"no area", "unit of length", "m2"}},
		{area, "14 squid", []string{"squid", "m2, ft2"}},
		{power, "6 kv", []string{"did you mean kW"}},
		{power, "6 kWh", []string{"unit of energy"}},
		{power, "20,000 Btu/h", []string{"without commas"}},
		{power, "1e308 kW", []string{"larger"}},
		{volume, "8 qt", []string{"liquid qt", "dry qt"}},
		{share, "0.52", []string{"no unit", "%"}},
		{share, "152%", []string{"0% to 100%"}},
		{share, "-1%", []string{"0% to 100%"}},
		{lasting, "14 hous", []string{"did you mean hour"}},
		{lasting, "4000000 h", []string{"too long"}},
		{money, "0.60", []string{"no currency", "0.60 USD"}},
		{money, "0.60 $", []string{"three capital letters"}},
		{money, "0.605 USD", []string{"two decimals"}},
		{money, "1 USD/kWh", []string{"amount alone"}},
		{money, "1e300 USD", []string{"more money"}},
		{energyPrice, "0.30 USD", []string{"0.3 USD/kWh"}},
		{energyPrice, "0.30 kWh", []string{"three capital letters"}},
		{energyPrice, "0.30 USD/ft3", []string{"unit of volume", "kWh"}},
	} {
		err := c.read(c.text)
		if err == nil {
			t.Errorf("%q was taken", c.text)
			continue
		}
		for _, words := range c.says {
			if !strings.Contains(err.Error(), words) {
				t.Errorf("%q: %q does not say %q", c.text, err, words)
			}
		}
	}
}

// No spelling may stand for two units of one measure.
func TestSpellingsAreUnique(t *testing.T) {
	for _, m := range measures {
		seen := map[string]string{}
		for _, u := range m.units {
			for _, name := range u.names {
				plain := plainUnit(name)
				if first, twice := seen[plain]; twice && first != u.names[0] {
					t.Errorf("%s: %q is both %s and %s", m.noun, name, first, u.names[0])
				}
				seen[plain] = u.names[0]
			}
		}
	}
}

func TestNearest(t *testing.T) {
	keys := []string{"latitude", "longitude", "elevation", "time_zone"}
	for written, want := range map[string]string{"lattitude": "latitude", "longtitude": "longitude", "Timezone": "time_zone"} {
		if got, ok := Nearest(written, keys); !ok || got != want {
			t.Errorf("%s: got %s, %v", written, got, ok)
		}
	}
	if got, ok := Nearest("xyzzy", keys); ok {
		t.Errorf("xyzzy is taken for %s", got)
	}
	if got, ok := Nearest("", nil); ok {
		t.Errorf("nothing is taken for %q", got)
	}
}

// Distances from the worked examples of the literature: kitten to sitting takes three
// edits, saturday to sunday three (Wagner & Fischer's table).
func TestEdits(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{{"kitten", "sitting", 3}, {"saturday", "sunday", 3}, {"", "abc", 3}, {"größe", "grosse", 3}, {"same", "same", 0}} {
		if got := edits(c.a, c.b); got != c.want {
			t.Errorf("%s to %s: %d", c.a, c.b, got)
		}
	}
}
