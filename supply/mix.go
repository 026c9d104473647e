package supply

import (
	"fmt"
	"strings"

	"eyeup/culture"
	"eyeup/odds"
)

// Need is how much loose mix it takes to fill containers.
type Need struct {
	Container Container
	Count     int         // containers
	Form      string      // what each holds; empty for mix alone
	From      string      // the container whose ball of mix each holds, when potting up
	Litres    odds.Amount // loose, as it comes from the bag: it settles when watered
}

// Mix returns the loose mix for so many containers, each (or each cell) with one of the
// given form in it: clump, division, corm, seed, cutting, or nothing ("").
//
// It is what lies below the rim's gap, less what the individual displaces, more what
// settling takes. The spread takes each figure's range in turn and adds the effects as
// independent errors are added; it is that of the whole, as a pot or a clump that differs
// from the figure differs in all containers alike. It fails for a container or form that
// is not known, for a count below 0, and where the individual does not fit.
func Mix(container string, count int, form string) (Need, error) {
	c, err := ContainerNamed(container)
	if err != nil {
		return Need{}, err
	}
	b, err := body(form)
	if err != nil {
		return Need{}, err
	}
	return c.mix(count, form, b)
}

// PotUp returns the loose mix for moving so many plants on, each with the ball of mix
// that filled the container it comes from. It fails as Mix does.
func PotUp(from, to string, count int) (Need, error) {
	old, err := ContainerNamed(from)
	if err != nil {
		return Need{}, err
	}
	c, err := ContainerNamed(to)
	if err != nil {
		return Need{}, err
	}
	ball := old.Volume
	for _, v := range []*float64{&ball.Low, &ball.Value, &ball.High} {
		*v *= old.Filled()
	}
	n, err := c.mix(count, "ball from a "+old.Name, ball)
	n.Form, n.From = "", old.ID
	return n, err
}

// Figures returns what the need rests on.
func (n Need) Figures() []culture.NamedFigure {
	return FiguresOf(n.Container.ID, n.From, n.Form+" displaces", "mix settles")
}

// body returns the volume that one individual of a form displaces, in litres.
func body(form string) (culture.Figure, error) {
	if form == "" {
		return culture.Figure{}, nil
	}
	f := figure(form, "displaces")
	if !known(f) {
		return f, fmt.Errorf("it is not known how much mix a %s displaces; give one of: %s", form, strings.Join(formsWith("displaces"), ", "))
	}
	return f, nil
}

func (c Container) mix(count int, form string, b culture.Figure) (Need, error) {
	if count < 0 {
		return Need{}, fmt.Errorf("%d containers can't be filled; give 0 or more", count)
	}
	if c.Volume.Value*c.Filled() < b.Value {
		return Need{}, fmt.Errorf("a %s displaces about %.2g L and a %s is filled with %.2g L; choose a larger container",
			form, b.Value, c.Name, c.Volume.Value*c.Filled())
	}
	settling := figure("mix", "settles")
	n := float64(count * c.Cells)
	litres := odds.Combined(amounts(c.Volume, c.Gap, b, settling), func(x []float64) float64 {
		return n * max(0, x[0]*c.filled(x[1])-x[2]) * (1 + x[3])
	})
	return Need{Container: c, Count: count, Form: form, Litres: litres}, nil
}
