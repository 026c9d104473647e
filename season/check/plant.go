package check

import (
	"math"

	"eyeup/culture"
	"eyeup/growth"
)

// plant is one individual of a batch on its way through a year. Its marks are hours of
// the span, never for what has not come to pass.
type plant struct {
	sprout, flower float64 // warmth and days it wants, against the middle plant

	warmth, progress float64 // °C·d; days at best
	idle             int     // growth is stopped up to this hour
	over             bool    // nothing more is asked of it

	eyed, up, ready, meet, bloom, died int
	touch, full                        int // in a small pot: leaves meet; it begins to hold the plant back
	coldNights                         int // nights too cold for young leaves
	drawn                              int // days under cover too warm for their light
}

// individuals stand for a lot besides its middle plant: from the quickest tenth to the
// slowest in coming up, and as unlike in the days to flower, one not following the other.
var individuals = culture.Individuals()

// flowerSpread is how unlike they are in the days to flower, the standard deviation of the logarithm.
var flowerSpread = culture.Usual("flower.spread")

// lotOf returns the middle plant of a batch and then its individuals.
func lotOf(n *needs) []*plant {
	lot := []*plant{newPlant(1, 1)}
	for _, i := range individuals {
		lot = append(lot, newPlant(
			growth.Lognormal{Middle: 1, Sigma: n.spread}.At(i.Up),
			growth.Lognormal{Middle: 1, Sigma: flowerSpread}.At(i.Flower),
		))
	}
	return lot
}

func newPlant(sprout, flower float64) *plant {
	return &plant{
		sprout: sprout, flower: flower,
		eyed: never, up: never, ready: never, meet: never, touch: never, full: never, bloom: never, died: never,
	}
}

// freezes is the pot, °C, in which what is not yet up is lost.
var freezes = culture.Usual("pot.freezes")

// warm takes a plant that is not up through an hour that counts for so many °C·d.
func (p *plant) warm(hour int, counted float64, n *needs) {
	p.warmth += counted
	want := n.sprout * p.sprout
	if p.eyed == never && come(p.warmth, want*n.eyed) {
		p.eyed = hour
	}
	if p.up == never && come(p.warmth, want) {
		p.up = hour
	}
}

// come reports whether a sum of hours has come to what is wanted, but for the last digits.
func come(sum, want float64) bool { return sum*(1+1e-9) >= want }

// root notes when a cutting stands on its own roots, so many days after its mother was started.
func (p *plant) root(hour, start int, n *needs) {
	if float64(dayOf(hour)-start) >= float64(n.rooted)*p.sprout {
		p.up = hour
	}
}

// leafy reports whether leaves are out in an hour: from the day after coming up.
func (p *plant) leafy(hour int) bool { return p.up != never && dayOf(hour) > dayOf(p.up) }

// chill does to leaves what the coldest hour of a day does: frost takes the whole day, from
// its first hour.
func (p *plant) chill(day int, coldest float64, covered bool, n *needs) {
	if covered && coldest < n.harm-slack {
		p.coldNights++
	}
	switch {
	case coldest > n.kill:
	case n.setBack == 0:
		p.died, p.over = 24*day, true
	default:
		p.idle = 24 * (day + n.setBack)
	}
}

// grow takes a leafy plant through an hour that is worth so many days at best.
func (p *plant) grow(hour int, worth float64, w *way) {
	n := w.needs
	p.progress += worth
	if w.small != nil && p.touch == never && come(p.progress, w.small.touch) {
		p.touch = hour
	}
	if w.small != nil && p.full == never && come(p.progress, w.small.limit) {
		p.full = hour
	}
	if p.ready == never && come(p.progress, n.ready) {
		p.ready = hour
	}
	if p.meet == never && come(p.progress, n.meets) {
		p.meet = hour
	}
	if p.bloom == never && come(p.progress, n.flower*p.flower) {
		p.bloom = hour
	}
}

// inPot returns the share of an hour's growth that its pot, small or not, leaves to a plant: that
// of what it has come to in the middle of the hour.
func (p *plant) inPot(w *way, small bool, worth float64) float64 {
	limit := w.pots
	if small {
		limit = w.small.limit / w.flower
	}
	if math.IsInf(limit, 1) {
		return 1
	}
	share := func(progress float64) float64 { return growth.PotShare(progress/w.flower, limit, w.kind.RateFloor) }
	return share(p.progress + worth/2*share(p.progress))
}

// dayOf returns the day of an hour, never for never.
func dayOf(hour int) int {
	if hour == never {
		return never
	}
	return hour / 24
}
