package place

import (
	"fmt"
	"math"
	"time"

	"eyeup/quantity"
)

// Lamps light an area for a number of hours a day, half of them before solar noon. All their
// power ends as heat in the air of the place.
type Lamps struct {
	Area  quantity.Area       // lit area
	Light quantity.PhotonFlux // on the plants
	Hours float64             // a day, 0 to 24
	Power quantity.Power      // of all lamps together, as drawn from the socket
}

// Check returns an error that names the first impossible figure of the lamps.
func (l *Lamps) Check() error {
	switch {
	case !(l.Hours >= 0 && l.Hours <= 24):
		return fmt.Errorf("lamps can't burn %g hours a day; give 0 to 24", l.Hours)
	case !(l.Area > 0):
		return fmt.Errorf("an area of %g m² under the lamps is not possible; give the area they light", float64(l.Area))
	case !(l.Light >= 0 && l.Light <= 3000):
		return fmt.Errorf("%g µmol/m²/s of lamp light is outside 0 to 3000; midsummer sun is about 2000", float64(l.Light))
	case !(l.Power >= 0) || math.IsInf(float64(l.Power), 0):
		return fmt.Errorf("a lamp power of %g W is not possible; give what they draw from the socket", float64(l.Power))
	}
	return nil
}

// daily returns the lamps' daily light, in mol/m²; 0 without lamps.
func (l *Lamps) daily() float64 {
	if l == nil {
		return 0
	}
	return float64(l.Light.For(time.Duration(l.Hours * float64(time.Hour))))
}

// kilowattHours returns the electricity that the lamps use in a day.
func (l *Lamps) kilowattHours() float64 {
	if l == nil {
		return 0
	}
	return float64(l.Power) * l.Hours / 1000
}

// byHour returns the mean power of each hour of the day, in W.
func (l *Lamps) byHour() (watts [24]float64) {
	if l == nil {
		return watts
	}
	on, off := 12-l.Hours/2, 12+l.Hours/2
	for i := range watts {
		burning := min(off, float64(i+1)) - max(on, float64(i))
		watts[i] = float64(l.Power) * max(burning, 0)
	}
	return watts
}

// dayLength returns the hours of light for the given hours of sun, both centred on noon.
func (l *Lamps) dayLength(sunHours float64) float64 {
	if l == nil || l.Light == 0 {
		return sunHours
	}
	return max(sunHours, l.Hours)
}
