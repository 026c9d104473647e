package place_test

import (
	"testing"

	"eyeup/place"
	"eyeup/quantity"
)

const million = 1e6 * quantity.Btu

func fuel(t *testing.T, name string) place.Fuel {
	t.Helper()
	f, ok := place.FuelNamed(name)
	if !ok {
		t.Fatalf("there is no fuel %s", name)
	}
	return f
}

// What a million Btu cost when a unit of the fuel costs a dollar: the table of the
// University of Connecticut, comparing fuel costs (Bartok 2013). Its figure for gas at
// 90 %, 12.5, is a misprint for 11.1: 12.5 belongs to 80 %.
func TestFuelsCompared(t *testing.T) {
	wasteOil := place.Fuel{Name: "waste oil", Unit: "gal", Heat: 125000 * quantity.Btu}
	byHundred := place.Fuel{Name: "gas by the hundred cubic feet", Heat: 103000 * quantity.Btu}
	for _, c := range []struct {
		fuel       place.Fuel
		efficiency float64
		want, last float64
	}{
		{fuel(t, "oil"), 0.70, 10.3, 0.05},
		{fuel(t, "oil"), 0.75, 9.6, 0.05},
		{wasteOil, 0.70, 11.4, 0.05},
		{fuel(t, "natural-gas"), 0.75, 13.3, 0.05},
		{fuel(t, "natural-gas"), 0.80, 12.5, 0.05},
		{fuel(t, "natural-gas"), 0.90, 11.1, 0.05},
		{byHundred, 0.90, 10.8, 0.05},
		{fuel(t, "propane"), 0.75, 14.4, 0.05},
		{fuel(t, "propane"), 0.90, 12.0, 0.05},
		{fuel(t, "electricity"), 1, 293, 0.5},
	} {
		units := c.fuel.Needs(million, quantity.Share(c.efficiency))
		near(t, c.fuel.Name, units, c.want, c.last+1e-9)
	}
	// For those sold by the ton or cord the table gives what to divide the price by.
	for _, c := range []struct {
		name                   string
		efficiency, want, last float64
	}{
		{"coal", 0.60, 15, 0.5}, {"coal", 0.75, 18.7, 0.06},
		{"wood", 0.60, 12, 0.5}, {"softwood", 0.60, 7.2, 0.05},
	} {
		near(t, c.name, 1/fuel(t, c.name).Needs(million, quantity.Share(c.efficiency)), c.want, c.last)
	}
	perTon := 2000 / fuel(t, "pellets").Needs(million, 0.80)
	near(t, "pellets by the ton", perTon, 13.1, 0.05)
}

// A need of 53 million Btu is met by 477 gal of oil, 15 850 kWh, 683 gal of propane or 625
// therms: Michigan State University Extension, 2014. It reckons oil at 138 690 Btu and
// 80 %, electricity at 98 %, propane at 91 333 Btu and 85 %, gas at 85 %.
func TestFuelForAHeatDemand(t *testing.T) {
	for _, c := range []struct {
		name             string
		efficiency, want float64
	}{
		{"oil", 0.80, 477}, {"electricity", 0.98, 15850}, {"propane", 0.85, 683}, {"natural-gas", 0.85, 625},
	} {
		near(t, c.name, fuel(t, c.name).Needs(53*million, quantity.Share(c.efficiency)), c.want, 0.02*c.want)
	}
}

// 400 gal of oil hold as much as 610 gal of propane or 558 therms: University of Wisconsin
// Extension.
func TestFuelsOfEqualHeat(t *testing.T) {
	oil := 400 * fuel(t, "oil").Heat
	near(t, "propane", float64(610*fuel(t, "propane").Heat/oil), 1, 0.02)
	near(t, "gas", float64(558*fuel(t, "natural-gas").Heat/oil), 1, 0.02)
}

func TestPricesOfFuel(t *testing.T) {
	propane := fuel(t, "propane")
	perGallon := quantity.PriceOf(3.00, "USD", quantity.USGallon)
	price, err := propane.OfVolume(perGallon)
	if err != nil {
		t.Fatal(err)
	}
	h := place.Heater{Fuel: "propane", Efficiency: 0.75}
	// 14.4 gal of propane at 75 % give a million Btu (University of Connecticut).
	near(t, "a million Btu in USD", price.For(h.Bought(million)).Units(), 3*14.4, 0.2)
	if _, err := propane.OfMass(quantity.PriceOf(1, "USD", quantity.Pound)); err == nil {
		t.Error("propane by the pound was taken")
	}
	pellets, err := fuel(t, "pellets").OfMass(quantity.PriceOf(131, "USD", quantity.ShortTon))
	if err != nil {
		t.Fatal(err)
	}
	// A ton at 131 dollars is 10 dollars a million Btu (University of Connecticut: 13.1).
	near(t, "pellets", pellets.For((&place.Heater{Fuel: "pellets"}).Bought(million)).Units(), 10, 0.1)
	if _, err := fuel(t, "pellets").OfVolume(perGallon); err == nil {
		t.Error("pellets by the gallon were taken")
	}
	if fuel(t, "electricity").Burns() || !fuel(t, "wood").Burns() {
		t.Error("the wrong fuels burn")
	}
}
