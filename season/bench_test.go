package season

import (
	"testing"

	"eyeup/place"
)

// BenchmarkMake works out the three plans of three lots over some 28 years.
func BenchmarkMake(b *testing.B) {
	brief := waterville(b)
	for b.Loop() {
		if _, err := Make(brief); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkClimate runs the glass at one level through all years and reduces its hours to
// days: the plain sweep, told in nanoseconds for each hour of a place.
func BenchmarkClimate(b *testing.B) {
	brief := waterville(b)
	m := makerOf(b, brief)
	glass := m.placeNamed("glass")
	hours := 0
	for _, h := range brief.Given.Weather {
		hours += len(h.Air)
	}
	for b.Loop() {
		climateOf(brief.Given.Places[glass].Model, place.Steadily(brief.Given.Places[glass].Level[3]), brief.Given.Weather, brief.Given.Site, m.recall.rates)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(hours), "ns/place-hour")
}

// BenchmarkOptions lives one sort of batch through every start and route at one level.
func BenchmarkOptions(b *testing.B) {
	m := makerOf(b, waterville(b))
	at := Levels{0, 0, 3, 0}
	m.options(m.batches[0], at)
	for b.Loop() {
		m.outcomes, m.recall.lived = remembered[outcomeKey, []*outcome]{}, remembered[livedKey, *outcome]{}
		m.options(m.batches[0], at)
	}
}
