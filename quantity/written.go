package quantity

import (
	"math"
	"strconv"
	"time"
	"unicode/utf8"
)

// Written returns the shortest text that ParseTemperature reads back as exactly t: what was
// typed as 42F is written as 42 F.
func (t Temperature) Written() string {
	best := ""
	for _, u := range temperatures.units {
		name, amount := u.names[0], t.celsius
		if name == "F" {
			amount = t.Fahrenheit()
		}
		best = shorter(best, exact(amount, name, func(text string) bool {
			read, err := ParseTemperature(text)
			return err == nil && read == t
		}))
	}
	return best
}

// Written returns the shortest text that ParseDifference reads back as exactly d.
func (d Difference) Written() string { return written(d, &differences, ParseDifference) }

// Written returns the shortest text that ParseLength reads back as exactly l.
func (l Length) Written() string { return written(l, &lengths, ParseLength) }

// Written returns the shortest text that ParseArea reads back as exactly a.
func (a Area) Written() string { return written(a, &areas, ParseArea) }

// Written returns the shortest text that ParseVolume reads back as exactly v.
func (v Volume) Written() string { return written(v, &volumes, ParseVolume) }

// Written returns the shortest text that ParseMass reads back as exactly m.
func (m Mass) Written() string { return written(m, &masses, ParseMass) }

// Written returns the shortest text that ParsePower reads back as exactly p.
func (p Power) Written() string { return written(p, &powers, ParsePower) }

// Written returns the shortest text that ParseEnergy reads back as exactly e.
func (e Energy) Written() string { return written(e, &energies, ParseEnergy) }

// Written returns the shortest text that ParseConductance reads back as exactly c.
func (c Conductance) Written() string { return written(c, &conductances, ParseConductance) }

// Written returns the shortest text that ParseTransmittance reads back as exactly u.
func (u Transmittance) Written() string { return written(u, &transmittances, ParseTransmittance) }

// Written returns the shortest text that ParsePhotonFlux reads back as exactly f.
func (f PhotonFlux) Written() string { return written(f, &photonFluxes, ParsePhotonFlux) }

// Written returns the shortest text that ParseRate reads back as exactly r.
func (r Rate) Written() string { return written(r, &rates, ParseRate) }

// Written returns the shortest text that ParseShare reads back as exactly s.
func (s Share) Written() string { return written(s, &shares, ParseShare) }

// WrittenDuration returns the shortest text that ParseDuration reads back as exactly d.
func WrittenDuration(d time.Duration) string {
	return shortest(d.Seconds(), &durations, func(text string) bool {
		read, err := ParseDuration(text)
		return err == nil && read == d
	})
}

// Written returns the shortest text that reads back as exactly p.
func (p Price[T]) Written() string {
	best := ""
	for _, u := range measureOf[T]().units {
		unit := p.Currency + "/" + u.names[0]
		best = shorter(best, exact(p.Per(T(u.size)), unit, func(text string) bool {
			read, err := parsePrice[T](text, measureOf[T]())
			return err == nil && read == p
		}))
	}
	return best
}

func measureOf[T ~float64]() *measure {
	switch any(T(0)).(type) {
	case Energy:
		return &energies
	case Mass:
		return &masses
	default:
		return &volumes
	}
}

func written[T ~float64](amount T, m *measure, parse func(string) (T, error)) string {
	return shortest(float64(amount), m, func(text string) bool {
		read, err := parse(text)
		return err == nil && read == amount
	})
}

// shortest tries every unit of m and returns the shortest text that is the same amount.
func shortest(amount float64, m *measure, same func(text string) bool) string {
	best := ""
	for _, u := range m.units {
		best = shorter(best, exact(amount/u.size, u.names[0], same))
	}
	return best
}

// exact writes the amount with as few digits as are the same; empty where none are.
func exact(amount float64, unit string, same func(text string) bool) string {
	if math.IsNaN(amount) || math.IsInf(amount, 0) {
		return ""
	}
	for digits := 1; digits <= 17; digits++ {
		text := plainNumber(amount, digits) + " " + unit
		if same(text) {
			return text
		}
	}
	return ""
}

// plainNumber writes an amount to so many digits, with an exponent only where it is far from one.
func plainNumber(amount float64, digits int) string {
	short := strconv.FormatFloat(amount, 'g', digits, 64)
	if size := math.Abs(amount); size != 0 && (size < 1e-6 || size >= 1e15) {
		return short
	}
	rounded, _ := strconv.ParseFloat(short, 64) // what FormatFloat wrote can be read
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

// shorter returns the shorter of two texts, the first where they are alike; an empty one is no text.
func shorter(a, b string) string {
	if a == "" || b != "" && utf8.RuneCountInString(b) < utf8.RuneCountInString(a) {
		return b
	}
	return a
}
