package sheet

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"

	"eyeup/civil"
)

var head = Head{Garden: "Tamsel Hollow", Today: day, Paper: A4, Notes: []string{"By the plan that is usual."}, Cautions: []string{"Knives: cut away from yourself."}}

// TestListsSayAll reads back what was put into each list, its cautions and its page numbers.
func TestListsSayAll(t *testing.T) {
	lists := map[string]func(io.Writer) (Told, error){
		"FCXEN Tallow Bell 14 clumps 28 no. 1 nursery pot warm room 2 cubic feet Week of 12 Apr 2027": func(w io.Writer) (Told, error) {
			return Potting(head, []PottingSession{{Week: day, Aside: "2 cubic feet", Lines: []PottingLine{{"4", "FCXEN", "Tallow Bell", "#f3ead3", "14 clumps", 28, "no. 1 nursery pot", "warm room"}}}}).Write(w)
		},
		"cellar FCXEN Tallow Bell vermiculite 14 clumps firm wrinkled soft lost": func(w io.Writer) (Told, error) {
			return Round(head, []RoundCrate{{"cellar", "4", []RoundLot{{"FCXEN", "Tallow Bell", "#f3ead3", "clumps", "vermiculite", 14}}}}).Write(w)
		},
		"potting mix 26 ft³ 13 bags 17.00 221.00 22 Mar In all 221.00": func(w io.Writer) (Told, error) {
			return Shopping(head, []ShoppingLine{{"potting mix", "26 ft³", "13 bags", "17.00", "221.00", "22 Mar"}}, "In all 221.00").Write(w)
		},
		"Tallow Bell dahlia 120 cm 28 2 31 May Row by row 20 Tallow Bell": func(w io.Writer) (Told, error) {
			return Planting(w, head, []PlantingLine{{"Tallow Bell", "dahlia", "#f3ead3", "120 cm", 28, 2, "31 May"}},
				[]PatchRow{{[]PatchPart{{"Tallow Bell", "#f3ead3", 20}}, 24}}, "Rows of 5 m.")
		},
		"Tallow Bell dahlia 14 clumps 8 2 4 long stems as it stands": func(w io.Writer) (Told, error) {
			return Giving(head, []GivingLine{{"Tallow Bell", "dahlia", "#f3ead3", "14 clumps", "8", "2", "4", "long stems"}}, "as it stands").Write(w)
		},
		"FCXEN Tallow Bell cream white, 120 cm 28 true to name": func(w io.Writer) (Told, error) {
			return Tags(head, []TagLine{{"FCXEN", "Tallow Bell", "#f3ead3", "120 cm", 28}}).Write(w)
		},
		"start 28 dahlia warm room Tallow Bell 2.5 hours in all Week of 12 Apr 2027": func(w io.Writer) (Told, error) {
			return Jobs(head, []WeekJob{{day, "start 28 dahlia", "warm room", []string{"Tallow Bell"}, 2.5, ""}}).Write(w)
		},
	}
	for want, write := range lists {
		var pdf bytes.Buffer
		told, err := write(&pdf)
		if err != nil || told.Pages != 1 {
			t.Errorf("%s: %d pages, %v", want, told.Pages, err)
			continue
		}
		said := strings.Join(strings.Fields(textOf(t, pdf.Bytes())), " ")
		for _, word := range strings.Fields(want + " Tamsel Hollow By the plan cut away page 1 of 1") {
			if !strings.Contains(said, word) {
				t.Errorf("%q is not in: %s", word, said)
			}
		}
	}
}

