package reckon

import (
	"fmt"
	"io"

	"eyeup/culture"
	"eyeup/internal/report"
	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/supply"
)

// MixQuestion asks how much mix it takes to fill containers.
type MixQuestion struct {
	Container string          // id, such as no1 or tray50
	From      string          // container of the plants that are potted up; or empty
	Count     int             // containers
	Form      string          // clump, division, corm, seed, cutting; or empty
	Holds     quantity.Volume // measured to the brim, in place of ours; or 0
	Bag       Bag
	Nitrogen  quantity.Share // of a soluble feed; or 0
	Why       bool
}

// MixAnswer is the mix to get.
type MixAnswer struct {
	Container string       `json:"container"`
	Name      string       `json:"name"`
	From      string       `json:"from,omitempty" jsonschema_description:"container of the plants that are potted up"`
	Count     int          `json:"count"`
	Form      string       `json:"form,omitempty" jsonschema_description:"what each holds"`
	Mix       odds.Amount  `json:"mix_litres" jsonschema_description:"loose, before it settles"`
	Bag       float64      `json:"bag_litres" jsonschema_description:"as printed on the bag"`
	Swells    float64      `json:"bag_swells" jsonschema_description:"volume loose to volume printed; 1 for a loose bag"`
	Bags      int          `json:"bags" jsonschema_description:"whole bags, enough at even odds"`
	Most      int          `json:"bags_at_most" jsonschema_description:"whole bags, enough in nine cases of ten"`
	Water     odds.Amount  `json:"watering_litres" jsonschema_description:"one watering of them all"`
	SlowFeed  odds.Amount  `json:"slow_feed_grams" jsonschema_description:"slow-release feed for all the mix, where it has none"`
	Feed      *odds.Amount `json:"feed_grams,omitempty" jsonschema_description:"soluble feed for one watering of plants in leaf"`
	Bench     odds.Amount  `json:"bench_m2" jsonschema_description:"pot-tight"`

	Figures []FigureAnswer `json:"figures,omitempty"`

	isPot, isTray bool
}

// MixCaution is the safety warning for handling mix.
const MixCaution = "Mix is dusty and may carry Legionella: open the bag away from your face, damp it before tipping it, wear a mask and gloves, air the place, and wash your hands."

// Mix answers a MixQuestion.
func Mix(q MixQuestion) (*MixAnswer, error) {
	need, err := q.need()
	if err != nil {
		return nil, err
	}
	bag := q.Bag.sold()
	bags, err := bag.For(need.Litres)
	if err != nil {
		return nil, err
	}
	a := &MixAnswer{
		Container: q.Container, Name: need.Container.Name, From: q.From, Count: q.Count, Form: q.Form,
		Mix: report.RoundedAmount(need.Litres, 1), Bag: *report.Rounded(q.Bag.Volume.Litres(), 2), Swells: bag.Swells, Bags: bags.Get, Most: bags.High,
		Water: report.RoundedAmount(need.Water(), 1), SlowFeed: report.RoundedAmount(supply.SlowFeed(need.Litres), 0), Bench: report.RoundedAmount(need.Bench(), 3),
	}
	if q.Nitrogen != 0 {
		grams, err := supply.LiquidFeed(need.Water().Middle, float64(q.Nitrogen))
		if err != nil {
			return nil, err
		}
		grams = report.RoundedAmount(grams, 1)
		a.Feed = &grams
	}
	a.isTray = need.Container.Shape == supply.Open && q.Form != ""
	a.isPot = need.Container.Cells == 1 && need.Container.Shape != supply.Open
	if q.Why {
		a.Figures = FigureAnswers(need.Figures())
	}
	return a, nil
}

func (q MixQuestion) need() (supply.Need, error) {
	c, err := supply.ContainerNamed(q.Container)
	if err != nil {
		return supply.Need{}, err
	}
	if q.Holds != 0 {
		if c, err = c.Holding(q.Holds); err != nil {
			return supply.Need{}, err
		}
	}
	if q.From == "" {
		return c.Mix(q.Count, q.Form)
	}
	if q.Form != "" {
		return supply.Need{}, fmt.Errorf("a plant potted up from %s is no %s; give --from or --form", q.From, q.Form)
	}
	return c.PotUp(q.From, q.Count)
}

