package place

import (
	"testing"

	"eyeup/quantity"
)

// BenchmarkCovered runs the small house at 10 °C through a season of sixteen months.
func BenchmarkCovered(b *testing.B) {
	y := waterville(b)
	runs := 0
	b.ReportAllocs()
	for b.Loop() {
		smallHouse().Run(y.hours[runs%len(y.hours)], y.site, from20January(10))
		runs++
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(runs*len(y.hours[0].Air)), "ns/place-hour")
}

// BenchmarkTooWeak runs it at 18 °C, where 6 kW fall short and a twin is run beside it.
func BenchmarkTooWeak(b *testing.B) {
	y := waterville(b)
	runs := 0
	for b.Loop() {
		smallHouse().Run(y.hours[runs%len(y.hours)], y.site, Steadily(quantity.Celsius(18)))
		runs++
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(runs*len(y.hours[0].Air)), "ns/place-hour")
}

// BenchmarkGround runs the open ground through the same.
func BenchmarkGround(b *testing.B) {
	y := waterville(b)
	runs := 0
	for b.Loop() {
		UsualGround().Run(y.hours[runs%len(y.hours)], y.site, Off())
		runs++
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(runs*len(y.hours[0].Air)), "ns/place-hour")
}
