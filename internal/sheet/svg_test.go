package sheet

import (
	"bytes"
	"strings"
	"testing"

	"eyeup/civil"
	"eyeup/internal/picture"
	"eyeup/odds"
	"eyeup/season"
)

// plan is a small plan with a picture.
func plan() *season.Plan {
	out := civil.MustOn(2027, 5, 31)
	when := civil.When{Early: out, Middle: out, Late: out}
	stays := []season.Stay{{Place: "warm room", From: day, To: day.AddDays(21), AreaM2: 1}, {Place: "patch", From: out, To: out.AddDays(120), AreaM2: 9}}
	weeks := func(used, room float64) []season.PlaceWeek {
		return []season.PlaceWeek{{Week: day, UsedM2: used, RoomM2: room}, {Week: day.AddDays(7), UsedM2: used, RoomM2: room}}
	}
	return &season.Plan{
		Name: "usual for the trade", GainWeeks: odds.Exactly(2), FirstFlower: when, PlantOutFrom: out, Years: 30,
		Batches: []season.BatchPlan{{ID: "FCXEN", Kind: "dahlia", Variety: "Tallow Bell", Colour: "#f3ead3", Count: 28, Stays: stays,
			Starts: []season.Start{{Week: day, Count: 28, Route: "warm room"}}, Dates: season.Dates{Start: day, PlantOut: when, FirstFlower: when}}},
		Places: []season.PlacePlan{{Place: "warm room", Sort: "room", Weeks: weeks(1, 4)}, {Place: "patch", Sort: "ground", Weeks: weeks(9, 90)}},
	}
}

// TestSeasonPage draws the season's picture, element by element, and writes the words of
// the picture and the figures beside it.
func TestSeasonPage(t *testing.T) {
	svg := picture.Draw(picture.Season{Garden: "Tamsel Hollow", Plan: plan(), Frost: []season.FrostWeek{{Week: day, Share: 0.5}}})
	page := SeasonPage{
		Plan: "usual for the trade", Says: "Warm till up, then bright and cool.", Picture: svg, Facts: [][2]string{{"first flower", "19 Jul"}},
		Batches: []SeasonBatch{{"dahlia, late, 10 sorts", "12 Apr", "31 May", "23 Jul (12 Jul to 1 Aug)", "72"}}, Next: []string{"12 Apr: start 28 dahlia"},
	}
	var pdf bytes.Buffer
	told, err := Season(&pdf, head, page)
	if err != nil || told.Pages != 1 {
		t.Fatalf("%d pages, %v", told.Pages, err)
	}
	said := strings.Join(strings.Fields(textOf(t, pdf.Bytes())), " ")
	for _, want := range []string{"How full the benches are", "warm room", "28 dahlia", "19 Jul", "dahlia, late, 10 sorts", "start 28 dahlia"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not in: %s", want, said)
		}
	}
}

// TestManyGroups goes on overleaf where groups do not go beside the picture.
func TestManyGroups(t *testing.T) {
	page := SeasonPage{Picture: picture.Draw(picture.Season{Plan: plan()})}
	for range 60 {
		page.Batches = append(page.Batches, SeasonBatch{"dahlia", "12 Apr", "31 May", "23 Jul", "7"})
	}
	var pdf bytes.Buffer
	told, err := Season(&pdf, head, page)
	if err != nil || told.Pages < 2 {
		t.Errorf("%d pages, %v", told.Pages, err)
	}
}

// TestPictureRefused refuses what it would draw wrongly.
func TestPictureRefused(t *testing.T) {
	for svg, want := range map[string]string{
		`<svg width="10" height="10"><ellipse/></svg>`:                                     "ellipse",
		`<svg width="10" height="10"><path fill="#000000" d="M0 0 A1 1 0 0 0 1 1"/></svg>`: "path",
		`<svg width="10" height="10"><path fill="#000000" d="M0"/></svg>`:                  "path",
		`<svg><rect/></svg>`:  "does not give its size",
		`<svg width="10" hei`: "can't be read",
		`not a picture`:       "does not give its size",
	} {
		if _, err := Season(&bytes.Buffer{}, head, SeasonPage{Picture: []byte(svg)}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: want %q, got: %v", svg, want, err)
		}
	}
}

// TestPictureColours compares what paper shows with what the picture asks: at half its
// size, a red field from 10 to 30 across and 20 to 25 down, and a circle round 60, 70.
func TestPictureColours(t *testing.T) {
	need(t, "pdftoppm")
	p := newPaper("test", Size{100, 100}, day)
	p.page()
	size := p.picture([]byte(`<svg width="200" height="160"><style>.red{fill:#c02020}@media(x){.red{fill:#000000}}</style>`+
		`<rect class="red" x="20" y="40" width="40" height="10"/><circle class="red" cx="120" cy="140" r="10"/></svg>`), 0, 0, 100, 100)
	if (size != Size{100, 80}) {
		t.Errorf("drawn as %v", size)
	}
	var pdf bytes.Buffer
	if _, err := p.finish(&pdf); err != nil {
		t.Fatal(err)
	}
	stem := strings.TrimSuffix(file(t, pdf.Bytes()), ".pdf")
	tool(t, nil, "pdftoppm", "-png", "-singlefile", "-r", "25.4", stem+".pdf", stem) // a pixel is a millimetre
	page := pixels(t, stem+".png")
	for at, red := range map[[2]int]bool{
		{11, 22}: true, {28, 22}: true, {20, 21}: true, {20, 23}: true, {60, 70}: true, {63, 70}: true, {60, 67}: true,
		{7, 22}: false, {32, 22}: false, {20, 17}: false, {20, 27}: false, {60, 77}: false, {67, 70}: false, {22, 11}: false,
	} {
		r, g, _, _ := page.At(at[0], at[1]).RGBA()
		if got := r>>8 == 0xc0 && g>>8 == 0x20; got != red || !red && g>>8 != 0xff {
			t.Errorf("at %v red is %x, green %x", at, r>>8, g>>8)
		}
	}
}

func BenchmarkSeasonPage(b *testing.B) {
	page := SeasonPage{Plan: "usual", Picture: picture.Draw(picture.Season{Plan: plan()})}
	for b.Loop() {
		if _, err := Season(&bytes.Buffer{}, head, page); err != nil {
			b.Fatal(err)
		}
	}
}
