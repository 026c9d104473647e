package sun_test

import (
	"testing"
	"time"

	"eyeup/sun"
)

func BenchmarkPosition(b *testing.B) {
	at := time.Date(2027, 3, 20, 16, 0, 0, 0, time.UTC)
	for b.Loop() {
		sun.Position(golden, at)
	}
}

func BenchmarkHourShares(b *testing.B) {
	day := onDay(100)
	for b.Loop() {
		sun.HourShares(44, day)
	}
}

func BenchmarkRiseSet(b *testing.B) {
	day := onDay(100)
	for b.Loop() {
		if _, err := sun.RiseSet(golden, day, mountain); err != nil {
			b.Fatal(err)
		}
	}
}