// Print writes the answer for the grower.
func (a *MixAnswer) Print(w io.Writer, units quantity.System) {
	p := report.NewPage(w)
	p.Line(fmt.Sprintf("Mix for %d × %s%s", a.Count, a.Name, a.with()))
	p.Line("")
	volume := func(litres float64) string { return units.Volume(quantity.Volume(litres) * quantity.Litre) }
	p.Line(fmt.Sprintf("  loose mix      %s (%s to %s)", volume(a.Mix.Middle), volume(a.Mix.Low), volume(a.Mix.High)))
	p.Line(fmt.Sprintf("  bags           %d of %s%s%s", a.Bags, volume(a.Bag), a.swelling(), MoreBags(a.Bags, a.Most)))
	p.Line("  each watering  " + watering(a.Water, units))
	if a.Bench.Middle > 0 {
		p.Line(fmt.Sprintf("  bench          %s%s", units.Area(quantity.Area(a.Bench.Middle)), a.spacing()))
	}
	p.Line(fmt.Sprintf("  slow feed      %s, where the mix has none; its label goes before this", units.Mass(quantity.Mass(a.SlowFeed.Middle)*quantity.Gram)))
	if a.Feed != nil {
		p.Line(fmt.Sprintf("  soluble feed   %s to a watering, for plants in leaf", units.Mass(quantity.Mass(a.Feed.Middle)*quantity.Gram)))
	}
	p.Line("")
	p.Wrap("", MixCaution)
	printWhy(p, a.Figures, units)
}

func (a *MixAnswer) with() string {
	switch {
	case a.From != "":
		return ", potting up from " + a.From
	case a.isTray:
		return fmt.Sprintf(", %ss side by side in each", a.Form)
	case a.Form != "":
		return ", each with a " + a.Form
	}
	return ""
}

// watering writes an amount of water in litres or US gallons.
func watering(litres odds.Amount, units quantity.System) string {
	name, unit := "L", quantity.Litre
	if units == quantity.US {
		name, unit = "gal", quantity.USGallon
	}
	a := litres.Times(float64(quantity.Litre / unit))
	return fmt.Sprintf("%.1f %s (%.1f to %.1f)", a.Middle, name, a.Low, a.High)
}

func (a *MixAnswer) spacing() string {
	if a.isPot {
		return " pot-tight; about twice that once leaves meet"
	}
	return ""
}

func (a *MixAnswer) swelling() string {
	if a.Swells > 1 {
		return fmt.Sprintf(" compressed, swelling %.2g times", a.Swells)
	}
	return ""
}

// FigureAnswers converts figures to answers, with their range, certainty and source.
func FigureAnswers(figures []culture.NamedFigure) []FigureAnswer {
	all := []FigureAnswer{}
	for _, f := range figures {
		all = append(all, FigureAnswer{f.Key, f.Meaning, f.Low, f.Value, f.High, string(f.Unit), string(f.Sure), f.Source})
	}
	return all
}

// printWhy prints figures with their sources, where they were asked for.
func printWhy(p *report.Page, figures []FigureAnswer, units quantity.System) {
	if len(figures) > 0 {
		p.Line("")
	}
	for _, f := range figures {
		value, unit := inUnits(f.Value, f.Unit, units)
		low, _ := inUnits(f.Low, f.Unit, units)
		high, _ := inUnits(f.High, f.Unit, units)
		amount := value
		if f.Low != f.High {
			amount = fmt.Sprintf("%s (%s to %s)", value, low, high)
		}
		p.Wrap("  ", fmt.Sprintf("%s: %s %s, %s", f.Meaning, amount, unit, f.Sure))
		p.Wrap("    ", f.Key+" · "+f.Source)
	}
}

// Bag is how mix or packing is sold: the volume printed on it, and how many times that it
// makes. Swells 0 stands for a loose bag; Bale for a compressed one that swells as most do.
type Bag struct {
	Volume quantity.Volume
	Swells float64
	Bale   bool
}

func (b Bag) sold() supply.Bag {
	switch {
	case b.Swells != 0:
		return supply.Bag{Volume: b.Volume, Swells: b.Swells}
	case b.Bale:
		return supply.Compressed(b.Volume)
	}
	return supply.Loose(b.Volume)
}
