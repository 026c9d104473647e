//go:build unix

package desk

import (
	"syscall"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/season"
)

// BenchmarkChange answers one change after another in the invented garden, as a running
// program does: none was asked for before.
func BenchmarkChange(b *testing.B) {
	today := civil.MustOn(2027, time.January, 20)
	d, err := DemoDesk(today, today.UTC)
	if err != nil {
		b.Fatal(err)
	}
	defer d.Close()
	if _, err := d.Season(today); err != nil {
		b.Fatal(err)
	}
	lot, n := wanted(d.Garden())[0], 0
	for _, sort := range ofSorts {
		b.Run(sort, func(b *testing.B) {
			before := cpu()
			for b.Loop() {
				n++
				if _, err := d.SeasonWith(today, changes[sort](n, lot)); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64((cpu()-before).Milliseconds())/float64(b.N), "cpu-ms/op")
		})
	}
}

// cpu is the time that the processor has spent on this process; a busy machine does not
// lengthen it.
func cpu() time.Duration {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// BenchmarkFollow works out again the plan that is followed in the invented garden, its decisions
// held, out of what the season of the day has left.
func BenchmarkFollow(b *testing.B) {
	today := civil.MustOn(2027, time.January, 20)
	d, err := DemoDesk(today, today.UTC)
	if err != nil {
		b.Fatal(err)
	}
	defer d.Close()
	worked, err := d.Season(today)
	if err != nil {
		b.Fatal(err)
	}
	body, err := worked.Hold(season.AsEarly)
	if err != nil {
		b.Fatal(err)
	}
	write(b, d, "2027-01-20", "decided", string(body))
	g, follows := d.following()
	before := cpu()
	for b.Loop() {
		if _, err := follows.Follow(g, g.Brief(today)); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64((cpu()-before).Milliseconds())/float64(b.N), "cpu-ms/op")
}
