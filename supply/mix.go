package supply

import (
	"fmt"
	"strings"

	"eyeup/culture"
	"eyeup/odds"
	"eyeup/quantity"
)

// Need is the loose mix needed to fill containers.
type Need struct {
	Container Container
	Count     int         // containers
	Form      string      // form of the plant in each; empty for mix alone
	From      string      // the container whose root ball is moved, when potting up
	Litres    odds.Amount // loose volume, before it settles when watered
}

// Mix returns the loose mix for containers with one individual of a form each: clump,
// division, corm, seed, cutting, or none (""). See Container.Mix.
func Mix(container string, count int, form string) (Need, error) {
	c, err := ContainerNamed(container)
	if err != nil {
		return Need{}, err
	}
	return c.Mix(count, form)
}

// Mix returns the loose mix for the container. Each pot or cell holds one individual of the
// form, an open tray as many as fit side by side.
//
// It is the volume below the gap at the rim, minus what the individuals displace, plus an
// allowance for settling. Ranges of the figures are varied one at a time and combined as
// independent errors. A figure that is off is off for all containers alike, so the spread is
// that of the total. It fails for an unknown form, a negative count, or an individual that
// does not fit.
func (c Container) Mix(count int, form string) (Need, error) {
	b, err := c.body(form)
	if err != nil {
		return Need{}, err
	}
	return c.mix(count, form, b)
}

// PotUp returns the loose mix for potting up plants with the root ball of their previous
// container. It fails as Mix does.
func (c Container) PotUp(from string, count int) (Need, error) {
	old, err := ContainerNamed(from)
	if err != nil {
		return Need{}, err
	}
	ball := old.Volume
	for _, v := range []*float64{&ball.Low, &ball.Value, &ball.High} {
		*v *= old.Filled()
	}
	n, err := c.mix(count, "ball from a "+old.Name, displaced{exactly(1), ball, exactly(1)})
	n.Form, n.From = "", old.ID
	return n, err
}

// Holding returns the container with a volume to the brim that the garden measured itself.
func (c Container) Holding(v quantity.Volume) (Container, error) {
	if !(v > 0) {
		return c, fmt.Errorf("a %s can't hold %g L; give a volume above 0", c.Name, v.Litres())
	}
	c.Volume = exactly(v.Litres())
	c.Volume.Unit, c.Volume.Sure, c.Volume.Source = Litre, culture.Own, "this garden's own"
	return c, nil
}

// Figures returns the figures that the need is based on.
func (n Need) Figures() []culture.NamedFigure {
	all := FiguresOf(n.Container.ID, n.From, n.Form+" displaces", "mix settles")
	if n.Container.Shape == Open {
		all = append(all, FiguresOf(n.Form+" tray", n.Form+" buried")...)
	}
	for i := range all {
		if all[i].Key == n.Container.ID+" volume" {
			all[i].Figure = n.Container.Volume
		}
	}
	return all
}

// displaced is what takes up space in one pot, cell or open tray.
type displaced struct {
	each   culture.Figure // individuals
	litres culture.Figure // volume of one individual
	buried culture.Figure // share of it within the mix
}

// body returns what individuals of a form displace.
func (c Container) body(form string) (displaced, error) {
	if form == "" {
		return displaced{exactly(0), exactly(0), exactly(0)}, nil
	}
	d := displaced{exactly(1), figure(form, "displaces"), exactly(1)}
	if !known(d.litres) {
		return d, fmt.Errorf("it is not known how much mix a %s displaces; give one of: %s", form, strings.Join(formsWith("displaces"), ", "))
	}
	if c.Shape == Open {
		d.each, d.buried = figure(form, "tray"), figure(form, "buried")
		if !known(d.each) {
			return d, fmt.Errorf("it is not known how many %ss stand in a %s; give one of: %s", form, c.Name, strings.Join(formsWith("tray"), ", "))
		}
	}
	return d, nil
}

func (c Container) mix(count int, form string, d displaced) (Need, error) {
	if err := checkCount(count, "containers can't be filled"); err != nil {
		return Need{}, err
	}
	taken := d.each.Value * d.litres.Value * d.buried.Value
	if c.Volume.Value*c.Filled() < taken {
		return Need{}, fmt.Errorf("a %s displaces about %.2g L and a %s is filled with %.2g L; choose a larger container",
			form, taken, c.Name, c.Volume.Value*c.Filled())
	}
	n := float64(count * c.Cells)
	figures := amounts(c.Volume, c.Gap, d.each, d.litres, d.buried, figure("mix", "settles"))
	litres := odds.Combined(figures, func(x []float64) float64 {
		return n * max(0, x[0]*c.filled(x[1])-x[2]*x[3]*x[4]) * (1 + x[5])
	})
	return Need{Container: c, Count: count, Form: form, Litres: litres}, nil
}

// checkCount refuses an impossible count.
func checkCount(count int, what string) error {
	const most = 10_000_000
	if count < 0 || count > most {
		return fmt.Errorf("%d %s; give 0 or more, and at most %d", count, what, most)
	}
	return nil
}
