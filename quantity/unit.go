package quantity

import (
	"math"
	"strings"
)

// unit is one way to write a quantity: how large it is in the SI unit in which the
// quantity is kept, and its spellings, the first of which is the one offered.
type unit struct {
	size  float64
	names []string
}

// si returns the amount in the SI unit. A size such as a hundredth has no exact binary
// form; its inverse has, and makes 45 cm the very number 0.45.
func (u unit) si(amount float64) float64 {
	if inverse := math.Round(1 / u.size); u.size < 1 && inverse*u.size == 1 {
		return amount / inverse
	}
	return amount * u.size
}

// measure is a sort of quantity as it is typed. The first two of its units are the ones
// offered where a unit is missing.
type measure struct {
	noun  string
	units []unit
}

var (
	lengths = measure{"length", []unit{
		{float64(Metre), []string{"m", "metre", "metres", "meter", "meters"}},
		{float64(Foot), []string{"ft", "foot", "feet"}},
		{float64(Centimetre), []string{"cm"}},
		{float64(Inch), []string{"in", "inch", "inches"}},
		{float64(Millimetre), []string{"mm"}},
	}}
	areas = measure{"area", []unit{
		{float64(SquareMetre), []string{"m2", "sq m"}},
		{float64(SquareFoot), []string{"ft2", "sq ft", "square feet"}},
	}}
	volumes = measure{"volume", []unit{
		{float64(Litre), []string{"L", "litre", "litres", "liter", "liters"}},
		{float64(CubicFoot), []string{"ft3", "cu ft", "cubic foot", "cubic feet"}},
		{float64(CubicMetre), []string{"m3", "cu m"}},
		{float64(Litre) / 1000, []string{"ml"}},
		{float64(CubicYard), []string{"yd3", "cu yd", "cubic yards"}},
		{float64(CubicInch), []string{"in3", "cu in", "cubic inches"}},
		{float64(USGallon), []string{"gal", "gallon", "gallons", "US gal"}},
		{float64(USLiquidQuart), []string{"liquid qt"}},
		{2 * float64(USDryPint), []string{"dry qt"}},
		{float64(USDryPint), []string{"dry pt"}},
		{float64(Cord), []string{"cord", "cords"}},
	}}
	masses = measure{"mass", []unit{
		{float64(Kilogram), []string{"kg"}},
		{float64(Pound), []string{"lb", "lbs", "pound", "pounds"}},
		{float64(Gram), []string{"g"}},
		{float64(Pound) / 16, []string{"oz", "ounce", "ounces"}},
		{float64(Tonne), []string{"t", "tonne", "tonnes"}},
		{float64(ShortTon), []string{"short ton", "short tons"}},
	}}
	powers = measure{"power", []unit{
		{float64(Kilowatt), []string{"kW"}},
		{float64(BtuPerHour), []string{"Btu/h", "Btu/hr", "Btuh"}},
		{float64(Watt), []string{"W", "watt", "watts"}},
		{float64(ThousandBtuPerHour), []string{"kBtu/h", "kBtu/hr"}},
	}}
	energies = measure{"energy", []unit{
		{float64(KilowattHour), []string{"kWh"}},
		{float64(Btu), []string{"Btu"}},
		{float64(Therm), []string{"therm", "therms"}},
		{float64(Megajoule), []string{"MJ"}},
		{float64(Joule), []string{"J"}},
	}}
	conductances = measure{"conductance", []unit{
		{1, []string{"W/K", "W/C"}},
		{float64(BtuPerHour / Power(FahrenheitStep)), []string{"Btu/h/F", "Btu/hr/F"}},
	}}
	transmittances = measure{"transmittance (U value)", []unit{
		{1, []string{"W/m2/K", "W/m2K", "W/(m2 K)", "W/K/m2"}},
		{float64(BtuPerHourFootFahrenheit), []string{"Btu/h/ft2/F", "Btu/hr/ft2/F", "Btu/(h ft2 F)"}},
	}}
	photonFluxes = measure{"light (photons in a second)", []unit{
		{1, []string{"umol/m2/s", "umol/m2s", "umol/(m2 s)", "umol/s/m2"}},
	}}
	dailyLights = measure{"daily light", []unit{
		{1, []string{"mol/m2", "mol/m2/d", "mol/m2/day"}},
	}}
	rates = measure{"number of times an hour", []unit{
		{1, []string{"/h", "/hr", "/hour", "per hour", "changes/h"}},
	}}
	shares = measure{"share", []unit{
		{0.01, []string{"%", "percent", "per cent"}},
	}}
	pressures = measure{"pressure", []unit{
		{float64(Kilopascal), []string{"kPa"}},
		{float64(Hectopascal), []string{"hPa", "mbar"}},
		{float64(Pascal), []string{"Pa"}},
	}}
	durations = measure{"time", []unit{
		{3600, []string{"h", "hr", "hour", "hours"}},
		{60, []string{"min", "minute", "minutes"}},
		{1, []string{"s", "second", "seconds"}},
		{86400, []string{"d", "day", "days"}},
	}}
	differences = measure{"temperature difference", []unit{
		{1, []string{"K", "C"}},
		{float64(FahrenheitStep), []string{"F"}},
	}}
	// temperatures are points: the sizes serve for naming alone, see ParseTemperature.
	temperatures = measure{"temperature", []unit{
		{float64(FahrenheitStep), []string{"F", "fahrenheit"}},
		{1, []string{"C", "celsius"}},
	}}
)

// measures are all there are, to say what a unit that is out of place would be.
var measures = []*measure{
	&lengths, &areas, &volumes, &masses, &powers, &energies, &conductances, &transmittances, &photonFluxes,
	&dailyLights, &rates, &shares, &pressures, &durations, &temperatures, &differences,
}

var unitSpelling = strings.NewReplacer(
	" ", "", "\u00a0", "", "\u202f", "", "°", "", "º", "", "²", "2", "³", "3", "^", "",
	"µ", "u", "μ", "u", "·", "", "*", "", "(", "", ")", "", ".", "",
)

// plainUnit reduces a spelling of a unit to what tells it from others.
func plainUnit(s string) string {
	s = strings.ToLower(unitSpelling.Replace(s))
	s = strings.TrimPrefix(s, "degrees")
	return strings.TrimPrefix(s, "deg")
}

// find returns the unit that is spelt s.
func (m *measure) find(s string) (unit, bool) {
	plain := plainUnit(s)
	for _, u := range m.units {
		for _, name := range u.names {
			if plainUnit(name) == plain {
				return u, true
			}
		}
	}
	return unit{}, false
}

// offered returns the usual spelling of every unit of the measure.
func (m *measure) offered() []string {
	names := make([]string, len(m.units))
	for i, u := range m.units {
		names[i] = u.names[0]
	}
	return names
}

// spellings returns every spelling of every unit.
func (m *measure) spellings() []string {
	var names []string
	for _, u := range m.units {
		names = append(names, u.names...)
	}
	return names
}

// other returns the measure, other than m, that has the unit s.
func (m *measure) other(s string) (*measure, bool) {
	for _, o := range measures {
		if _, ok := o.find(s); ok && o != m {
			return o, true
		}
	}
	return nil, false
}
