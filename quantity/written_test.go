package quantity

import (
	"fmt"
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// What a grower typed is what is written again.
func TestWrittenAsTyped(t *testing.T) {
	temperature, _ := ParseTemperature("42F")
	length, _ := ParseLength("45 cm")
	area, _ := ParseArea("32 sq ft")
	power, _ := ParsePower("20000 Btu/h")
	share, _ := ParseShare("52%")
	price, _ := ParseVolumePrice("9.00 USD/ft3")
	difference, _ := ParseDifference("-1.0 K")
	for want, got := range map[string]string{
		"42 F": temperature.Written(), "45 cm": length.Written(), "32 ft2": area.Written(),
		"20 kBtu/h": power.Written(), "52 %": share.Written(), "9 USD/ft3": price.Written(),
		"-1 K": difference.Written(), "14 h": WrittenDuration(14 * time.Hour), "0 W/K": Conductance(0).Written(),
	} {
		if got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

// returns checks that every amount is written and read back the same.
func returns[T ~float64](t *testing.T, written func(T) string, read func(string) (T, error)) {
	t.Helper()
	t.Run(fmt.Sprintf("%T", T(0)), rapid.MakeCheck(func(t *rapid.T) {
		was := T(rapid.Float64Range(-1e9, 1e9).Draw(t, "amount"))
		is, err := read(written(was))
		if err != nil || is != was {
			t.Fatalf("%v was written %q and read back as %v, %v", float64(was), written(was), float64(is), err)
		}
	}))
}

func TestWrittenReturns(t *testing.T) {
	returns(t, Length.Written, ParseLength)
	returns(t, Area.Written, ParseArea)
	returns(t, Volume.Written, ParseVolume)
	returns(t, Mass.Written, ParseMass)
	returns(t, Power.Written, ParsePower)
	returns(t, Energy.Written, ParseEnergy)
	returns(t, Conductance.Written, ParseConductance)
	returns(t, Transmittance.Written, ParseTransmittance)
	returns(t, PhotonFlux.Written, ParsePhotonFlux)
	returns(t, Rate.Written, ParseRate)
	returns(t, Difference.Written, ParseDifference)
}

func TestTemperatureWrittenReturns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		was := Celsius(rapid.Float64Range(-273.15, 1e6).Draw(t, "celsius"))
		if rapid.Bool().Draw(t, "fahrenheit") {
			was = Fahrenheit(float64(rapid.IntRange(-400, 400).Draw(t, "degrees")) / 10)
		}
		is, err := ParseTemperature(was.Written())
		if err != nil || is != was {
			t.Fatalf("%v was written %q and read back as %v, %v", was, was.Written(), is, err)
		}
	})
}

// Shares are exact as they are typed, in per cent with up to six decimals.
func TestShareWrittenReturns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		typed := fmt.Sprintf("%.6f%%", rapid.Float64Range(0, 100).Draw(t, "percent"))
		was, err := ParseShare(typed)
		if err != nil {
			t.Fatal(err)
		}
		if is, err := ParseShare(was.Written()); err != nil || is != was {
			t.Fatalf("%s was written %q and read back as %v, %v", typed, was.Written(), is, err)
		}
	})
}

func TestDurationWrittenReturns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		was := time.Duration(rapid.Int64Range(-1e15, 1e15).Draw(t, "nanoseconds"))
		if is, err := ParseDuration(WrittenDuration(was)); err != nil || is != was {
			t.Fatalf("%v was written %q and read back as %v, %v", was, WrittenDuration(was), is, err)
		}
	})
}

func TestPriceWrittenReturns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		amount := rapid.Float64Range(-1e6, 1e6).Draw(t, "amount")
		energy := PriceOf(amount, "USD", KilowattHour)
		if is, err := ParseEnergyPrice(energy.Written()); err != nil || is != energy {
			t.Fatalf("%v was written %q: %v, %v", energy, energy.Written(), is, err)
		}
		volume := PriceOf(amount, "EUR", CubicFoot)
		if is, err := ParseVolumePrice(volume.Written()); err != nil || is != volume {
			t.Fatalf("%v was written %q: %v, %v", volume, volume.Written(), is, err)
		}
		mass := PriceOf(amount, "GBP", ShortTon)
		if is, err := ParseMassPrice(mass.Written()); err != nil || is != mass {
			t.Fatalf("%v was written %q: %v, %v", mass, mass.Written(), is, err)
		}
	})
}

func TestPrices(t *testing.T) {
	electricity, err := ParseEnergyPrice("0.30 USD/kWh")
	if err != nil {
		t.Fatal(err)
	}
	if got := electricity.For(1000 * KilowattHour); got != MoneyOf(300, "USD") {
		t.Errorf("a thousand kilowatt-hours cost %v", got)
	}
	mix, err := ParseVolumePrice("9.00 USD/ft3")
	if err != nil {
		t.Fatal(err)
	}
	if got := mix.For(2 * CubicFoot); got != MoneyOf(18, "USD") {
		t.Errorf("two cubic feet cost %v", got)
	}
	near(t, "a litre of mix", mix.Per(Litre), 9/28.316846592, 1e-12)
	if (Price[Energy]{}).IsZero() != true || electricity.IsZero() {
		t.Error("no price and a price are mixed up")
	}
}

func TestNotANumberIsNotWritten(t *testing.T) {
	if got := Length(math.NaN()).Written(); got != "" {
		t.Errorf("got %q", got)
	}
}
