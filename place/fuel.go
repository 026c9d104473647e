package place

import (
	"fmt"
	"slices"
	"strings"

	"eyeup/quantity"
)

// Fuel is what a heater burns or draws.
type Fuel struct {
	Name       string
	Unit       string          // in which it is bought: kWh, therm, gal, cord, lb, short ton
	Heat       quantity.Energy // in one such unit
	Efficiency quantity.Share  // of that heat which is useful, as is usual
}

// FuelNames returns the rows of the fuels table.
func FuelNames() []string { return names("fuels") }

// FuelNamed returns the fuel of that name, and whether the table has it.
func FuelNamed(name string) (Fuel, bool) {
	if !slices.Contains(FuelNames(), name) {
		return Fuel{}, false
	}
	heat := figure("fuels", name+".heat")
	return Fuel{
		Name: name, Unit: strings.TrimPrefix(heat.Unit, "Btu/"),
		Heat:       quantity.Energy(heat.Value) * quantity.Btu,
		Efficiency: quantity.Share(value("fuels", name+".efficiency")),
	}, true
}

// Burns reports whether the fuel gives off fumes where it is burnt.
func (f Fuel) Burns() bool { return f.Name != "electricity" }

// Needs returns how many units of the fuel give so much useful heat at an efficiency
// above 0.
func (f Fuel) Needs(useful quantity.Energy, efficiency quantity.Share) float64 {
	return float64(useful) / (float64(f.Heat) * float64(efficiency))
}

// OfVolume turns a price by volume into one for the fuel's heat. It fails for a fuel that
// is not bought so.
func (f Fuel) OfVolume(p quantity.Price[quantity.Volume]) (quantity.Price[quantity.Energy], error) {
	unit, ok := map[string]quantity.Volume{"gal": quantity.USGallon, "cord": quantity.Cord}[f.Unit]
	if !ok {
		return quantity.Price[quantity.Energy]{}, fmt.Errorf("%s is not bought by volume; give its price for each %s", f.Name, f.Unit)
	}
	return quantity.PriceOf(p.Per(unit), p.Currency, f.Heat), nil
}

// OfMass turns a price by mass into one for the fuel's heat. It fails for a fuel that is
// not bought so.
func (f Fuel) OfMass(p quantity.Price[quantity.Mass]) (quantity.Price[quantity.Energy], error) {
	unit, ok := map[string]quantity.Mass{"lb": quantity.Pound, "short ton": quantity.ShortTon}[f.Unit]
	if !ok {
		return quantity.Price[quantity.Energy]{}, fmt.Errorf("%s is not bought by weight; give its price for each %s", f.Name, f.Unit)
	}
	return quantity.PriceOf(p.Per(unit), p.Currency, f.Heat), nil
}

// Bought returns the energy that must be bought for so much useful heat: more than that,
// as much as the heater wastes. A heater of unknown fuel and efficiency wastes nothing.
func (h *Heater) Bought(useful quantity.Energy) quantity.Energy {
	share := h.Efficiency
	if fuel, ok := FuelNamed(h.Fuel); ok && share == 0 {
		share = fuel.Efficiency
	}
	if share == 0 {
		return useful
	}
	return useful / quantity.Energy(share)
}
