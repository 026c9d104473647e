package stock

import "eyeup/quantity"

// Measure is a figure with its unit as the grower typed it, such as 42 and F. What it
// comes to in SI is reckoned anew each time; what was typed is what is kept.
type Measure struct {
	Figure string `json:"v"`
	Unit   string `json:"u"`
}

// IsZero reports whether nothing was measured.
func (m Measure) IsZero() bool { return m == Measure{} }

// String writes the measure as it was typed.
func (m Measure) String() string { return m.Figure + " " + m.Unit }

// Length returns the measure as a length; it fails for any other.
func (m Measure) Length() (quantity.Length, error) { return quantity.ParseLength(m.String()) }

// Mass returns the measure as a mass; it fails for any other.
func (m Measure) Mass() (quantity.Mass, error) { return quantity.ParseMass(m.String()) }

// Temperature returns the measure as a temperature; it fails for any other.
func (m Measure) Temperature() (quantity.Temperature, error) {
	return quantity.ParseTemperature(m.String())
}

// Price is money paid, as typed; the currency stands beside every amount.
type Price struct {
	Amount   string `json:"v"`
	Currency string `json:"currency"`
}

// IsZero reports whether nothing was paid or asked.
func (p Price) IsZero() bool { return p == Price{} }

// Money returns what the price comes to; it fails when it is no amount or no currency.
func (p Price) Money() (quantity.Money, error) {
	return quantity.ParseMoney(p.Amount + " " + p.Currency)
}
