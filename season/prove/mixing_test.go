package prove

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// TestSharesOfAnEvenGame plays small games whose shares can be reckoned by hand: whoever plays
// them makes the other's choices worth the same.
func TestSharesOfAnEvenGame(t *testing.T) {
	for _, game := range []struct {
		name   string
		worth  [][]float64
		shares []float64
	}{
		{"matching pennies", [][]float64{{1, -1}, {-1, 1}}, []float64{0.5, 0.5}},
		{"3p = p + 4(1-p)", [][]float64{{3, 1}, {0, 4}}, []float64{2.0 / 3, 1.0 / 3}},
		{"rock, paper, scissors", [][]float64{{0, -1, 1}, {1, 0, -1}, {-1, 1, 0}}, []float64{1.0 / 3, 1.0 / 3, 1.0 / 3}},
		{"one is better throughout", [][]float64{{5, 6}, {1, 2}}, []float64{1, 0}},
	} {
		d := &mixingGame{duals: make([]int, len(game.worth)), settings: make([]*node, len(game.worth[0])), worth: game.worth}
		for k, got := range d.play() {
			if math.Abs(got-game.shares[k]) > 0.1 {
				t.Errorf("%s: share %d is %.3f, want %.3f", game.name, k, got, game.shares[k])
			}
		}
	}
}

// TestSharesAddUp plays games drawn by chance: the shares are all of what is played, and bound the
// worst setting as well as even ones do, or nearly.
func TestSharesAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows, settings := rapid.IntRange(1, 5).Draw(t, "rows"), rapid.IntRange(1, 5).Draw(t, "settings")
		d := &mixingGame{duals: make([]int, rows), settings: make([]*node, settings)}
		for range rows {
			d.worth = append(d.worth, rapid.SliceOfN(rapid.Float64Range(-100, 100), settings, settings).Draw(t, "worth"))
		}
		shares, sum := d.play(), 0.0
		for _, share := range shares {
			sum += share
		}
		if math.Abs(sum-1) > 1e-9 {
			t.Fatalf("shares %v come to %v", shares, sum)
		}
		even := make([]float64, rows)
		for k := range even {
			even[k] = 1 / float64(rows)
		}
		if played, evenly := d.least(shares), d.least(even); played < evenly-10 { // of 200
			t.Fatalf("the shares %v bound the worst setting by %v, even ones by %v", shares, played, evenly)
		}
	})
}

// least is what the worst setting is bounded by at some shares.
func (d *mixingGame) least(shares []float64) float64 {
	least := math.Inf(1)
	for j := range d.settings {
		sum := 0.0
		for k, share := range shares {
			sum += share * d.worth[k][j]
		}
		least = math.Min(least, sum)
	}
	return least
}
