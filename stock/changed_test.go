package stock_test

import (
	"fmt"
	"testing"

	"eyeup/stock"
)

// TestSinceRounds moves two out and one in again after a round, which starts the count
// anew, and throws out what a round never looked at.
func TestSinceRounds(t *testing.T) {
	s := &story{t: t, file: "since rounds", book: stock.New(), ids: map[string]stock.ID{}}
	for i, line := range []string{
		`2026-11-02 A: taken in {"variety":"Pale Heron","kind":"dahlia","form":"clump","count":9,"place":"cellar","crate":"1"}`,
		`2026-11-02 B: taken in {"variety":"Plum Ferry","kind":"dahlia","form":"clump","count":5,"place":"cellar","crate":"1"}`,
		`2026-12-01 C: moved {"lot":"@A","count":1,"to":{"crate":"2"}}`,
		`2026-12-13 D: round {"lot":"@A","crate":"1","whole":true,"firm":8}`,
		`2026-12-20 E: moved {"lot":"@A","crate":"1","count":2,"to":{"crate":"2"}}`,
		`2026-12-21 F: moved {"lot":"@A","crate":"2","count":1,"to":{"crate":"1"}}`,
		`2026-12-22 G: destroyed {"lot":"@B","count":1}`,
	} {
		s.line = i + 1
		s.play(line)
	}
	s.end()
	var told []string
	for _, c := range s.book.SinceRounds(stock.Spot{Place: "cellar", Crate: "1"}) {
		told = append(told, fmt.Sprintf("%s %s %s %+d", c.On, c.Variety, c.Kind, c.By))
	}
	want := []string{"2026-11-02 Plum Ferry taken in +5", "2026-12-20 Pale Heron moved -2", "2026-12-21 Pale Heron moved +1", "2026-12-22 Plum Ferry destroyed -1"}
	if fmt.Sprint(told) != fmt.Sprint(want) {
		t.Errorf("told %q, want %q", told, want)
	}
}
