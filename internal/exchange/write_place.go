package exchange

import (
	"math"
	"time"

	"eyeup/place"
	"eyeup/quantity"
)

// writtenPlace is the content of one [[place]]; empty fields are left out.
type writtenPlace struct {
	Name        string            `toml:"name"`
	Sort        string            `toml:"sort"`
	Temperature any               `toml:"temperature,omitempty"`
	Humidity    any               `toml:"humidity,omitempty"`
	Logged      string            `toml:"logged,omitempty"`
	Daylight    string            `toml:"daylight,omitempty"`
	Crates      int               `toml:"crates,omitempty"`
	Shelf       string            `toml:"shelf,omitempty"`
	Length      string            `toml:"length,omitempty"`
	Width       string            `toml:"width,omitempty"`
	Eaves       string            `toml:"eaves,omitempty"`
	Ridge       string            `toml:"ridge,omitempty"`
	Cover       string            `toml:"cover,omitempty"`
	U           string            `toml:"u,omitempty"`
	Light       string            `toml:"light,omitempty"`
	AirChanges  string            `toml:"air_changes,omitempty"`
	Bench       string            `toml:"bench,omitempty"`
	Spacing     string            `toml:"spacing,omitempty"`
	Heater      map[string]string `toml:"heater,inline,omitempty"`
	Vent        map[string]string `toml:"vent,inline,omitempty"`
	Screen      map[string]string `toml:"screen,inline,omitempty"`
	WarmBench   map[string]string `toml:"warm_bench,inline,omitempty"`
	Lamps       map[string]string `toml:"lamps,inline,omitempty"`
	Heat        string            `toml:"heat,omitempty"`
	Levels      []string          `toml:"levels,omitempty"`
}

func (p Place) written() writtenPlace {
	w := writtenPlace{Name: p.Name, Sort: string(p.Sort), Crates: p.Crates, Logged: p.LogFile}
	switch model := p.Model.(type) {
	case place.Steady:
		w.steady(model)
	case place.Covered:
		w.covered(model, p)
	}
	switch {
	case p.Sort == Room:
		w.Shelf = p.Bench.Written()
	case p.Bench > 0:
		w.Bench = p.Bench.Written()
	}
	if p.Spacing > 0 {
		w.Spacing = p.Spacing.Written()
	}
	for _, level := range p.Levels {
		text := "off"
		if len(level.Steps) > 0 {
			text = level.Steps[0].Level.Written()
		}
		w.Levels = append(w.Levels, text)
	}
	return w
}

func (w *writtenPlace) steady(s place.Steady) {
	w.Temperature = oneOrMonths(s.Temperature, quantity.Temperature.Written)
	if !math.IsNaN(float64(s.Humidity[0])) {
		w.Humidity = oneOrMonths(s.Humidity, quantity.Share.Written)
	}
	if s.Daylight > 0 {
		w.Daylight = s.Daylight.Written()
	}
	if s.HeatPerKelvin > 0 {
		w.Heat = s.HeatPerKelvin.Written()
	}
	w.Lamps = writtenLamps(s.Lamps)
}

// oneOrMonths writes one measure if it is the same all year, else all twelve.
func oneOrMonths[T comparable](months [12]T, written func(T) string) any {
	for _, one := range months {
		if one != months[0] {
			return writtenMonths(months, written)
		}
	}
	return written(months[0])
}

func (w *writtenPlace) covered(c place.Covered, p Place) {
	usual := place.Covered{}
	if p.Sort == Frame {
		usual = place.Frame(p.Bench)
	} else {
		w.Length, w.Width, w.Eaves, w.Ridge = c.Length.Written(), c.Width.Written(), c.Eaves.Written(), c.Ridge.Written()
		w.AirChanges = c.AirChanges.Written()
	}
	switch {
	case c.Cover == usual.Cover:
	case c.Cover.Name == ownCover:
		w.U, w.Light = c.Cover.U.Written(), c.Cover.Light.Written()
	default:
		w.Cover = c.Cover.Name
	}
	if c.Vent != usual.Vent {
		w.Vent = writtenVent(c.Vent)
	}
	if h := c.Heater; h != nil {
		w.Heater = map[string]string{"power": h.Power.Written(), "fuel": h.Fuel}
		if h.Efficiency > 0 {
			w.Heater["efficiency"] = h.Efficiency.Written()
		}
	}
	if c.Screen != nil {
		w.Screen = map[string]string{"saves": c.Screen.Saves.Written()}
	}
	if b := c.WarmBench; b != nil {
		w.WarmBench = map[string]string{"area": b.Area.Written(), "root": b.Root.Written(), "power": b.Power.Written()}
	}
	w.Lamps = writtenLamps(c.Lamps)
}

func writtenVent(v place.Vent) map[string]string {
	w := map[string]string{"opens": v.Opens.Written(), "by": "thermostat"}
	if v.ByHand {
		w["by"] = "hand"
	}
	if v.Most > 0 {
		w["most"] = v.Most.Written()
	}
	return w
}

func writtenLamps(l *place.Lamps) map[string]string {
	if l == nil {
		return nil
	}
	burning := time.Duration(math.Round(l.Hours * float64(time.Hour)))
	return map[string]string{
		"area": l.Area.Written(), "light": l.Light.Written(), "hours": quantity.WrittenDuration(burning), "power": l.Power.Written(),
	}
}
