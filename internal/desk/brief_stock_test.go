package desk

import (
	"bytes"
	"encoding/json"
	"slices"
	"testing"
)

// TestCratesOfALotAreOneLot spreads lots of the invented garden over several crates, with what
// is wanted told once: its season is the same.
func TestCratesOfALotAreOneLot(t *testing.T) {
	g, err := OpenDemo(provedOn)
	if err != nil {
		t.Fatal(err)
	}
	g.Members = g.Members[:4]
	whole := workedOutOf(t, g)
	var spread int
	for i := len(g.Stock) - 1; i >= 0; i -= 3 {
		if g.Stock[i].Count < 4 || g.Stock[i].Code == "" {
			continue
		}
		other := g.Stock[i]
		other.Crate, other.Plant, other.Reserve = "another", 0, 0
		other.Count /= 2
		g.Stock[i].Count -= other.Count
		g.Stock = slices.Insert(g.Stock, i+1, other)
		spread++
	}
	if spread < 5 {
		t.Fatalf("only %d lots stand in two crates", spread)
	}
	if other := workedOutOf(t, g); !bytes.Equal(whole, other) {
		t.Errorf("with %d lots in two crates each another season comes out", spread)
	}
}

func workedOutOf(t *testing.T, g *Garden) []byte {
	t.Helper()
	a, err := Season(g, provedOn)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(a)
	if err != nil {
		t.Fatal(err)
	}
	return text
}
