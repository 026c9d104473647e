package quantity

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
)

// Money is an amount in whole minor units (cents, pence) of its currency. Its zero
// value is nothing in no currency, which adds to any.
type Money struct {
	Minor    int64  // hundredths of the currency's unit
	Currency string // ISO 4217 code, such as USD
}

// MoneyOf returns amount units of currency, rounded to the nearest minor unit, half away from nothing.
func MoneyOf(amount float64, currency string) Money {
	return Money{int64(math.Round(amount * 100)), currency}
}

// Units returns the amount in whole units of the currency.
func (m Money) Units() float64 { return float64(m.Minor) / 100 }

// Plus adds n to m. It panics when the currencies differ: one garden has one currency,
// and amounts in another are refused where they are read.
func (m Money) Plus(n Money) Money {
	currency := m.Currency
	switch {
	case currency == "":
		currency = n.Currency
	case n.Currency != "" && n.Currency != currency:
		panic(fmt.Sprintf("quantity: %s added to %s", n.Currency, currency))
	}
	return Money{m.Minor + n.Minor, currency}
}

// Times returns s times the amount, rounded to the nearest minor unit.
func (m Money) Times(s float64) Money {
	return Money{int64(math.Round(float64(m.Minor) * s)), m.Currency}
}

// String writes the amount and its currency, such as "12.50 USD".
func (m Money) String() string {
	return strings.TrimSpace(fmt.Sprintf("%.2f %s", m.Units(), m.Currency))
}

// moneyJSON is how money is written: units of the currency with two decimals.
type moneyJSON struct {
	Amount   json.Number `json:"amount"`
	Currency string      `json:"currency"`
}

// MarshalJSON writes {"amount": 12.50, "currency": "USD"}.
func (m Money) MarshalJSON() ([]byte, error) {
	return json.Marshal(moneyJSON{json.Number(fmt.Sprintf("%.2f", m.Units())), m.Currency})
}

// UnmarshalJSON reads what MarshalJSON writes.
func (m *Money) UnmarshalJSON(b []byte) error {
	var j moneyJSON
	if err := json.Unmarshal(b, &j); err != nil {
		return err
	}
	amount, err := j.Amount.Float64()
	if err != nil {
		return fmt.Errorf("%q is not an amount of money", j.Amount)
	}
	*m = MoneyOf(amount, j.Currency)
	return nil
}
