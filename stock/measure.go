package stock

import "eyeup/quantity"

// Measure is a number with its unit as the grower typed it, such as 42 and F. The typed text
// is stored; the value in SI units is computed from it each time.
type Measure struct {
	Figure string `json:"v"`
	Unit   string `json:"u"`
}

// IsZero reports whether m is empty.
func (m Measure) IsZero() bool { return m == Measure{} }

// String writes the measure as it was typed.
func (m Measure) String() string { return m.Figure + " " + m.Unit }

// Length returns the measure as a length. Other dimensions are an error.
func (m Measure) Length() (quantity.Length, error) { return quantity.ParseLength(m.String()) }

// Mass returns the measure as a mass. Other dimensions are an error.
func (m Measure) Mass() (quantity.Mass, error) { return quantity.ParseMass(m.String()) }

// Temperature returns the measure as a temperature. Other dimensions are an error.
func (m Measure) Temperature() (quantity.Temperature, error) {
	return quantity.ParseTemperature(m.String())
}

// Price is an amount of money as typed, with its currency.
type Price struct {
	Amount   string `json:"v"`
	Currency string `json:"currency"`
}

// IsZero reports whether p is empty.
func (p Price) IsZero() bool { return p == Price{} }

// Money returns the price as money. A malformed amount or currency is an error.
func (p Price) Money() (quantity.Money, error) {
	return quantity.ParseMoney(p.Amount + " " + p.Currency)
}
