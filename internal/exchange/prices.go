package exchange

import (
	"eyeup/quantity"
	"eyeup/supply"
)

// readPrices reads the prices. Each must be in the garden's currency.
func (g *Garden) readPrices(s *section) {
	g.Prices.Electricity = priced(g, s, "electricity", quantity.ParseEnergyPrice)
	g.Prices.Mix = priced(g, s, "mix", quantity.ParseVolumePrice)
	g.Prices.Stem = g.money(s, "stem", quantity.ParseMoney)
	g.Prices.Hour = g.money(s, "hour", quantity.ParseMoney)
	g.Prices.Stretched = g.money(s, "stretched_day", quantity.ParseMoney)
	g.Prices.Pots = map[string]quantity.Money{}
	for _, c := range supply.Containers() {
		key := "pot_" + c.ID
		if price := g.money(s, key, quantity.ParseMoney); s.has(key) {
			g.Prices.Pots[c.ID] = price
		}
	}
	g.readFuelPrices(s)
	s.rest()
}

// money reads an amount; zero if it is missing or wrong.
func (g *Garden) money(s *section, key string, parse func(string) (quantity.Money, error)) quantity.Money {
	m, ok := measured(s, key, free, parse)
	if !ok || !g.checkCurrency(s, key, m.Currency) {
		return quantity.Money{}
	}
	if m.Minor < 0 {
		s.refuseKey(key, "a negative price (%s) is not possible; check its sign", m)
		return quantity.Money{}
	}
	return m
}

// priced reads a price per unit; zero if it is missing or wrong.
func priced[T ~float64](g *Garden, s *section, key string, parse func(string) (quantity.Price[T], error)) quantity.Price[T] {
	p, ok := measured(s, key, free, parse)
	if !ok || !g.checkCurrency(s, key, p.Currency) {
		return quantity.Price[T]{}
	}
	if p.Per(1) < 0 {
		s.refuseKey(key, "a negative price is not possible; check its sign")
		return quantity.Price[T]{}
	}
	return p
}

func (g *Garden) checkCurrency(s *section, key, currency string) bool {
	if currency != g.Currency && g.Currency != "" {
		s.refuseKey(key, "the price is in %s, but the garden's currency is %s; give it in %s", currency, g.Currency, g.Currency)
		return false
	}
	return true
}
