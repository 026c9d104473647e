package quantity

// Length is a distance in metres.
type Length float64

// Units of length.
const (
	Metre      Length = 1
	Centimetre Length = 0.01
	Millimetre Length = 0.001
	Inch       Length = 0.0254
	Foot       Length = 0.3048
)

// Times returns the area of a rectangle with sides l and m.
func (l Length) Times(m Length) Area { return Area(float64(l) * float64(m)) }

// Area is a surface in square metres.
type Area float64

// Units of area.
const (
	SquareMetre Area = 1
	SquareFoot  Area = 0.09290304
)

// Times returns the volume of a prism of base a and height l.
func (a Area) Times(l Length) Volume { return Volume(float64(a) * float64(l)) }

// Volume is a content in cubic metres.
type Volume float64

// Units of volume.
const (
	CubicMetre    Volume = 1
	Litre         Volume = 0.001
	CubicFoot     Volume = 0.028316846592
	CubicYard     Volume = 27 * CubicFoot
	USGallon      Volume = 0.003785411784
	CubicInch     Volume = 0.000016387064
	USDryPint     Volume = 0.000550610471
	USLiquidQuart Volume = USGallon / 4
	Cord          Volume = 128 * CubicFoot // of stacked firewood, air between the logs counted
)

// Litres returns the volume in litres.
func (v Volume) Litres() float64 { return float64(v / Litre) }

// Mass is a mass in kilograms.
type Mass float64

// Units of mass.
const (
	Kilogram Mass = 1
	Gram     Mass = 0.001
	Pound    Mass = 0.45359237
	Tonne    Mass = 1000
	ShortTon Mass = 2000 * Pound
)

// Pressure is a pressure in pascals.
type Pressure float64

// Units of pressure.
const (
	Pascal      Pressure = 1
	Hectopascal Pressure = 100
	Kilopascal  Pressure = 1000
)

// Kilopascals returns the pressure in kilopascals.
func (p Pressure) Kilopascals() float64 { return float64(p / Kilopascal) }
