package check

import (
	"fmt"
	"math"

	"eyeup/culture"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/stock"
	"eyeup/supply"
)

// needs is what the plants of a batch ask for, in the plain numbers of the hours: °C,
// °C·d, days at the best temperature, days and square metres.
type needs struct {
	kind *culture.Kind
	pot  supply.Container // in which a plant stands until it is planted out

	sprout, eyed, spread float64 // °C·d for half to be up; share of it for eyes; sigma
	flower, ready, meets float64 // days at best from up
	rest                 int     // days after the turn of winter
	harden, prick        int     // days
	setBack              int     // days that a frost stops growth; 0: it kills
	kill, harm           float64 // °C
	leafy, dormant       float64 // °C of the soil
	pots                 float64 // share of the way to flower at which the pot begins to hold it back
	cutFor               int     // days that it is cut or picked where it stays under cover
	rooted               int     // cuttings: days from starting the mother; 0 for all else
	pieces               float64 // divisions of a clump, cuttings of a mother; 0 for what is raised whole
	fails                float64 // share that makes no plant

	tray, tight, spaced, bed float64 // m²
	inTray                   bool    // divisions in trays until they are up
}

// smallPot is a pot in which plants begin and are potted up from.
type smallPot struct {
	supply.Container
	limit, touch float64 // days at best from up: it begins to hold it back; leaves meet when it stands pot-tight
}

// smallOf returns the small pot in which plants of a batch begin where they are potted up: the
// kind's own, else a square or a round one that the garden puts a price on.
func smallOf(b *season.Brief, n *needs) *smallPot {
	for _, id := range []string{n.kind.StartIn, "square4half", "round4"} {
		k, err := supply.ContainerNamed(id)
		if err != nil || k.Cells != 1 || k.ID == n.pot.ID || k.ID != n.kind.StartIn && !b.Given.Prices.Pots[id].Known {
			continue
		}
		limit := n.kind.PotLimit(quantity.Volume(k.Volume.Value) * quantity.Litre)
		if limit < n.pots && k.Bench.Value < n.tight {
			return &smallPot{k, limit * n.flower, n.meets * math.Sqrt(k.Bench.Value/n.tight)}
		}
	}
	return nil
}

// hardy is the cold that a hardy kind bears, °C.
var hardy = culture.Usual("cold.hardy")

// slack is what a thermostat may swing below a limit, K.
var slack = culture.Usual("house.slack")

// needsOf reads the figures of a kind for a timing, and for how the plants come from the
// stock. What is not known is left out, as the plan's assumptions say.
func needsOf(b *season.Brief, v stock.Variety, form stock.Form, how season.How) (*needs, error) {
	k, known := b.Given.Kinds(v.Kind)
	if !known {
		return nil, fmt.Errorf("there are no figures for %s", v.Kind)
	}
	id := k.PotOnIn
	if id == "" {
		id = k.StartIn
	}
	pot, err := supply.ContainerNamed(id)
	if err != nil {
		return nil, err
	}
	n := &needs{
		kind: k, pot: pot,
		sprout: k.Sprout.Sum, eyed: k.Sprout.Eyed, spread: k.Sprout.Sigma,
		flower: k.FlowerDays(string(v.Timing)), ready: orElse(k.Ready, 0),
		rest: int(orElse(k.RestUntil, 0)), harden: int(orElse(k.HardenDays, culture.Usual("plant.harden"))), prick: int(orElse(k.SowToPot, 0)),
		kill: orElse(k.Frost.Kills.Celsius(), culture.Usual("cold.dead")), harm: orElse(k.ColdDamage.Celsius(), culture.Usual("cold.damage")),
		leafy: orElse(k.Soil.Leafy.Celsius(), culture.Usual("plant.soil_leafy")),
		pots:  orElse(k.PotLimit(quantity.Volume(pot.Volume.Value)*quantity.Litre), math.Inf(1)),
		tray:  float64(k.Bench.Tray), tight: float64(k.Bench.Tight), spaced: float64(k.Bench.Spaced), bed: float64(k.Bench.InBed),
	}
	n.dormant = n.leafy
	if f, known := k.Figure("plant.soil_dormant"); known {
		n.dormant = f.Low // the least that is advised: what is held against an early start
	}
	if k.Frost.Leafy == culture.SetBack {
		n.setBack = int(7 * orElse(k.Frost.Weeks, culture.Usual("cold.back")))
	}
	n.meets = orElse(k.Bench.Meet, culture.Usual("bench.meet")) * orElse(n.flower, orElse(k.Ready, culture.Usual("plant.ready")))
	n.flower = orElse(n.flower, math.Inf(1)) // not raised for flower
	for _, p := range b.Given.Places {
		if p.Sort == season.Ground {
			if p.Spacing > 0 && k.Life == culture.Store {
				n.bed = float64(p.Spacing) * float64(p.Spacing)
			}
			break
		}
	}
	n.cutFor = int(orElse(k.CutFor, culture.Usual("flower.cut_for")))
	n.from(form, how)
	return n, nil
}

// from fits the needs to how plants come from the stock: a clump that wakes, or a mother,
// takes the room of one until it is cut.
func (n *needs) from(form stock.Form, how season.How) {
	figure := func(key string) float64 {
		f, _ := n.kind.Figure(key)
		return f.Value
	}
	switch {
	case how == season.FromCuttings:
		n.pieces, n.fails = figure("cut.each"), figure("cut.lost")
		n.rooted = int(figure("cut.first") + figure("cut.root"))
		n.tray /= n.pieces
		if n.kind.Frost.Cutting == culture.Dead {
			n.setBack = 0
		}
	case how == season.Divided:
		n.pieces, n.fails = figure("divide.pieces"), float64(n.kind.Sprout.Never)
		n.tray /= n.pieces
	case form == stock.Division:
		n.fails, n.inTray = float64(n.kind.Sprout.Never), n.kind.Life == culture.Store
		if f, known := n.kind.Figure("divide.tray"); known {
			n.tray = f.Value
		}
	}
}

// orElse returns x, or what stands for it where it is not known.
func orElse(x, unknown float64) float64 {
	if math.IsNaN(x) {
		return unknown
	}
	return x
}
