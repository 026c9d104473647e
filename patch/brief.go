package patch

import (
	"fmt"
	"math"

	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/stock"
)

// Wish says how much a variety is wanted.
type Wish string

// The wishes, strongest first.
const (
	Must  Wish = "must have"
	Would Wish = "would like"
	Could Wish = "could go"
)

// Wishes lists the wishes, strongest first.
func Wishes() []Wish { return []Wish{Must, Would, Could} }

// Brief is all that a planting list is worked out from.
type Brief struct {
	Room      quantity.Area // of the patch, paths left out; 0: only Places limits it
	Places    int           // most plants in it, whatever room each takes; 0: only Room limits it
	Varieties []Variety
	Mixes     []Mix
	Low, Tall quantity.Length // up to Low a variety is low, from Tall on tall; 0 where no mix asks for it
}

// Variety is one variety that may stand in the patch, and what there is of it.
type Variety struct {
	stock.Variety
	Flower string // the form of its flower in a word, such as ball; empty: not known
	Family string // its colour in a word; empty: by FamilyOf its colour

	Wish    Wish
	Plant   int             // places it is wanted in
	Least   int             // fewer than this are not worth planting; 0 or 1: any number is
	Most    int             // places it may have where there is room; 0: as many as Plant
	Reserve int             // plants kept back as insurance, which take no place
	Spacing quantity.Length // from plant to plant

	Hand   odds.Amount // plants to be counted on, all clumps being cut; not-a-number where as many as wanted are raised
	Clumps int         // in hand, which can be cut
	Whole  int         // plants in Hand that need no clump: divisions, corms, what stands in pots, what was bought
	Strike bool        // cuttings can be struck of its kind
}

// most returns the most places the variety may have.
func (v *Variety) most() int { return max(v.Plant, v.Most) }

// area returns the room one plant takes in m².
func (v *Variety) area() float64 { return float64(v.Spacing.Times(v.Spacing)) }

// sure returns the plants that nine cases in ten give; false where as many are raised as wanted.
func (v *Variety) sure() (int, bool) {
	if math.IsNaN(v.Hand.Low) {
		return 0, false
	}
	return int(math.Floor(v.Hand.Low + 1e-9)), true
}

// Trait is what a mix looks at.
type Trait string

// The traits.
const (
	Colour Trait = "colour"
	Flower Trait = "flower"
	Height Trait = "height"
	Timing Trait = "timing"
)

// Traits lists what a mix may look at.
func Traits() []Trait { return []Trait{Colour, Flower, Height, Timing} }

// Mix is a wished mix of one kind: shares of its places, by a trait.
type Mix struct {
	Kind  string
	By    Trait
	Want  []Share        // the shares wished; what is not named is free
	Slack quantity.Share // by so much a share may be missed at no count, 0 to 1
}

// Share is a part of a mix, such as red, and the share wished of it, 0 to 1.
type Share struct {
	Name string
	Of   quantity.Share
}

// mostPlants is the most of one variety that a list can be worked out for.
const mostPlants = 100_000

// Check returns what makes the brief senseless.
func (b *Brief) Check() error {
	if b.Room < 0 || b.Places < 0 || math.IsNaN(float64(b.Room)) || math.IsInf(float64(b.Room), 0) {
		return fmt.Errorf("a patch of %v m² and %d places can't be planted; give its room", float64(b.Room), b.Places)
	}
	if b.Room == 0 && b.Places == 0 {
		return fmt.Errorf("the patch has no room; give its area or how many plants it takes")
	}
	seen := map[[2]string]bool{}
	for i := range b.Varieties {
		v := &b.Varieties[i]
		if err := v.check(b.Room > 0); err != nil {
			return fmt.Errorf("%s (%s): %w", v.Name, v.Kind, err)
		}
		key := [2]string{v.Kind, v.Name}
		if seen[key] {
			return fmt.Errorf("%s (%s) stands twice; say all of it once", v.Name, v.Kind)
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
		return fmt.Errorf("at least %d but at most %d; turn them round", v.Least, v.most())
	case v.Most > 0 && v.Most < v.Plant:
		return fmt.Errorf("wanted in %d places but in %d at most; give one of them", v.Plant, v.Most)
	case byArea && !(v.Spacing > 0 && v.Spacing < 1000):
		return fmt.Errorf("no spacing from plant to plant; give one")
	case v.Hand.Low < 0 || v.Hand.Low > mostPlants:
		return fmt.Errorf("%v plants to be counted on; give 0 to %d", v.Hand.Low, mostPlants)
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
		return fmt.Errorf("it is not said what is low and what is tall; give both heights")
	}
	return nil
}
