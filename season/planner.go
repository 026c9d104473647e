package season

import (
	"fmt"
	"slices"

	"eyeup/civil"
	"eyeup/culture"
	"eyeup/place"
)

// planner works out plans from a brief. It keeps what all plans share, and shares with other
// makers of the same garden what is remembered of it. Several may ask one at once.
type Planner struct {
	Given       *Given
	Asked       *Asked
	Ports       *Ports
	recall      *recall
	Weeks       int       // of the span
	FirstMonday int       // day of the first Monday
	newYear     int       // day
	summer      int       // midsummer, a day
	taken       []float64 // m² by bench that growing plants take; nil where nothing grows
	OutFrom     int       // the Monday before which nothing leafy is planted out
	wait        float64   // weeks from the average last frost to outFrom
	ends        []int     // day of the first autumn freeze, each year
	batches     []*batch
	left        []NotCovered
	outcomes    remembered[outcomeKey, []*outcome]
	baselines   remembered[sortOf, *outcome]
}

func newPlanner(b *Brief) (*Planner, error) {
	m := barePlanner(b)
	m.gather()
	if len(m.batches) == 0 {
		return m, nil
	}
	return m, m.ground()
}

// barePlanner is a maker that has no batches yet.
func barePlanner(b *Brief) *Planner {
	m := &Planner{Given: &b.Given, Asked: &b.Asked, Ports: &b.Ports, recall: b.Ports.Kept.of(b), left: []NotCovered{}}
	m.FirstMonday = m.day(b.Given.Span.From.Monday())
	if m.FirstMonday < 0 {
		m.FirstMonday += 7
	}
	m.Weeks = (int(b.Given.Span.Days()) - m.FirstMonday + 6) / 7
	m.summer = m.day(midsummer(b.Given.Span, b.Given.Site))
	m.newYear = m.day(newYear(b.Given.Span, b.Given.Site))
	return m
}

// ground finds the patch, when its seasons end, and from when leafy plants go out there.
func (m *Planner) ground() error {
	ground := m.placeOf(Ground)
	if ground < 0 {
		return fmt.Errorf("the garden has no place of sort %q: name the patch, for a season ends there", Ground)
	}
	m.ends = m.autumn(m.climate(ground, place.Off()))
	m.taken = m.takenRoom()
	return m.fixFrostDate()
}

// day returns the day of the span on which d falls.
func (m *Planner) day(d civil.Date) int { return int(d.Sub(m.Given.Span.From)) }

// date returns the date of a day of the span, and no date for never.
func (m *Planner) Date(day int) civil.Date {
	if day == Never {
		return civil.Date{}
	}
	return m.Given.Span.From.AddDays(civil.Days(day))
}

func (m *Planner) placeOf(s Sort) int {
	return slices.IndexFunc(m.Given.Places, func(p Place) bool { return p.Sort == s })
}

func (m *Planner) placeNamed(name string) int {
	return slices.IndexFunc(m.Given.Places, func(p Place) bool { return p.Name == name })
}

// space gives what comes from the store the patch's own spacing.
func (m *Planner) space(l *life) {
	if at := m.placeOf(Ground); at >= 0 && l.Life == culture.Store && m.Given.Places[at].Spacing > 0 {
		l.bed = float64(m.Given.Places[at].Spacing.Times(m.Given.Places[at].Spacing))
	}
}

// climate returns a place at a setting in every year; each is run once.
func (m *Planner) climate(at int, setting place.Setting) *climate {
	if house := m.houseOf(at); house >= 0 {
		return m.climate(house, setting).bench
	}
	return m.recall.climates.get(climateKey{at, exactly(setting)}, func() *climate {
		return climateOf(m.Given.Places[at].Model, setting, m.Given.Weather, m.Given.Site, m.recall.rates)
	})
}

// houseOf returns the house in which a warm bench stands, -1 for all other places.
func (m *Planner) houseOf(at int) int {
	if m.Given.Places[at].Sort != Bench {
		return -1
	}
	return m.placeNamed(m.Given.Places[at].In)
}

// climateAt returns a place at one of its levels, a bench at the level of its house.
func (m *Planner) climateAt(at int, l Levels) *climate {
	if house := m.houseOf(at); house >= 0 {
		return m.climate(house, m.setting(house, l[house])).bench
	}
	return m.climate(at, m.setting(at, l[at]))
}

// autumn returns for each year the first day after midsummer on which it freezes in the
// patch, or the end of the span.
func (m *Planner) autumn(ground *climate) []int {
	ends := make([]int, len(ground.years))
	for i, y := range ground.years {
		ends[i] = len(y.low)
		for day := m.summer; day < len(y.low); day++ {
			if y.low[day] <= 0 {
				ends[i] = day
				break
			}
		}
	}
	return ends
}
