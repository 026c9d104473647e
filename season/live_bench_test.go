package season

import "testing"

// BenchmarkLive leads the plants of every way through its years once more.
func BenchmarkLive(b *testing.B) {
	m := makerOf(b, waterville(b))
	var all []*outcome
	for _, one := range m.batches {
		all = append(all, m.options(one, Levels{0, 0, 4, 0})...)
	}
	base := make([]float64, len(m.ends))
	for b.Loop() {
		for _, o := range all {
			live(o.life, o.option, base, m.ends)
		}
	}
}
