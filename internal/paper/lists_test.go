package paper

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"eyeup/civil"
	"eyeup/internal/garden"
	"eyeup/internal/plans"
	"eyeup/internal/report"
	"eyeup/internal/sheet"
	"eyeup/internal/stockbook"
	"eyeup/internal/testkit"
	"eyeup/odds"
	"eyeup/quantity"
	"eyeup/season"
	"eyeup/stock"
)

// paperDay is today in these tests.
var paperDay = civil.MustOn(2027, time.April, 5)

// demoGarden is the invented garden, opened once.
var demoGarden = sync.OnceValues(func() (*garden.Garden, error) { return garden.OpenDemo(paperDay) })

func opened(t testing.TB) *garden.Garden {
	t.Helper()
	g, err := demoGarden()
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// paperText is the text of a PDF, read by another program.
func paperText(t testing.TB, pdf []byte) string {
	t.Helper()
	if _, err := exec.LookPath("pdftotext"); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("pdftotext is not installed")
		}
		t.Skip("left out: pdftotext is not installed")
	}
	name := filepath.Join(t.TempDir(), "paper.pdf")
	if err := os.WriteFile(name, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("pdftotext", "-layout", name, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// TestEveryList writes every list of the invented garden and looks for its varieties, places and cautions.
func TestEveryList(t *testing.T) {
	g := opened(t)
	worked, plan, err := plans.Planned(g, nil, "", paperDay)
	if err != nil {
		t.Fatal(err)
	}
	for list, want := range map[string][]string{
		"potting":  {"Tallow Bell", "FCXEN", "no. 1 nursery pot", "Legionella", "Knives"},
		"round":    {"Tallow Bell", "vermiculite", "14 clumps", "51 lb"},
		"shopping": {"potting mix", "bags of 2 ft³", "51 lb"},
		"planting": {"Tallow Bell", "Row by row", "Rows of"},
		"giving":   {"Tallow Bell", "14 clumps", "sick"},
		"tags":     {"Tallow Bell", "cream white", "true to"},
		"season":   {"usual for the trade", "How full the benches are", "first flower"},
		"week":     {"Week of 5 Apr 2027", "ground-fault"},
	} {
		q := ListQuestion{List: list, Weeks: 2, Row: 5, Bag: 2 * quantity.CubicFoot, Units: g.System}
		q.SetPaper("")
		var pdf bytes.Buffer
		l := &lister{ListQuestion: q, garden: g, today: paperDay}
		if list != "round" && list != "giving" {
			l.worked, l.plan = worked, plan
		}
		a, err := l.write(&pdf)
		if err != nil {
			t.Errorf("%s: %v", list, err)
			continue
		}
		a.File = list + ".pdf"
		testkit.Holds(t, "write lists", a)
		text := paperText(t, pdf.Bytes())
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("%s: %q is not in:\n%s", list, w, text)
			}
		}
		if !strings.Contains(text, "made up") && list != "round" && list != "giving" {
			t.Errorf("%s does not say that the weather is made up", list)
		}
	}
	if _, err := List(g, ListQuestion{List: "wishes"}, paperDay, io.Discard); err == nil || !strings.Contains(err.Error(), "giving, planting, potting") {
		t.Errorf("a list that does not exist: %v", err)
	}
	if _, err := List(g, ListQuestion{List: "tags", Plan: "cheapest"}, paperDay, io.Discard); err == nil || !strings.Contains(err.Error(), "no added heat") {
		t.Errorf("a plan that does not exist: %v", err)
	}
}

