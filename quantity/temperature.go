package quantity

import (
	"encoding/json"
	"math"
)

// Temperature is a point on the temperature scale. Its zero value is 0 °C.
// It cannot be added to another Temperature; use Sub, Add and Between.
type Temperature struct{ celsius float64 }

// Difference is the distance between two temperatures, in kelvin.
type Difference float64

// Kelvin is the unit of Difference; FahrenheitStep is the size of one degree Fahrenheit.
const (
	Kelvin         Difference = 1
	FahrenheitStep Difference = 5.0 / 9.0
)

// AbsoluteZero is the lowest temperature there is, -273.15 °C.
const absoluteZero = -273.15

// Celsius returns the temperature of c degrees Celsius.
func Celsius(c float64) Temperature { return Temperature{c} }

// Fahrenheit returns the temperature of f degrees Fahrenheit.
func Fahrenheit(f float64) Temperature { return Temperature{(f - 32) * 5 / 9} }

// Celsius returns the temperature in degrees Celsius.
func (t Temperature) Celsius() float64 { return t.celsius }

// Fahrenheit returns the temperature in degrees Fahrenheit.
func (t Temperature) Fahrenheit() float64 { return t.celsius*9/5 + 32 }

// Kelvins returns the absolute temperature, in kelvin.
func (t Temperature) Kelvins() float64 { return t.celsius - absoluteZero }

// Add returns the temperature that lies d above t.
func (t Temperature) Add(d Difference) Temperature { return Temperature{t.celsius + float64(d)} }

// Sub returns how far t lies above u; it is negative when t is the colder.
func (t Temperature) Sub(u Temperature) Difference { return Difference(t.celsius - u.celsius) }

// Below reports whether t is colder than u.
func (t Temperature) Below(u Temperature) bool { return t.celsius < u.celsius }

// Above reports whether t is warmer than u.
func (t Temperature) Above(u Temperature) bool { return t.celsius > u.celsius }

// Between returns the temperature a share s of the way from t to u; s = 0 is t, s = 1 is u.
func (t Temperature) Between(u Temperature, s float64) Temperature {
	return Temperature{t.celsius + s*(u.celsius-t.celsius)}
}

// Unknown returns the temperature of what was not measured. IsKnown tells it from others.
func Unknown() Temperature { return Temperature{math.NaN()} }

// IsKnown reports whether t was measured.
func (t Temperature) IsKnown() bool { return !math.IsNaN(t.celsius) }

// IsPossible reports whether t is a number and not below absolute zero.
func (t Temperature) IsPossible() bool {
	return !math.IsNaN(t.celsius) && !math.IsInf(t.celsius, 0) && t.celsius >= absoluteZero
}

// MarshalJSON writes the temperature as a number of degrees Celsius.
func (t Temperature) MarshalJSON() ([]byte, error) { return json.Marshal(t.celsius) }

// UnmarshalJSON reads a number of degrees Celsius.
func (t *Temperature) UnmarshalJSON(b []byte) error { return json.Unmarshal(b, &t.celsius) }

// Fahrenheits returns the difference in degrees Fahrenheit.
func (d Difference) Fahrenheits() float64 { return float64(d) * 9 / 5 }
