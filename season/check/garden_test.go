package check

import (
	"io/fs"
	"maps"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"eyeup/civil"
	"eyeup/internal/demo"
	"eyeup/internal/garden"
	"eyeup/season"
	"eyeup/stock"
)

// TestPlansOfOtherGardensHold replays the plans of the example garden in twelve years, with
// its stock, room and risk changed.
func TestPlansOfOtherGardensHold(t *testing.T) {
	if testing.Short() {
		t.Skip("left out: takes some seconds")
	}
	for name, change := range map[string]func(b *season.Brief){
		"four times as many wanted, so that cuttings are struck": func(b *season.Brief) {
			for i := range b.Given.Stock {
				b.Given.Stock[i].Plant *= 4
			}
		},
		"a third of the room, hands to be paid": func(b *season.Brief) {
			for i := range b.Given.Places {
				b.Given.Places[i].Room /= 3
				b.Given.Places[i].Lit /= 3
			}
			b.Given.Prices.Hand = season.Price{Amount: 18, Known: true}
			b.Given.HoursPerWeek = 1
		},
		"more risk, fewer years that fit, no prices": func(b *season.Brief) {
			b.Asked.FrostRisk, b.Asked.Fits = 0.25, 0.6
			b.Given.Prices = season.Prices{Currency: "EUR"}
		},
	} {
		t.Run(name, func(t *testing.T) {
			b := fewYears(exampleBrief(t))
			b.Given.Stock, b.Given.Places = slices.Clone(b.Given.Stock), slices.Clone(b.Given.Places)
			change(&b)
			hold(t, b, plansOf(t, b))
		})
	}
}

// TestPlansWithSmallPotsHold replays plans of a garden with so little room that it pays to
// begin in small pots: some are potted up on the way, and some never.
func TestPlansWithSmallPotsHold(t *testing.T) {
	b := fewYears(exampleBrief(t))
	b.Given.Places, b.Given.Prices.Pots = slices.Clone(b.Given.Places), maps.Clone(b.Given.Prices.Pots)
	b.Given.Prices.Pots["square4half"] = season.Price{Amount: 0.3, Known: true}
	for i, p := range b.Given.Places {
		if p.Sort != season.Ground {
			b.Given.Places[i].Room, b.Given.Places[i].Lit = p.Room/3, p.Lit/3
		}
	}
	plans := plansOf(t, b)
	ends := map[string]bool{}
	for _, p := range plans {
		for _, batch := range p.Batches {
			if strings.HasSuffix(batch.Starts[0].Route, ", in small pots first") {
				ends[batch.Container] = true
			}
		}
	}
	if !ends["no1"] || !ends["square4half"] {
		t.Errorf("what begins in small pots ends in %v", ends)
	}
	hold(t, b, plans)
}

// southern is the invented garden at the same latitude in the south, its months turned
// by half a year.
func southern(t *testing.T) fs.FS {
	t.Helper()
	folder := fstest.MapFS{}
	for _, name := range []string{"garden.toml", "stock.csv"} {
		data, err := fs.ReadFile(demo.Garden(), name)
		if err != nil {
			t.Fatal(err)
		}
		folder[name] = &fstest.MapFile{Data: data}
	}
	var lines []string
	for line := range strings.Lines(string(folder["garden.toml"].Data)) {
		line = strings.Replace(line, "latitude  = 44.2", "latitude  = -44.2", 1)
		if before, list, is := strings.Cut(line, "["); is && strings.Count(list, ",") == 11 {
			months := strings.Split(strings.TrimRight(list, "]\n"), ", ")
			line = before + "[" + strings.Join(append(months[6:], months[:6]...), ", ") + "]\n"
		}
		lines = append(lines, line)
	}
	folder["garden.toml"].Data = []byte(strings.Join(lines, ""))
	return folder
}

func TestPlansOfTheSouthHold(t *testing.T) {
	if testing.Short() {
		t.Skip("left out: takes some seconds")
	}
	g, err := garden.Open(southern(t), "south")
	if err != nil {
		t.Fatal(err)
	}
	b := fewYears(g.Brief(civil.MustOn(2027, 5, 17)))
	if b.Given.Span.From != civil.MustOn(2027, 3, 1) {
		t.Fatalf("a southern season that begins on %v", b.Given.Span.From)
	}
	hold(t, b, plansOf(t, b))
}

// TestLotInSeveralPlaces brings half of a lot to another store: each half is raised from where it
// waits, and a plan that says otherwise does not hold.
func TestLotInSeveralPlaces(t *testing.T) {
	b := fewYears(exampleBrief(t))
	b.Given.Stock, b.Given.Places = slices.Clone(b.Given.Stock), slices.Clone(b.Given.Places)
	other := b.Given.Places[0]
	other.Name = "shed"
	b.Given.Places = append(b.Given.Places, other)
	at := slices.IndexFunc(b.Given.Stock, func(h stock.Holding) bool { return h.Code != "" && h.Form == stock.Clump && h.Count > 9 })
	h := &b.Given.Stock[at]
	twin := *h
	twin.Place, twin.Count, twin.Plant, twin.Reserve = "shed", 4, 3, 0
	h.Count, h.Plant, h.Reserve = h.Count-4, 4, 1
	b.Given.Stock = append(b.Given.Stock, twin)
	plans := plansOf(t, b)
	hold(t, b, plans)
	from := map[string]int{}
	for i := range plans[0].Batches {
		if one := &plans[0].Batches[i]; one.Code == twin.Code && one.How == string(season.Whole) {
			from[one.Place] += one.Count
			one.Place = "nowhere"
		}
	}
	if from["shed"] != 3 || from[b.Given.Places[0].Name] != 5 {
		t.Errorf("raised %v, of 3 wanted from the shed and 5 from the cellar", from)
	}
	if report := Plan(b, plans[0]); len(report.Differences) == 0 {
		t.Error("a plan that raises a lot from nowhere holds")
	}
}
