package place

import (
	"errors"
	"fmt"
	"math"
)

// Check returns an error that names the first impossible figure of the place; nil if there is
// none.
func (c Covered) Check() error {
	for _, side := range []struct {
		name   string
		metres float64
	}{{"length", float64(c.Length)}, {"width", float64(c.Width)}, {"ridge", float64(c.Ridge)}} {
		if !(side.metres > 0 && side.metres <= 1000) {
			return fmt.Errorf("a %s of %g m is not possible; give a measured length, above 0 and up to 1000 m", side.name, side.metres)
		}
	}
	switch {
	case !(c.Eaves >= 0 && c.Eaves <= c.Ridge):
		return fmt.Errorf("the ridge (%[2]g m) is lower than the eaves (%[1]g m); measure both from the ground", float64(c.Eaves), float64(c.Ridge))
	case !(c.Cover.U > 0 && c.Cover.U <= 15):
		return fmt.Errorf("a cover with a U value of %g W/m²K is outside 0 to 15; single film has about 7", float64(c.Cover.U))
	case !(c.Cover.Light > 0 && c.Cover.Light <= 1):
		return fmt.Errorf("a cover can't let %g %% of the light through; give more than 0 and at most 100 %%", c.Cover.Light.Percent())
	case !(c.AirChanges >= 0 && c.AirChanges <= 60):
		return fmt.Errorf("%g air changes an hour with everything shut is outside 0 to 60; a tight house has about 1", float64(c.AirChanges))
	}
	return errors.Join(c.Heater.check(), c.Vent.check(), c.Screen.check(), c.WarmBench.check(c), c.checkLamps(), c.body().check())
}

func (c Covered) checkLamps() error {
	if c.Lamps == nil {
		return nil
	}
	return c.Lamps.Check()
}

func (h *Heater) check() error {
	switch {
	case h == nil:
		return nil
	case !(h.Power > 0) || math.IsInf(float64(h.Power), 0):
		return fmt.Errorf("a heater of %g W gives no heat; give its power, or leave it out", float64(h.Power))
	case !(h.Efficiency >= 0 && h.Efficiency <= 5):
		return fmt.Errorf("an efficiency of %g %% is not possible; give more than 0 and at most 100 %%, more only for a heat pump", h.Efficiency.Percent())
	}
	return nil
}

func (v Vent) check() error {
	switch {
	case v == Vent{}:
		return nil
	case !(v.Most >= 0 && v.Most <= 1000):
		return fmt.Errorf("%g air changes an hour through the vent is outside 0 to 1000", float64(v.Most))
	case !(v.Opens.Celsius() > 0 && v.Opens.Celsius() <= 50):
		return fmt.Errorf("vents that open at %.1f °C are outside 0 to 50 °C", v.Opens.Celsius())
	}
	return nil
}

func (s *Screen) check() error {
	if s != nil && !(s.Saves >= 0 && s.Saves < 1) {
		return fmt.Errorf("a screen can't save %g %% of the loss; give 0 to below 100 %%", s.Saves.Percent())
	}
	return nil
}

func (w *WarmBench) check(c Covered) error {
	switch {
	case w == nil:
		return nil
	case !(w.Area > 0) || w.Area > c.FloorArea():
		return fmt.Errorf("a warm bench of %g m² does not fit on a floor of %g m²", float64(w.Area), float64(c.FloorArea()))
	case !(w.Power > 0) || math.IsInf(float64(w.Power), 0):
		return fmt.Errorf("a warm bench of %g W gives no heat; give its power, or leave it out", float64(w.Power))
	case !(w.Root.Celsius() > 0 && w.Root.Celsius() <= 40):
		return fmt.Errorf("roots at %.1f °C are outside 0 to 40 °C", w.Root.Celsius())
	}
	return nil
}

func (b Body) check() error {
	switch {
	case !(b.Air > 0 && b.Floor > 0):
		return errors.New("the heat capacities of air and floor must be above 0 J/m²K; give both")
	case !(b.Coupling >= 0 && b.Edge >= 0 && b.Deep >= 0):
		return errors.New("the heat transfer between air, floor and ground can't be negative; give 0 or more")
	case !(b.Sensible >= 0 && b.Sensible <= 1 && b.ToAir >= 0 && b.ToAir <= 1 && b.Capture >= 0 && b.Capture <= 1):
		return errors.New("the shares of the sun's heat must be from 0 to 1")
	case !(b.PotHours > 0 && b.PotSun >= 0):
		return errors.New("a pot's lag must be above 0 hours and its warming by the sun 0 or more")
	}
	return nil
}

// Accepts returns an error if the setting's steps are out of order, or if a level is so high
// that the vents would let the heat out.
func (c Covered) Accepts(s Setting) error {
	if err := s.Check(); err != nil {
		return err
	}
	if c.Vent == (Vent{}) {
		return nil
	}
	for _, step := range s.Steps {
		if !step.Off && !step.Level.Below(c.Vent.Opens) {
			return fmt.Errorf("a level of %.1f °C is not below %.1f °C, where the vents open and let the heat out; lower the level or open the vents later", step.Level.Celsius(), c.Vent.Opens.Celsius())
		}
	}
	return nil
}
