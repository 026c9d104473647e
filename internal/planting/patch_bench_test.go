package planting

import (
	"context"
	"fmt"
	"testing"

	"eyeup/internal/highs"
	"eyeup/odds"
	"eyeup/patch"
	"eyeup/quantity"
	"eyeup/solve"
	"eyeup/stock"
)

// manyVarieties is a brief of n varieties that together want a third more room than the patch has.
func manyVarieties(n int) *patch.Brief { return varietiesOf(7, n) }

func varietiesOf(seed uint64, n int) *patch.Brief {
	chance := odds.Stream(seed, "planting list")
	b := &patch.Brief{Low: 85 * quantity.Centimetre, Tall: 115 * quantity.Centimetre}
	total := 0
	for i := range n {
		v := patch.Variety{Variety: stock.Variety{
			Name: fmt.Sprintf("Trial %03d", i), Kind: "dahlia", Timing: []stock.Timing{stock.Early, stock.Mid, stock.Late}[chance.IntN(3)],
			Height: quantity.Length(0.6 + 0.8*chance.Float64()),
		}}
		v.Family = patch.Families()[chance.IntN(6)]
		v.Flower = []string{"ball", "decorative", "pompon", "cactus"}[chance.IntN(4)]
		v.Wish = patch.Wishes()[min(2, chance.IntN(5))]
		v.Plant = 3 + chance.IntN(10)
		v.Least = min(v.Plant, 1+chance.IntN(4))
		v.Reserve, v.Spacing = 2, quantity.Length(0.4+0.1*float64(chance.IntN(3)))
		v.Hand = odds.Exactly(float64(chance.IntN(30)))
		b.Varieties = append(b.Varieties, v)
		total += v.Plant
	}
	b.Room = quantity.Area(float64(total) * 0.25 / 1.35)
	b.Mixes = []patch.Mix{
		{Kind: "dahlia", By: patch.Colour, Slack: 0.03, Want: []patch.Share{{Name: "red", Of: 0.25}, {Name: "white", Of: 0.25}, {Name: "pink", Of: 0.2}}},
		{Kind: "dahlia", By: patch.Timing, Slack: 0.05, Want: []patch.Share{{Name: "early", Of: 0.5}, {Name: "late", Of: 0.2}}},
		{Kind: "dahlia", By: patch.Height, Slack: 0.05, Want: []patch.Share{{Name: "tall", Of: 0.3}}},
		{Kind: "dahlia", By: patch.Flower, Slack: 0.05, Want: []patch.Share{{Name: "ball", Of: 0.4}}},
	}
	return b
}

func benchPatch(b *testing.B, brief *patch.Brief, solver solve.Solver) {
	b.ResetTimer()
	for b.Loop() {
		l, err := patch.Make(context.Background(), brief, solver, nil)
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(l.Proof.Gap, "places-gap")
		b.ReportMetric(l.Proof.Places, "places")
	}
}

func BenchmarkPatch200(b *testing.B) {
	engine, err := highs.Open(context.Background(), b.TempDir())
	if err != nil {
		b.Fatal(err)
	}
	defer engine.Close()
	benchPatch(b, manyVarieties(200), engine.Solve)
}

func BenchmarkPatch200Plain(b *testing.B) { benchPatch(b, manyVarieties(200), solve.Plain) }
