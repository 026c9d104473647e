package quantity

import "time"

// Power is a flow of energy in watts.
type Power float64

// Units of power.
const (
	Watt               Power = 1
	Kilowatt           Power = 1000
	BtuPerHour         Power = 0.29307107017
	ThousandBtuPerHour Power = 1000 * BtuPerHour
)

// For returns the energy that p delivers in d.
func (p Power) For(d time.Duration) Energy { return Energy(float64(p) * d.Seconds()) }

// Energy is an amount of energy in joules.
type Energy float64

// Units of energy.
const (
	Joule        Energy = 1
	Megajoule    Energy = 1e6
	KilowattHour Energy = 3.6e6
	Btu          Energy = 1055.05585262
	Therm        Energy = 100000 * Btu
)

// KilowattHours returns the energy in kilowatt-hours.
func (e Energy) KilowattHours() float64 { return float64(e / KilowattHour) }

// Conductance is the heat that flows for each kelvin of difference, in W/K.
type Conductance float64

// At returns the power that crosses c at difference d.
func (c Conductance) At(d Difference) Power { return Power(float64(c) * float64(d)) }

// Transmittance is a conductance for each square metre (a U value), in W/m²K.
type Transmittance float64

// BtuPerHourFootFahrenheit is 1 Btu/h·ft²·°F as a Transmittance.
const BtuPerHourFootFahrenheit Transmittance = 5.678263341

// Over returns the conductance of area a.
func (u Transmittance) Over(a Area) Conductance { return Conductance(float64(u) * float64(a)) }

// HeatCapacity is the energy that warms a body by one kelvin, in J/K.
type HeatCapacity float64

// Irradiance is the power of radiation on a surface, in W/m².
type Irradiance float64

// Insolation is the energy of radiation on a surface over a day, in J/m².
type Insolation float64

// MegajoulePerSquareMetre is the usual unit of a day's sun.
const MegajoulePerSquareMetre Insolation = 1e6

// Megajoules returns the insolation in MJ/m².
func (s Insolation) Megajoules() float64 { return float64(s / MegajoulePerSquareMetre) }

// PhotonFlux is light that plants use, in µmol/m²/s of photons between 400 and 700 nm.
type PhotonFlux float64

// For returns the light that f gives in d.
func (f PhotonFlux) For(d time.Duration) DailyLight {
	return DailyLight(float64(f) * d.Seconds() / 1e6)
}

// DailyLight is the light of a day that plants use, in mol/m² of photons between 400 and 700 nm.
type DailyLight float64

// Rate is a number of times an hour, such as the changes of a house's air.
type Rate float64

// Share is a part of a whole, 0 to 1: a relative humidity, an efficiency, odds.
type Share float64

// Percent returns the share in per cent.
func (s Share) Percent() float64 { return float64(s) * 100 }
