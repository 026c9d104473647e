package place

import (
	"fmt"
	"slices"
	"strings"

	"eyeup/quantity"
)

// Fuel is what a heater uses.
type Fuel struct {
	Name       string
	Unit       string          // unit of sale: kWh, therm, gal, cord, lb, short ton
	Heat       quantity.Energy // heat content of one such unit
	Efficiency quantity.Share  // usual efficiency: useful share of that heat
}

// FuelNames returns the names in the fuels table.
func FuelNames() []string { return names("fuels") }

// FuelNamed returns the fuel with that name, and whether the table has it.
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

// Burns reports whether the fuel gives off fumes where it is used.
func (f Fuel) Burns() bool { return f.Name != "electricity" }

// Needs returns how many units of the fuel give the useful heat at an efficiency above 0.
func (f Fuel) Needs(useful quantity.Energy, efficiency quantity.Share) float64 {
	return float64(useful) / (float64(f.Heat) * float64(efficiency))
}

// OfVolume converts a price per volume to a price of the fuel's heat. A fuel not sold by
// volume is an error.
func (f Fuel) OfVolume(p quantity.Price[quantity.Volume]) (quantity.Price[quantity.Energy], error) {
	unit, ok := map[string]quantity.Volume{"gal": quantity.USGallon, "cord": quantity.Cord}[f.Unit]
	if !ok {
		return quantity.Price[quantity.Energy]{}, fmt.Errorf("%s is not sold by volume; give its price per %s", f.Name, f.Unit)
	}
	return quantity.PriceOf(p.Per(unit), p.Currency, f.Heat), nil
}

// OfMass converts a price per mass to a price of the fuel's heat. A fuel not sold by weight is
// an error.
func (f Fuel) OfMass(p quantity.Price[quantity.Mass]) (quantity.Price[quantity.Energy], error) {
	unit, ok := map[string]quantity.Mass{"lb": quantity.Pound, "short ton": quantity.ShortTon}[f.Unit]
	if !ok {
		return quantity.Price[quantity.Energy]{}, fmt.Errorf("%s is not sold by weight; give its price per %s", f.Name, f.Unit)
	}
	return quantity.PriceOf(p.Per(unit), p.Currency, f.Heat), nil
}

// Bought returns the energy to buy for the useful heat, including what the heater wastes. With
// an unknown fuel and efficiency nothing is wasted.
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
