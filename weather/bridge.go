package weather

import (
	"fmt"

	"eyeup/civil"
)

// longestBridge is the longest gap, in days, that is interpolated. Our choice: about as long
// as weather persists.
const longestBridge = 3

// bridged is a record with its short gaps interpolated.
type bridged struct {
	from  civil.Date
	days  []Day
	drawn []bool // day i has an interpolated extreme
}

// bridge interpolates every gap of up to three days linearly. A day belongs to a gap if its
// low or high is missing, or the two are reversed. A measured extreme is kept if it does not
// contradict the interpolated one.
func bridge(r *Record) *bridged {
	b := &bridged{from: r.From, days: make([]Day, len(r.Days)), drawn: make([]bool, len(r.Days))}
	copy(b.days, r.Days)
	for i := 0; i < len(b.days); i++ {
		if r.Days[i].HasExtremes() {
			continue
		}
		first := i
		for i < len(b.days) && !r.Days[i].HasExtremes() {
			i++
		}
		if first > 0 && i < len(b.days) && i-first <= longestBridge {
			b.draw(first, i)
		}
	}
	return b
}

// draw fills days first to next-1 from the days on either side.
func (b *bridged) draw(first, next int) {
	before, after := b.days[first-1], b.days[next]
	steps := float64(next - first + 1)
	for i := first; i < next; i++ {
		share := float64(i-first+1) / steps
		day := b.days[i]
		low := before.Low.Between(after.Low, share)
		high := before.High.Between(after.High, share)
		switch {
		case day.Low.IsKnown() && !day.High.IsKnown() && !high.Below(day.Low):
			low = day.Low
		case day.High.IsKnown() && !day.Low.IsKnown() && !day.High.Below(low):
			high = day.High
		}
		b.days[i].Low, b.days[i].High = low, high
		b.drawn[i] = true
	}
}

// why describes the gap that contains day i, which has no extremes.
func (b *bridged) why(i int) string {
	first, last := i, i
	for first > 0 && !b.days[first-1].HasExtremes() {
		first--
	}
	for last+1 < len(b.days) && !b.days[last+1].HasExtremes() {
		last++
	}
	from := b.from.AddDays(civil.Days(first))
	if first == 0 || last == len(b.days)-1 {
		return fmt.Sprintf("low and high are not both known from %s to %s, at the edge of the record",
			from, b.from.AddDays(civil.Days(last)))
	}
	return fmt.Sprintf("low and high are not both known for %d days from %s; at most %d in a row are interpolated",
		last-first+1, from, longestBridge)
}