// TestBagsByHand compares shopping lines with sums done by hand.
//
// 733 litres of mix at 8.50 USD a cubic foot of 28.3168 L, in bags of 2 cubic feet, 56.634 L:
// 733/56.634 = 12.94, so 13 bags at 17.00, 221.00. To be sure, 906/56.634 = 15.998,
// so 16. In bales of 2 cubic feet that swell 1.8 times, 101.94 L:
// 733/101.94 = 7.19, so 8 at 30.60, 244.80. Pots: 357 at 0.55 are 196.35.
func TestBagsByHand(t *testing.T) {
	g := opened(t)
	mix := season.Need{What: "potting mix", Unit: "L", Amount: odds.Amount{Low: 520, Middle: 733, High: 906}, Cost: 220.03}
	pots := season.Need{What: "no. 1 nursery pot", Unit: "each", Amount: odds.Exactly(357), Cost: 196.35}
	unpriced := season.Need{What: "vermiculite or other packing", Unit: "L", Amount: odds.Amount{Low: 200, Middle: 300, High: 400}}
	for _, c := range []struct {
		need             season.Need
		bale             bool
		get, price, cost string
	}{
		{mix, false, "13 bags of 2 ft³; 16 to be sure", "17.00", "221.00"},
		{mix, true, "8 bags of 2 ft³; 9 to be sure", "30.60", "244.80"},
		{pots, false, "357", "0.55", "196.35"},
		{unpriced, false, "6 bags of 2 ft³; 8 to be sure", "", ""},
	} {
		l := &lister{ListQuestion: ListQuestion{Bag: 2 * quantity.CubicFoot, Bale: c.bale, Units: quantity.US}, garden: g}
		line, _, err := l.shoppingLine(c.need)
		if err != nil || !strings.HasPrefix(line.Get, c.get) || line.Price != c.price || line.Cost != c.cost {
			t.Errorf("%s: get %q at %s, %s in all (%v); want %q at %s, %s", c.need.What, line.Get, line.Price, line.Cost, err, c.get, c.price, c.cost)
		}
	}
}

// TestPatchRowsByHand puts 20, 5 and 3 plants of two kinds into rows of 5 m. At 0.5 m a row has ten
// places. Another kind begins a row of its own.
func TestPatchRowsByHand(t *testing.T) {
	all := []outgoing{
		{Variety: stock.Variety{Name: "A", Kind: "dahlia"}, count: 20, spacing: 0.5},
		{Variety: stock.Variety{Name: "B", Kind: "dahlia"}, count: 5, spacing: 0.5},
		{Variety: stock.Variety{Name: "C", Kind: "tomato"}, count: 3, spacing: 0.8},
	}
	got := fmt.Sprint(patchRows(all, 5))
	want := "[{[{A  10}] 10} {[{A  10}] 10} {[{B  5}] 10} {[{C  3}] 6}]"
	if got != want {
		t.Errorf("rows %s, want %s", got, want)
	}
	if rows := patchRows(all, 0.3); len(rows) != 28 {
		t.Errorf("%d rows, want 28: a row that is shorter than the spacing holds one plant", len(rows))
	}
}

// TestCratesInOrder sorts crates by their numbers.
func TestCratesInOrder(t *testing.T) {
	for _, pair := range [][2]string{{"2", "10"}, {"", "1"}, {"A1", "A10"}, {"A2", "B1"}, {"9", "A1"}, {"top", "top 2"}} {
		if compareCrates(pair[0], pair[1]) >= 0 || compareCrates(pair[1], pair[0]) <= 0 {
			t.Errorf("%q should stand before %q", pair[0], pair[1])
		}
	}
}

// TestGivingByHand counts what is left over: 14 clumps less 8 for the patch and 2 in reserve.
func TestGivingByHand(t *testing.T) {
	v := stock.Variety{Name: "Tallow Bell", Kind: "dahlia"}
	lines := givingLines([]stock.Holding{
		{Variety: v, Form: stock.Clump, Count: 9, Plant: 8, Reserve: 2}, {Variety: v, Form: stock.Clump, Count: 5},
		{Variety: stock.Variety{Name: "B"}, Form: stock.Clump, Count: 3, Plant: 3}, {Variety: stock.Variety{Name: "C"}, Form: stock.Seed, Count: 4},
	})
	if len(lines) != 1 || lines[0].Over != "4" || lines[0].Have != "14 clumps" {
		t.Errorf("%+v", lines)
	}
}

// TestCountedOn subtracts what is wanted from what is expected: 20 good ones (12 to 31), less 8 for the
// patch and 2 in reserve, leave 10 (2 to 21). A variety with nothing left at even odds is not listed.
func TestCountedOn(t *testing.T) {
	v := stock.Variety{Name: "Tallow Bell", Kind: "dahlia"}
	lines := countedOn(&stockbook.OutlookAnswer{Varieties: []stockbook.OutlookVariety{
		{Variety: "Tallow Bell", Kind: "dahlia", Clumps: 6, Good: odds.Amount{Low: 12, Middle: 20, High: 31}, Wanted: 10},
		{Variety: "B", Kind: "dahlia", Good: odds.Amount{Low: 1, Middle: 3, High: 9}, Wanted: 3},
		{Variety: "Gone", Kind: "dahlia", Good: odds.Exactly(9)},
	}}, []stock.Holding{{Variety: v, Form: stock.Clump, Count: 6, Plant: 8, Reserve: 2}, {Variety: stock.Variety{Name: "B", Kind: "dahlia"}, Form: stock.Clump, Count: 3, Plant: 3}})
	if len(lines) != 1 || lines[0].Over != "10 (2 to 21)" || lines[0].Have != "6 clumps" {
		t.Errorf("%+v", lines)
	}
}