// TestEmptyLists say that there is nothing, and are a page all the same.
func TestEmptyLists(t *testing.T) {
	for what, write := range map[string]func(io.Writer) (Told, error){
		"Nothing more is to be started": func(w io.Writer) (Told, error) { return Potting(head, nil).Write(w) },
		"Nothing is in a store":         func(w io.Writer) (Told, error) { return Round(head, nil).Write(w) },
		"Nothing needs to be bought":    func(w io.Writer) (Told, error) { return Shopping(head, nil, "").Write(w) },
		"Nothing is to be planted":      func(w io.Writer) (Told, error) { return Planting(w, head, nil, nil, "") },
		"Nothing is over":               func(w io.Writer) (Told, error) { return Giving(head, nil, "").Write(w) },
		"No lot is to be tagged":        func(w io.Writer) (Told, error) { return Tags(head, nil).Write(w) },
		"Nothing is due":                func(w io.Writer) (Told, error) { return Jobs(head, nil).Write(w) },
	} {
		var pdf bytes.Buffer
		if _, err := write(&pdf); err != nil || !strings.Contains(textOf(t, pdf.Bytes()), what) {
			t.Errorf("%s: %v", what, err)
		}
	}
}

// TestLongList turns pages, repeats its heads, and stays within every page.
func TestLongList(t *testing.T) {
	var crates []RoundCrate
	for i := range 200 {
		crates = append(crates, RoundCrate{"cellar", fmt.Sprint(i + 1), []RoundLot{{"FCXEN", fmt.Sprintf("Name%d with %s", i, strings.Repeat("more words ", i%7)), "#f3ead3", "clumps", "vermiculite", i}}})
	}
	for _, size := range []Size{A4, Letter} {
		h := head
		h.Paper = size
		var pdf bytes.Buffer
		told, err := Round(h, crates).Write(&pdf)
		if err != nil {
			t.Fatal(err)
		}
		heads, rows := 0, 0
		for _, b := range boxesOf(t, pdf.Bytes()) {
			if b.left < edge-1 || b.right > size.Width-edge+1 || b.top < edge-2 || b.bottom > size.Height-edge+2 {
				t.Errorf("%q leaves page %d: %+v", b.word, b.page, b)
			}
			if b.word == "wrinkled" {
				heads++
			}
			if strings.HasPrefix(b.word, "Name") {
				rows++
			}
		}
		if heads != told.Pages || rows != 200 {
			t.Errorf("%d heads on %d pages, %d rows", heads, told.Pages, rows)
		}
	}
}

// TestCards names every crate and lot, and refuses what does not go.
func TestCards(t *testing.T) {
	need(t, "pdftoppm", "zbarimg")
	l := layout(t, "a4:2x4")
	lots := []CardLot{{"FCXEN", "Tallow Bell", "#f3ead3", "14 clumps, vermiculite"}, {"3Y282", "Kiln Brick", "", "2 clumps"}}
	var pdf bytes.Buffer
	if _, err := Cards(&pdf, l, []Card{{"104", "cellar", lots}}, true, day); err != nil {
		t.Fatal(err)
	}
	said := strings.Join(strings.Fields(textOf(t, pdf.Bytes())), " ")
	for _, want := range []string{"104", "cellar", "Tallow Bell", "FCXEN", "14 clumps", "Kiln Brick", "3Y282"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not in: %s", want, said)
		}
	}
	if got := scanned(t, pdf.Bytes(), 150); !slices.Equal(got, []string{"3Y282", "FCXEN"}) {
		t.Errorf("read %v", got)
	}
	for want, cards := range map[string][]Card{
		"no crates to print cards": nil, "crate 9: 9 lots do not fit": {{"9", "cellar", make([]CardLot, 9)}},
	} {
		if _, err := Cards(io.Discard, l, cards, false, day); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want %q, got: %v", want, err)
		}
	}
	if _, err := Cards(io.Discard, layout(t, "a4:3x8"), []Card{{"1", "cellar", lots}}, false, day); err == nil {
		t.Error("a card too small was taken")
	}
}

// TestHoursThatNobodyKnowsAreNotNought lists a job of unknown length: no sum is told of its week.
func TestHoursThatNobodyKnowsAreNotNought(t *testing.T) {
	day := civil.MustOn(2027, 1, 11)
	for hours, want := range map[float64]string{0: "", 2.5: "2.5 hours in all"} {
		li := Jobs(Head{}, []WeekJob{{Week: day, What: "go through the crates", Where: "cellar", Hours: hours}})
		if got := li.Groups[0].Aside; got != want {
			t.Errorf("of %g hours %q is told, not %q", hours, got, want)
		}
	}
}
