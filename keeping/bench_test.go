package keeping

import "testing"

// BenchmarkOutlookOfALot is what one variety of an outlook costs: what is reckoned, three
// rounds folded in, and the share that comes through.
func BenchmarkOutlookOfALot(b *testing.B) {
	winter := append(spell(60, 8, .6), append(spell(60, 5, .5), spell(45, 7, .55)...)...)
	rounds := []Round{{Day: 30, Firm: 20}, {Day: 60, Firm: 18, Soft: 1}, {Day: 95, Firm: 16, Wrinkled: 2}}
	for b.Loop() {
		p, err := Reckoned(packed, winter)
		if err != nil {
			b.Fatal(err)
		}
		if p, err = p.OfVariety().After(packed, winter, rounds); err != nil {
			b.Fatal(err)
		}
		if _, err := p.Through(packed, winter, 95, 165); err != nil {
			b.Fatal(err)
		}
	}
}
