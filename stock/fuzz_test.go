package stock

import (
	"fmt"
	"testing"
)

// FuzzAdd: whatever an entry says, a book that has seen some takes it or refuses it; it
// never panics, never has less than nothing, and a refusal leaves no trace.
func FuzzAdd(f *testing.F) {
	for _, seed := range [][2]string{
		{"taken in", `{"variety":"A","kind":"dahlia","form":"clump","count":3,"place":"cellar","code":"MRMM5"}`},
		{"moved", `{"lot":"@","count":2,"to":{"place":"glass","crate":"1","bed":"2"}}`},
		{"round", `{"lot":"@","whole":true,"firm":-1,"lost":9999999}`},
		{"divided", `{"from":"@","clumps":1,"good":10000001,"born":["@"]}`},
		{"mixed", `{"from":[{"lot":"@","all":true},{"lot":"@","count":1}],"to":{"place":"x"}}`},
		{"put right", `{"target":"01000000-0000-7000-8000-000000000001","nothing":true}`},
		{"put right", `{"target":"01000000-0000-7000-8000-000000000002","body":{"from":"@","clumps":5,"good":0}}`},
		{"named", `{"lot":"@","variety":"","reach":"all"}`},
		{"described", `{"what":"variety","name":"A","body":{"kind":"dahlia","name":"B","height":{"v":"x","u":"y"}}}`},
		{"sown", `{"from":"@","packets":-1,"count":1,"to":{}}`},
		{"lifted", `{"lot":"@","lost":3,"to":{"form":"shoe"}}`},
		{"set apart", `{"lot":"@","count":1,"why":"sick","to":{"row":"3"}}`},
	} {
		f.Add(seed[0], seed[1], 0)
	}
	f.Fuzz(func(t *testing.T, kind, body string, days int) {
		s := &scribe{t: t, book: New()}
		id := s.write("2026-11-02", "taken in", `{"variety":"Pale Heron","kind":"dahlia","form":"clump","count":9,"place":"cellar","crate":"1"}`)
		lot := LotID{id, 0}.String()
		s.write("2027-03-20", "divided", fmt.Sprintf(`{"from":%q,"clumps":2,"good":5,"doubtful":1,"sitting":"a"}`, lot))
		before := tellAll(s.book)
		canonical, err := Canonical([]byte(replaced(body, lot)))
		if err != nil {
			return
		}
		e := Entry{ID: ID{0: 2, 6: 0x70, 8: 0x80}, Kind: kind, Version: 1, On: season.AddDays(200), Body: canonical}
		if days%2 != 0 {
			e.On = season.AddDays(60)
		}
		if _, err := s.book.Add(e); err != nil {
			if tellAll(s.book) != before {
				t.Error("a refusal left a trace")
			}
			return
		}
		for _, n := range s.book.counts {
			if n < 0 {
				t.Error("less than nothing stands")
			}
		}
		after := tellAll(s.book)
		if again, err := Restore(s.book.Snapshot()); err != nil || tellAll(again) != after {
			t.Errorf("its snapshot says something else: %v", err)
		}
		s.book.TakeBack()
		if tellAll(s.book) != before {
			t.Error("taken back, it left a trace")
		}
	})
}

// replaced puts the lot in the place of every @.
func replaced(body, lot string) string {
	out := ""
	for _, r := range body {
		if r == '@' {
			out += lot
			continue
		}
		out += string(r)
	}
	return out
}
