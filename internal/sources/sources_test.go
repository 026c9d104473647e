package sources

import (
	"slices"
	"strings"
	"testing"

	"eyeup/internal/exchange"
)

// TestGroundsNameTheLogger tells a steady place that has a logger from one that has none.
func TestGroundsNameTheLogger(t *testing.T) {
	g := Basis{Assumed: []string{steadyMonth}}
	g.addLogger(exchange.Place{Name: "cellar"})
	if len(g.Records) != 0 || !slices.Equal(g.Assumed, []string{steadyMonth}) {
		t.Errorf("without a logger: %+v", g)
	}
	g.addLogger(exchange.Place{Name: "cellar", LogFile: "cellar.csv"})
	if len(g.Records) != 1 || !strings.Contains(g.Records[0].Says, "cellar.csv") || !strings.HasPrefix(g.Assumed[0], "On days that the logger tells nothing of") {
		t.Errorf("with a logger: %+v", g)
	}
}

// TestGroundsKeysStandInAddresses puts keys together of places that anyone may name.
func TestGroundsKeysStandInAddresses(t *testing.T) {
	for want, parts := range map[string][]string{"heat": {"heat"}, "night-warm%20room": {"night", "warm room"}, "night-a%22%3Cb%3E%23": {"night", `a"<b>#`}} {
		if got := Key(parts...); got != want {
			t.Errorf("%q makes %q, want %q", parts, got, want)
		}
	}
}
