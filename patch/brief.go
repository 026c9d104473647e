package patch

import (
	"fmt"
	"math"

	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/stock"
)

// Wish is how much a variety is wanted.
type Wish string

// The wishes, strongest first.
const (
	Must  Wish = "must have"
	Would Wish = "would like"
	Could Wish = "could go"
)

// Wishes lists the wishes, strongest first.
func Wishes() []Wish { return []Wish{Must, Would, Could} }

// Brief is the input for a planting list.
type Brief struct {
	Room      quantity.Area // area of the patch without paths; 0: only Places is a limit
	Places    int           // most plants, whatever room each takes; 0: only Room is a limit
	Varieties []Variety
	Mixes     []Mix
	Low, Tall quantity.Length // up to Low a variety is low, from Tall on tall; 0 if no mix uses it
}

// Variety is one variety that may be planted, and its stock.
type Variety struct {
	stock.Variety
	Flower string // the form of its flower as a word, such as ball; empty: unknown
	Family string // its colour as a word; empty: FamilyOf its colour

	Wish    Wish
	Plant   int             // places wanted
	Least   int             // fewest worth planting; 0 or 1: any number
	Most    int             // most places, if there is room; 0: same as Plant
	Reserve int             // plants kept back as insurance, without a place
	Spacing quantity.Length // from plant to plant

	Hand   odds.Amount // plants to count on if all clumps are cut; NaN if any number can be raised
	Clumps int         // in stock, that can be cut
	Whole  int         // plants in Hand that come from no clump: divisions, corms, potted and bought plants
	Strike bool        // its kind can be raised from cuttings
}

// most returns the most places that the variety may have.
func (v *Variety) most() int { return max(v.Plant, v.Most) }

// area returns the area of one plant in m².
func (v *Variety) area() float64 { return float64(v.Spacing.Times(v.Spacing)) }

// sure returns the plants available in nine cases of ten; false if any number can be raised.
func (v *Variety) sure() (int, bool) {
	if math.IsNaN(v.Hand.Low) {
		return 0, false
	}
	return int(math.Floor(v.Hand.Low + 1e-9)), true
}

// Trait is the property by which a mix groups varieties.
type Trait string

// The traits.
const (
	Colour Trait = "colour"
	Flower Trait = "flower"
	Height Trait = "height"
	Timing Trait = "timing"
)

// Traits lists the traits.
func Traits() []Trait { return []Trait{Colour, Flower, Height, Timing} }

// Mix is a wanted mix of one kind: shares of its places, by a trait.
type Mix struct {
	Kind  string
	By    Trait
	Want  []Share        // the wanted shares; others are free
	Slack quantity.Share // deviation from a share that costs nothing, 0 to 1
}

// Share is a part of a mix, such as red, and its wanted share, 0 to 1.
type Share struct {
	Name string
	Of   quantity.Share
}

// mostPlants is the largest number of one variety accepted.
const mostPlants = 100_000

// Check returns an error if the brief makes no sense.
func (b *Brief) Check() error {
	if b.Room < 0 || b.Places < 0 || math.IsNaN(float64(b.Room)) || math.IsInf(float64(b.Room), 0) {
		return fmt.Errorf("a patch of %v m² and %d places can't be planted; give its area", float64(b.Room), b.Places)
	}
	if b.Room == 0 && b.Places == 0 {
		return fmt.Errorf("the patch has no room; give its area or the number of plants it takes")
	}
	seen := map[[2]string]bool{}
	for i := range b.Varieties {
		v := &b.Varieties[i]
		if err := v.check(b.Room > 0); err != nil {
			return fmt.Errorf("%s (%s): %w", v.Name, v.Kind, err)
		}
		key := [2]string{v.Kind, v.Name}
		if seen[key] {
			return fmt.Errorf("%s (%s) appears twice; give it once", v.Name, v.Kind)
		}
		seen[key] = true
	}
	for _, m := range b.Mixes {
		if err := m.check(b); err != nil {
			return fmt.Errorf("mix of %s by %s: %w", m.Kind, m.By, err)
		}
	}
	return nil
}

func (v *Variety) check(byArea bool) error {
	if _, err := FamilyOf(v.Colour); err != nil {
		return err
	}
	for _, n := range []int{v.Plant, v.Least, v.Most, v.Reserve, v.Clumps, v.Whole} {
		if n < 0 || n > mostPlants {
			return fmt.Errorf("a count of %d; give 0 to %d", n, mostPlants)
		}
	}
	switch {
	case v.Wish != Must && v.Wish != Would && v.Wish != Could:
		return fmt.Errorf("wish %q; give must have, would like or could go", v.Wish)
	case v.Least > v.most():
		return fmt.Errorf("at least %d but at most %d; swap them", v.Least, v.most())
	case v.Most > 0 && v.Most < v.Plant:
		return fmt.Errorf("%d places wanted but at most %d allowed; change one of them", v.Plant, v.Most)
	case byArea && !(v.Spacing > 0 && v.Spacing < 1000):
		return fmt.Errorf("no spacing between plants; give one")
	case v.Hand.Low < 0 || v.Hand.Low > mostPlants:
		return fmt.Errorf("%v plants to count on; give 0 to %d", v.Hand.Low, mostPlants)
	}
	return nil
}

func (m *Mix) check(b *Brief) error {
	if !(m.Slack >= 0 && m.Slack <= 1) {
		return fmt.Errorf("a slack of %v; give 0 to 100%%", float64(m.Slack))
	}
	sum := 0.0
	for _, s := range m.Want {
		if !(s.Of >= 0 && s.Of <= 1) {
			return fmt.Errorf("a share of %v for %s; give 0 to 100%%", float64(s.Of), s.Name)
		}
		sum += float64(s.Of)
	}
	switch {
	case sum > 1+1e-9:
		return fmt.Errorf("the shares come to %.0f%%; make them 100%% or less", sum*100)
	case m.By == Height && !(b.Low > 0 && b.Tall > b.Low):
		return fmt.Errorf("the heights for low and tall are missing; give both")
	}
	return nil
}
