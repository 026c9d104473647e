package quantity

import (
	"fmt"
	"math"
	"regexp"
	"strings"
)

// Price is money for each unit of a quantity, such as of energy, volume or mass. It is
// finer than Money, which is whole minor units: a kilowatt-hour may cost 0.3142 USD.
type Price[T ~float64] struct {
	perUnit  float64 // of the currency, for one SI unit of T
	Currency string  // ISO 4217 code; empty in the zero value, which is no price
}

// PriceOf returns the price of amount units of currency for each of what is given.
func PriceOf[T ~float64](amount float64, currency string, each T) Price[T] {
	return Price[T]{amount / float64(each), currency}
}

// For returns what quantity q costs, rounded to the nearest minor unit.
func (p Price[T]) For(q T) Money { return MoneyOf(p.perUnit*float64(q), p.Currency) }

// Per returns the price in units of the currency for each of what is given, unrounded.
func (p Price[T]) Per(each T) float64 { return p.perUnit * float64(each) }

// IsZero reports whether p is no price.
func (p Price[T]) IsZero() bool { return p == Price[T]{} }

var currencyCode = regexp.MustCompile(`^[A-Z]{3}$`)

// ParseMoney reads an amount and its currency: 0.60 USD. It refuses parts of a minor unit.
func ParseMoney(s string) (Money, error) {
	amount, currency, err := moneyParts(s)
	if err != nil {
		return Money{}, err
	}
	if strings.Contains(currency, "/") {
		return Money{}, fmt.Errorf("%q is a price for each of something; here the amount alone is due, such as 0.60 USD", s)
	}
	if err := checkCurrency(s, currency); err != nil {
		return Money{}, err
	}
	minor := amount * 100
	if rounding := max(1e-6, math.Abs(minor)*1e-12); math.Abs(minor-math.Round(minor)) > rounding {
		return Money{}, fmt.Errorf("%q: an amount of money has two decimals at most", s)
	}
	if math.Abs(minor) >= 1<<53 {
		return Money{}, fmt.Errorf("%q is more money than can be reckoned with", s)
	}
	return MoneyOf(amount, currency), nil
}

// ParseEnergyPrice reads a price of energy: 0.30 USD/kWh, 1.50 USD/therm.
func ParseEnergyPrice(s string) (Price[Energy], error) { return parsePrice[Energy](s, &energies) }

// ParseVolumePrice reads a price of volume: 9.00 USD/ft3, 3.20 USD/gal.
func ParseVolumePrice(s string) (Price[Volume], error) { return parsePrice[Volume](s, &volumes) }

// ParseMassPrice reads a price of mass: 0.35 USD/kg, 300 USD/short ton.
func ParseMassPrice(s string) (Price[Mass], error) { return parsePrice[Mass](s, &masses) }

func parsePrice[T ~float64](s string, m *measure) (Price[T], error) {
	amount, rest, err := moneyParts(s)
	if err != nil {
		return Price[T]{}, err
	}
	currency, name, found := strings.Cut(rest, "/")
	currency = strings.TrimSpace(currency)
	if err := checkCurrency(s, currency); err != nil {
		return Price[T]{}, err
	}
	example := fmt.Sprintf("%g %s/%s", amount, currency, m.units[0].names[0])
	if !found {
		return Price[T]{}, fmt.Errorf("%q does not say for each of what; write it such as %s", s, example)
	}
	u, ok := m.find(name)
	if !ok {
		return Price[T]{}, m.unknown(s, strings.TrimSpace(name))
	}
	return PriceOf(amount, currency, T(u.size)), nil
}

// moneyParts splits a text into an amount and what stands behind it.
func moneyParts(s string) (amount float64, rest string, err error) {
	amount, rest, err = leadingNumber(s, "0.60 USD")
	if err != nil {
		return 0, "", err
	}
	if rest == "" {
		return 0, "", fmt.Errorf("%q has no currency; write its three letters, such as %s USD", s, strings.TrimSpace(s))
	}
	return amount, rest, nil
}

func checkCurrency(s, currency string) error {
	if !currencyCode.MatchString(currency) {
		return fmt.Errorf("%q: %q is not a currency; write its three capital letters, such as USD or EUR", s, currency)
	}
	return nil
}
