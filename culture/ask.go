package culture

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"eyeup/growth"
	"eyeup/quantity"
)

// Figure returns the figure with a key, such as "sprout.base"; false if it is unknown.
func (k *Kind) Figure(name string) (Figure, bool) {
	f, ok := k.figures[name]
	return f, ok
}

// Figures returns all known figures, in the order of a season.
func (k *Kind) Figures() []NamedFigure {
	var all []NamedFigure
	for _, key := range keys {
		if f, ok := k.figures[key.name]; ok {
			all = append(all, NamedFigure{key.name, key.meaning, f})
		}
	}
	return all
}

// Facts returns what is known besides the figures: cautions, conflicting advice.
func (k *Kind) Facts() []Fact { return slices.Clone(k.facts) }

// Lack is a missing figure that a season would use.
type Lack struct {
	Key     string
	Meaning string
	Blocks  bool // without it no season of this kind can be computed; otherwise the effect is ignored
}

// Lacks returns the figures that a season would use and that are missing.
func (k *Kind) Lacks() []Lack {
	var all []Lack
	for _, key := range keys {
		if _, known := k.figures[key.name]; !known && k.wants(key) {
			all = append(all, Lack{key.name, key.meaning, key.blocks})
		}
	}
	return all
}

// wants reports whether a season of this kind would use the figure.
func (k *Kind) wants(key key) bool {
	group, part, _ := strings.Cut(key.name, ".")
	flowers := k.Goal == ForFlower || k.Goal == ForFruit
	switch {
	case group == "flower" && !flowers:
		return false
	case group == "pot" && !flowers:
		return false
	case group == "pot" && part != "floor":
		return potOf(k.StartIn) == part || potOf(k.PotOnIn) == part
	case group == "day" && k.has("days"):
		return false // said not to respond to day length
	}
	return key.dueFor(k.Life)
}

// potOf returns the key of the pot limit that applies to a container of package supply.
func potOf(container string) string {
	switch {
	case strings.HasPrefix(container, "tray"):
		return "cell"
	case strings.HasPrefix(container, "no"):
		return "gallon"
	}
	return "small"
}

func (k *Kind) has(about string) bool {
	return slices.ContainsFunc(k.facts, func(f Fact) bool { return f.About == about })
}

// FlowerDays returns the days at the best temperature from emergence to first flower for a
// timing: early, mid, late, or empty (unknown), which counts as mid. A kind without timings
// has one figure for all. NaN if unknown.
func (k *Kind) FlowerDays(timing string) float64 {
	if f, ok := k.figures["flower."+cmp.Or(timing, "mid")]; ok {
		return f.Value
	}
	return k.number("flower.mid")
}

// PotLimit returns the share of the way to flower at which a pot of the given volume begins to
// hold a plant back, for growth.PotShare. General figures say which volumes count as a cell, a
// pot of 4 to 5 inches and a trade gallon. Larger pots count as a trade gallon (2.8 L). NaN if
// unknown.
func (k *Kind) PotLimit(content quantity.Volume) float64 {
	switch {
	case content < quantity.Volume(Usual("pot.cell_to"))*quantity.Litre:
		return k.number("pot.cell")
	case content < quantity.Volume(Usual("pot.small_to"))*quantity.Litre:
		return k.number("pot.small")
	}
	return k.number("pot.gallon")
}

// PotShare returns the share of full growth at a progress in a pot of the given volume. If the
// limit is unknown it is 1, and Lacks names the limit.
func (k *Kind) PotShare(progress float64, content quantity.Volume) float64 {
	return counted(growth.PotShare(progress, k.PotLimit(content), k.RateFloor))
}

// DayLengthShare returns the share of full progress to flower at a day length in hours; 1 if
// unknown or if the kind does not respond.
func (k *Kind) DayLengthShare(hours float64) float64 {
	least := k.DayLength.Least
	if math.IsNaN(least) {
		least = 0
	}
	return counted(least + (1-least)*growth.DayLengthShare(hours, k.DayLength.None, k.DayLength.Full))
}

// LightShare returns the share of full growth at a daily light of dli mol/m²; 1 if unknown.
func (k *Kind) LightShare(dli float64) float64 {
	return counted(growth.LightShare(dli, k.Light.Enough))
}

// LightFor returns the daily light, in mol/m², that leaves need at a mean temperature of the
// day, in °C, so that they don't stretch. It is proportional to the temperature above the base
// of growth and equals the least light at the kind's usual temperature under glass (the mean
// of day and night). It is 0 at or below the base, and if the figures are unknown. Studies of
// pot plants show that warmer plants need more light; the straight line is an assumption.
func (k *Kind) LightFor(mean float64) float64 {
	base := k.Grow.Base.Celsius()
	usual := (k.number("grow.day") + k.number("grow.night")) / 2
	asked := k.Light.Least * (mean - base) / (usual - base)
	if math.IsNaN(asked) || usual <= base {
		return 0
	}
	return max(asked, 0)
}

// counted returns 1 for a share whose figures are unknown.
func counted(share float64) float64 {
	if math.IsNaN(share) {
		return 1
	}
	return share
}

// Work returns the minutes of a step for one plant: round, wake, divide, start, prick, pot_up,
// hand_on, harden, plant, lift or pack; false if unknown.
func (k *Kind) Work(step string) (float64, bool) {
	f, ok := k.figures["work."+step]
	return f.Value, ok
}

// Germination returns the share of seeds that give normal seedlings at a temperature,
// interpolated linearly between the tested temperatures; false outside them or without data.
func (k *Kind) Germination(celsius float64) (quantity.Share, bool) {
	before, after := math.Inf(-1), math.Inf(1)
	var low, high float64
	for name, f := range k.figures {
		t, ok := tried(name)
		if !ok {
			continue
		}
		if t <= celsius && t >= before {
			before, low = t, f.Value
		}
		if t >= celsius && t <= after {
			after, high = t, f.Value
		}
	}
	switch {
	case math.IsInf(before, 0) || math.IsInf(after, 0):
		return 0, false
	case before == after:
		return quantity.Share(low), true
	}
	return quantity.Share(low + (high-low)*(celsius-before)/(after-before)), true
}

// tried returns the temperature in a key such as "seed.20C".
func tried(name string) (float64, bool) {
	text, ok := strings.CutPrefix(name, "seed.")
	if !ok {
		return 0, false
	}
	t, err := strconv.ParseFloat(strings.TrimSuffix(text, "C"), 64)
	return t, err == nil
}

func (k *Kind) number(name string) float64 {
	if f, ok := k.figures[name]; ok {
		return f.Value
	}
	return math.NaN()
}

func (k *Kind) temperature(name string) quantity.Temperature {
	return quantity.Celsius(k.number(name))
}
