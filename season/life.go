package season

import (
	"fmt"
	"math"

	"eyeup/culture"
	"eyeup/quantity"
	"eyeup/stock"
	"eyeup/supply"
)

// life is what the figures of a kind come to for one sort of batch: plain numbers, in
// days of the span, °C and square metres, for the loops over every year.
type life struct {
	*culture.Kind
	kind int // index into the rates of a climate
	rest int // day before which warmth does not count

	sprout, eyed float64 // °C·d until half are up; share of it at which eyes show
	flower       float64 // days at best from up to first flower; infinite where it is not raised for flower
	upAfter      int     // for cuttings: days from starting the mother until it is rooted; 0 for others
	pieces       float64 // divisions of a clump, or cuttings of a mother
	never        float64 // share that does not make a plant
	ready        float64 // days at best from up to fit for planting out
	harden       int     // days of hardening after that

	potLimit    float64
	kill, harm  float64 // °C: frost acts at; young leaves are harmed below
	night       float64 // °C: lowest level to hold for leafy plants
	setBack     int     // days that frost sets it back; 0: it is killed
	lightFrom   float64 // °C from which leaves ask for light, not to be drawn
	lightEach   float64 // mol/m² a day that they ask for each kelvin above that
	soilLeafy   float64 // °C at 10 cm
	soilDormant float64

	tray, tight, spaced, bed float64 // m² a plant takes
	cutFor                   int     // days that it flowers where it stays under cover
	prick                    int     // days from up until it stands in its pot
	inTray                   bool    // divisions that wake side by side in trays, and are potted when up
	meets                    float64 // days at best from up until leaves meet

	cells     int    // of the container
	container string // in which it stands until it is planted out, by its name in package supply
	small     []*smallPot
	assumed   []Assumption
}

// lifeKey distinguishes lives: lots with the same key are raised alike.
type lifeKey struct {
	kind   string
	timing stock.Timing
	form   stock.Form
	how    How
}

// lifeOf makes the life of a sort of batch. It fails, with the reason in words, where the
// kind's figures do not suffice.
func lifeOf(k *culture.Kind, key lifeKey, newYear int) (*life, error) {
	if key.form == stock.Tray || key.form == stock.Cutting || key.form == stock.Plant || key.form == stock.Pot {
		return nil, fmt.Errorf("%ss already grow: keep them in the book; the season starts dormant stock and seed", key.form)
	}
	for _, lack := range k.Lacks() {
		if lack.Blocks {
			return nil, fmt.Errorf("not known for %s: %s", k.Name, lack.Meaning)
		}
	}
	container := k.PotOnIn
	if container == "" {
		container = k.StartIn
	}
	pot, err := supply.ContainerNamed(container)
	if err != nil {
		return nil, fmt.Errorf("%s is raised in %q: %w", k.Name, container, err)
	}
	l := &life{
		Kind: k, rest: newYear + int(orElse(k.RestUntil, 0)),
		sprout: k.Sprout.Sum, eyed: k.Sprout.Eyed,
		flower: k.FlowerDays(string(key.timing)), ready: orElse(k.Ready, 0), harden: int(orElse(k.HardenDays, culture.Usual("plant.harden"))),
		potLimit: orElse(k.PotLimit(quantity.Volume(pot.Volume.Value)*quantity.Litre), math.Inf(1)),
		kill:     celsiusOr(k.Frost.Kills, culture.Usual("cold.dead")), harm: celsiusOr(k.ColdDamage, culture.Usual("cold.damage")), night: celsiusOr(k.Lowest, culture.Usual("cold.night")),
		soilLeafy: celsiusOr(k.Soil.Leafy, culture.Usual("plant.soil_leafy")), soilDormant: soilAllows(k),
		tray: float64(k.Bench.Tray), tight: float64(k.Bench.Tight), spaced: float64(k.Bench.Spaced), bed: float64(k.Bench.InBed),
		prick: int(orElse(k.SowToPot, 0)), container: container, cells: pot.Cells,
	}
	l.lightFrom = celsiusOr(k.Grow.Base, 0)
	l.lightEach = k.LightFor(l.lightFrom + 1)
	l.meets = orElse(k.Bench.Meet, culture.Usual("bench.meet")) * orElse(l.flower, orElse(k.Ready, culture.Usual("plant.ready")))
	l.cutFor = int(orElse(k.CutFor, culture.Usual("flower.cut_for")))
	if k.Life == culture.Soak {
		l.rest = 0 // dry corms wait for water, not for the year
	}
	if math.IsNaN(l.flower) {
		if k.Goal == culture.ForFlower || k.Goal == culture.ForFruit {
			return nil, fmt.Errorf("not known for %s: when it flowers", k.Name)
		}
		l.flower = math.Inf(1)
	}
	if k.Frost.Leafy == culture.SetBack {
		l.setBack = int(7 * orElse(k.Frost.Weeks, culture.Usual("cold.back")))
	}
	l.assumed = assumptions(k)
	err = l.by(key)
	l.small = l.smallPots(key)
	return l, err
}

// by fits a life to how its plants come from the stock.
func (l *life) by(key lifeKey) error {
	figure := func(name string) float64 {
		f, known := l.Figure(name)
		if !known {
			return math.NaN()
		}
		return f.Value
	}
	switch {
	case key.how == FromCuttings:
		l.pieces, l.never = figure("cut.each"), figure("cut.lost")
		l.upAfter = int(figure("cut.first") + figure("cut.root"))
		if math.IsNaN(l.pieces+l.never) || l.upAfter <= 0 {
			return fmt.Errorf("not known for %s: how it is raised from cuttings", l.Name)
		}
		l.tray /= l.pieces
		if l.Frost.Cutting == culture.Dead {
			l.setBack = 0 // there is no tuber yet to come again from
		}
	case key.how == Divided:
		l.pieces, l.never = figure("divide.pieces"), float64(l.Sprout.Never)
		l.tray /= l.pieces
	case key.form == stock.Division:
		l.never, l.tray = float64(l.Sprout.Never), orElse(figure("divide.tray"), l.tray)
		l.inTray = l.Life == culture.Store
	}
	return nil
}

// assumptions names what the dates of a kind rest on that nobody has measured.
func assumptions(k *culture.Kind) []Assumption {
	var named []Assumption
	for _, part := range []struct{ key, words string }{
		{"sprout.sum", "how long it takes to come up"}, {"grow.best", "how fast it grows"},
		{"flower.mid", "how long it takes to flower"},
	} {
		if f, ok := k.Figure(part.key); ok && f.Sure != culture.Measured && f.Sure != culture.Own {
			named = append(named, Assumption{k.Name, part.words, string(f.Sure)})
		}
	}
	for _, f := range k.Figures() {
		if f.Sure == culture.Own {
			named = append(named, Assumption{k.Name, f.Meaning, string(culture.Own)})
		}
	}
	for _, lack := range k.Lacks() {
		named = append(named, Assumption{k.Name, lack.Meaning, "unknown"})
	}
	return named
}

func orElse(x, unknown float64) float64 {
	if math.IsNaN(x) {
		return unknown
	}
	return x
}

func celsiusOr(t quantity.Temperature, unknown float64) float64 { return orElse(t.Celsius(), unknown) }
