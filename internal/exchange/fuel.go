package exchange

import (
	"fmt"
	"strconv"

	"eyeup/place"
	"eyeup/quantity"
)

// readFuelPrices reads the prices of fuels, for each unit in which they are sold or for their
// energy.
func (g *Garden) readFuelPrices(s *section) {
	g.Prices.Fuels = map[string]quantity.Price[quantity.Energy]{}
	for _, name := range place.FuelNames() {
		fuel, known := place.FuelNamed(name)
		if !known || !fuel.Burns() {
			continue
		}
		price := priced(g, s, name, func(text string) (quantity.Price[quantity.Energy], error) {
			return fuelPrice(fuel, text)
		})
		if !price.IsZero() {
			g.Prices.Fuels[name] = price
		}
	}
}

// fuelPrice reads the price of a fuel, such as 3.20 USD/gal, 300 USD/cord or 0.12 USD/kWh, and
// returns it for the fuel's heat.
func fuelPrice(fuel place.Fuel, text string) (quantity.Price[quantity.Energy], error) {
	if volume, err := quantity.ParseVolumePrice(text); err == nil {
		return fuel.OfVolume(volume)
	}
	if mass, err := quantity.ParseMassPrice(text); err == nil {
		return fuel.OfMass(mass)
	}
	energy, err := quantity.ParseEnergyPrice(text)
	if err != nil {
		return energy, fmt.Errorf("%w; %s is bought by the %s", err, fuel.Name, fuel.Unit)
	}
	return energy, nil
}

// writtenFuelPrice writes the price as fuelPrice reads it, for the unit of sale where that is
// exact.
func writtenFuelPrice(fuel place.Fuel, price quantity.Price[quantity.Energy]) string {
	for digits := 1; digits <= 17; digits++ {
		text := fmt.Sprintf("%s %s/%s", strconv.FormatFloat(price.Per(fuel.Heat), 'g', digits, 64), price.Currency, fuel.Unit)
		if same, err := fuelPrice(fuel, text); err == nil && same == price {
			return text
		}
	}
	return price.Written()
}
