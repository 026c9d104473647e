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

// Figure returns the figure under a key, such as "sprout.base". It is false where it is
// not known.
func (k *Kind) Figure(name string) (Figure, bool) {
	f, ok := k.figures[name]
	return f, ok
}

// Figures returns all that is known as numbers, in the order of a season.
func (k *Kind) Figures() []NamedFigure {
	var all []NamedFigure
	for _, key := range keys {
		if f, ok := k.figures[key.name]; ok {
			all = append(all, NamedFigure{key.name, key.meaning, f})
		}
	}
	return all
}

// Facts returns what is known beside the numbers: cautions, conflicts of advice.
func (k *Kind) Facts() []Fact { return slices.Clone(k.facts) }

// Lack is a figure that a season would use and that is not known.
type Lack struct {
	Key     string
	Meaning string
	Blocks  bool // without it no season of this kind can be reckoned; otherwise the effect is left out
}

// Lacks returns what a season would use of this kind and does not find.
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
		return false // said to take no notice of the length of days
	}
	return key.dueFor(k.Life)
}

// potOf returns which pot limit counts in a container of package supply.
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

// FlowerDays returns the days at best temperature from up to first flower for a timing:
// early, mid, late, or empty where it is not known, which is taken as mid. A kind whose
// timings are not told apart has one figure for all. Not-a-number where nothing is known.
func (k *Kind) FlowerDays(timing string) float64 {
	if f, ok := k.figures["flower."+cmp.Or(timing, "mid")]; ok {
		return f.Value
	}
	return k.number("flower.mid")
}

// PotLimit returns the share of the way to flower at which a pot of the given content
// begins to hold a plant back, for growth.PotShare: a cell, a pot of 4 to 5 inches or a trade
// gallon, which are told apart by general figures. Pots above a trade gallon (2.8 L) are
// taken as one. Not-a-number where it is not known.
func (k *Kind) PotLimit(content quantity.Volume) float64 {
	switch {
	case content < quantity.Volume(Usual("pot.cell_to"))*quantity.Litre:
		return k.number("pot.cell")
	case content < quantity.Volume(Usual("pot.small_to"))*quantity.Litre:
		return k.number("pot.small")
	}
	return k.number("pot.gallon")
}

// PotShare returns the share of growth left at a progress in a pot of the given content.
// Where the limit is not known the effect is left out, and Lacks names it.
func (k *Kind) PotShare(progress float64, content quantity.Volume) float64 {
	return counted(growth.PotShare(progress, k.PotLimit(content), k.RateFloor))
}

// DayLengthShare returns the share of progress to flower in days of so many hours, 1
// where it is not known or the kind takes no notice.
func (k *Kind) DayLengthShare(hours float64) float64 {
	least := k.DayLength.Least
	if math.IsNaN(least) {
		least = 0
	}
	return counted(least + (1-least)*growth.DayLengthShare(hours, k.DayLength.None, k.DayLength.Full))
}

// LightShare returns the share of growth in a daily light of dli mol/m², 1 where it is
// not known.
func (k *Kind) LightShare(dli float64) float64 {
	return counted(growth.LightShare(dli, k.Light.Enough))
}

// LightFor returns the daily light, in mol/m², that leaves ask for at a mean temperature of a
// day, in °C, so as not to be drawn: as much above the base of growth as warmth goes, light
// must go with it, from the least light at the kind's usual warmth under glass (the middle of
// its day and its night). 0 at or below the base, and where the figures are not known. That
// light and warmth must keep in step is known of pot plants; the line is an assumption.
func (k *Kind) LightFor(mean float64) float64 {
	base := k.Grow.Base.Celsius()
	usual := (k.number("grow.day") + k.number("grow.night")) / 2
	asked := k.Light.Least * (mean - base) / (usual - base)
	if math.IsNaN(asked) || usual <= base {
		return 0
	}
	return max(asked, 0)
}

// counted leaves out an effect whose figures are not known.
func counted(share float64) float64 {
	if math.IsNaN(share) {
		return 1
	}
	return share
}

// Work returns the minutes that a step takes for one: round, wake, divide, start, prick,
// pot_up, hand_on, harden, plant, lift or pack. It is false where it is not known.
func (k *Kind) Work(step string) (float64, bool) {
	f, ok := k.figures["work."+step]
	return f.Value, ok
}

// Germination returns the share of seeds that give normal seedlings at a temperature,
// on lines between the temperatures tried. It is false outside them, or where none is known.
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

// tried reads the temperature in a key such as "seed.20C".
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
