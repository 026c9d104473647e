package stock_test

import (
	"fmt"
	"testing"

	"eyeup/stock"
)

// TestSteps starts two of three, sees one up and then all, sows, and plants out: what
// leaves a spot is not told twice, and what was not counted is all that stands there.
func TestSteps(t *testing.T) {
	s := &story{t: t, file: "steps", book: stock.New(), ids: map[string]stock.ID{}}
	for i, line := range []string{
		`2027-03-01 A: taken in {"variety":"Pale Heron","kind":"dahlia","form":"clump","count":3,"place":"cellar"}`,
		`2027-03-01 B: taken in {"variety":"Red Cellar","kind":"tomato","form":"seed","count":1,"place":"drawer"}`,
		`2027-03-29 C: started {"lot":"@A","count":2,"to":{"form":"pot","place":"warm room"}}`,
		`2027-04-10 D: up {"lot":"@A","form":"pot","count":1}`,
		`2027-04-12 E: up {"lot":"@A","form":"pot"}`,
		`2027-04-13 F: sown {"from":"@B","count":12,"to":{"form":"tray","place":"warm room"}}`,
		`2027-05-25 G: planted out {"lot":"@A","form":"pot","count":2,"to":{"place":"patch"}}`,
	} {
		s.line = i + 1
		s.play(line)
	}
	s.end()
	var told []string
	for _, one := range s.book.Steps() {
		told = append(told, fmt.Sprintf("%s %s %d", one.On, one.Kind, one.Count))
	}
	want := []string{"2027-03-29 started 2", "2027-04-10 up 1", "2027-04-12 up 2", "2027-04-13 sown 12", "2027-05-25 planted out 2"}
	if fmt.Sprint(told) != fmt.Sprint(want) {
		t.Errorf("told %q, want %q", told, want)
	}
	if down, err := s.book.Down("@B"); err == nil {
		t.Errorf("an unknown name has %d lots", len(down))
	}
	if down, err := s.book.Down(s.ids["B"].String() + "/0"); err != nil || len(down) != 2 {
		t.Errorf("of the packet came %d lots, itself among them; %v", len(down), err)
	}
}
