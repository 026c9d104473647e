package sources

import (
	"slices"
	"strings"
	"testing"

	"eyeup/internal/exchange"
)

// TestBasisNamesTheLogger checks that only a place with a logger names its file.
func TestBasisNamesTheLogger(t *testing.T) {
	g := Basis{Assumed: []string{steadyMonth}}
	g.addLogger(exchange.Place{Name: "cellar"})
	if len(g.Records) != 0 || !slices.Equal(g.Assumed, []string{steadyMonth}) {
		t.Errorf("without a logger: %+v", g)
	}
	g.addLogger(exchange.Place{Name: "cellar", LogFile: "cellar.csv"})
	if len(g.Records) != 1 || !strings.Contains(g.Records[0].Says, "cellar.csv") || !strings.HasPrefix(g.Assumed[0], "On days that the logger did not record") {
		t.Errorf("with a logger: %+v", g)
	}
}

// TestKeysAreEscaped makes keys of place names with spaces and special characters.
func TestKeysAreEscaped(t *testing.T) {
	for want, parts := range map[string][]string{"heat": {"heat"}, "night-warm%20room": {"night", "warm room"}, "night-a%22%3Cb%3E%23": {"night", `a"<b>#`}} {
		if got := Key(parts...); got != want {
			t.Errorf("%q makes %q, want %q", parts, got, want)
		}
	}
}