// TestLabelsOf chooses lots by codes typed in several ways, by each individual, and all. It refuses codes
// that no lot has.
func TestLabelsOf(t *testing.T) {
	g := opened(t)
	ask := func(q LabelsQuestion) (*report.WrittenAnswer, string, error) {
		var pdf bytes.Buffer
		q.Layout, _ = sheet.ParseLayout("a4:3x8")
		a, err := Labels(g.Garden, q, paperDay, &pdf)
		return a, paperText(t, pdf.Bytes()), err
	}
	a, text, err := ask(LabelsQuestion{Lots: []string{"fcx en", "MMM88"}})
	if err != nil || a.Count != 2 || !strings.Contains(text, "Tallow Bell") || !strings.Contains(text, "Sun Parlour") || !strings.Contains(text, "cellar, crate 1,") {
		t.Errorf("%+v, %v: %s", a, err, text)
	}
	if a, _, err := ask(LabelsQuestion{}); err != nil || a.Count != 44 {
		t.Errorf("all: %+v, %v", a, err)
	}
	if a, text, err := ask(LabelsQuestion{Lots: []string{"FCXEN"}, Each: true}); err != nil || a.Count != 14 || !strings.Contains(text, "14 of 14") {
		t.Errorf("each: %+v, %v", a, err)
	}
	for typed, want := range map[string]string{"FCXEM": "FCXEM", "MRMM5": "no lot MRMM5", "": "code"} {
		var pdf bytes.Buffer
		l, _ := sheet.ParseLayout("a4:3x8")
		if _, err := Labels(g.Garden, LabelsQuestion{Lots: []string{typed}, Layout: l}, paperDay, &pdf); err == nil || !strings.Contains(err.Error(), want) || pdf.Len() > 0 {
			t.Errorf("%q: %v", typed, err)
		}
	}
}

// TestSessionLabels prints a label for exactly the pots that are started in the week.
func TestSessionLabels(t *testing.T) {
	g := opened(t)
	_, plan, err := plans.Planned(g, nil, "", paperDay)
	if err != nil {
		t.Fatal(err)
	}
	week := plan.Batches[0].Starts[0].Week
	want := 0
	for _, b := range plan.Batches {
		for _, s := range b.Starts {
			if s.Week == week {
				want += s.Count
			}
		}
	}
	l, _ := sheet.ParseLayout("roll:62mm")
	a, err := SessionLabels(g, nil, "", week.AddDays(3), LabelsQuestion{Layout: l}, paperDay, io.Discard)
	if err != nil || a.Count != want || a.Pages != want {
		t.Errorf("%+v, %v; want %d", a, err, want)
	}
	if _, err := SessionLabels(g, nil, "", week.AddDays(-300), LabelsQuestion{Layout: l}, paperDay, io.Discard); err == nil || !strings.Contains(err.Error(), week.Short()) {
		t.Errorf("a week without starts: %v", err)
	}
}

// TestCalendarOfPlan checks that the calendar has an entry for every job, each with its own UID.
func TestCalendarOfPlan(t *testing.T) {
	g := opened(t)
	var b bytes.Buffer
	a, err := plans.CalendarOf(g, nil, "", paperDay, paperDay.UTC(), &b)
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]bool{}
	for _, line := range strings.Split(b.String(), "\r\n") {
		if uid, is := strings.CutPrefix(line, "UID:"); is {
			found[uid] = true
		}
	}
	if len(found) != a.Count || a.Count == 0 {
		t.Errorf("%d entries, %d names", a.Count, len(found))
	}
}

func BenchmarkSeasonList(b *testing.B) {
	g := opened(b)
	worked, plan, err := plans.Planned(g, nil, "", paperDay)
	if err != nil {
		b.Fatal(err)
	}
	q := ListQuestion{List: "season", Units: g.System}
	q.SetPaper("a4")
	for b.Loop() {
		l := &lister{ListQuestion: q, garden: g, today: paperDay, worked: worked, plan: plan}
		if _, err := l.season(io.Discard); err != nil {
			b.Fatal(err)
		}
	}
}
