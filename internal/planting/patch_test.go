package planting

import (
	"bytes"
	"context"
	"math"
	"reflect"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"eyeup/civil"
	"eyeup/internal/exchange"
	"eyeup/internal/garden"
	"eyeup/internal/highs"
	"eyeup/internal/report"
	"eyeup/internal/testkit"
	"eyeup/odds"
	"eyeup/outlook"
	"eyeup/patch"
	"eyeup/quantity"
	"eyeup/solve"
)

var inJanuary = civil.MustOn(2027, time.January, 12)

// invented opens the invented garden without its wishes for the patch, then applies change.
func invented(t *testing.T, change func(*garden.Garden)) *garden.Garden {
	t.Helper()
	g, err := garden.OpenDemo(inJanuary)
	if err != nil {
		t.Fatal(err)
	}
	g.Garden.Patch = nil
	if change != nil {
		change(g)
	}
	return g
}

func planted(t *testing.T, g *garden.Garden) *PatchAnswer {
	t.Helper()
	a, err := List(g, context.Background(), PatchQuestion{Today: inJanuary, Solver: solve.Plain})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// narrowed is the invented garden with a smaller patch, wishes, a mix and a newcomer.
func narrowed(g *garden.Garden) {
	for i := range g.Places {
		if g.Places[i].Sort == exchange.Ground {
			g.Places[i].Bench = 38
		}
	}
	g.Garden.Patch = &exchange.Patch{
		Kinds: []string{"dahlia"}, Low: 85 * quantity.Centimetre, Tall: 115 * quantity.Centimetre, Width: 1.35, Length: 6,
		Varieties: []exchange.PatchVariety{
			{Name: "Gable Red", Kind: "dahlia", Wish: patch.Must, Least: 8},
			{Name: "Second Hay", Kind: "dahlia", Wish: patch.Could, Least: 3},
			{Name: "Moth Hour", Kind: "dahlia", Wish: patch.Could},
			{Name: "Newcomer", Kind: "dahlia", Wish: patch.Must, New: &exchange.NewVariety{Plant: 5, Bought: 3, Timing: "early", Colour: "#f4efe4", Height: 1}},
		},
		Mixes: []patch.Mix{{Kind: "dahlia", By: patch.Timing, Slack: 0.02, Want: []patch.Share{{Name: "late", Of: 0.2}, {Name: "early", Of: 0.4}}}},
	}
}

// readable reports lines that are too wide and words that growers do not use.
func readable(t *testing.T, a *PatchAnswer) string {
	t.Helper()
	var out bytes.Buffer
	a.Print(&out, quantity.US)
	for line := range strings.SplitSeq(out.String(), "\n") {
		if utf8.RuneCountInString(line) > report.PageWidth {
			t.Errorf("%d columns: %s", utf8.RuneCountInString(line), line)
		}
	}
	for _, word := range []string{"optim", "solver", "infeasib", "objective", "constraint", "NaN", "Inf", "%!"} {
		if strings.Contains(out.String(), word) {
			t.Errorf("it says %q", word)
		}
	}
	return out.String()
}

// TestChoiceOfTheInventedGarden takes the garden's own wishes. New varieties get places, must-haves lose
// none, and varieties that could go lose theirs before those that are liked lose many.
func TestChoiceOfTheInventedGarden(t *testing.T) {
	g, err := garden.OpenDemo(inJanuary)
	if err != nil {
		t.Fatal(err)
	}
	a := planted(t, g)
	testkit.Holds(t, "patch", a)
	if said := readable(t, a); !strings.Contains(said, "makes way completely") {
		t.Error(said)
	}
	lost := map[patch.Wish]int{}
	for _, l := range a.List {
		lost[l.Wish] += max(0, l.Wanted-l.Places)
		if strings.Contains("Rafter Light, Tinder Pail, Owl Scullery", l.Variety) && l.Places == 0 {
			t.Errorf("%s finds no room", l.Variety)
		}
	}
	if a.Planted != 232 || lost[patch.Must] != 0 || lost[patch.Could] < 20 || lost[patch.Would] > 4 {
		t.Errorf("%d planted; lost of musts, liked, others: %v", a.Planted, lost)
	}
	if a.Proof.Gap > 0.5 {
		t.Errorf("%+v", a.Proof)
	}
}

func TestPlantingListOfTheInventedGarden(t *testing.T) {
	a := planted(t, invented(t, nil))
	testkit.Holds(t, "patch", a)
	if said := readable(t, a); !strings.Contains(said, "Every wish fits") {
		t.Error(said)
	}
	if !a.Proof.Proved || a.Proof.Gap != 0 || len(a.Short) != 0 || len(a.NotListed) != 0 {
		t.Errorf("%+v, short %v, not listed %v", a.Proof, a.Short, a.NotListed)
	}
	for _, l := range a.List {
		if l.Places != l.Wanted {
			t.Errorf("%+v", l)
		}
	}
}

func TestPlantingListOfANarrowPatch(t *testing.T) {
	g := invented(t, narrowed)
	a := planted(t, g)
	testkit.Holds(t, "patch", a)
	said := readable(t, a)
	used, newcomer := 0.0, false
	for _, l := range a.List {
		used += float64(l.Places) * 0.45 * 0.45 // the spacing of its ground
		switch {
		case l.Variety == "Newcomer":
			newcomer = l.Places == 5
		case l.Variety == "Gable Red" && l.Places < 8:
			t.Errorf("a must has %d places, less than its least", l.Places)
		case l.Places < l.Wanted && !strings.Contains(said, l.Variety+" "+"lost") && !strings.Contains(said, l.Variety+" makes way"):
			t.Errorf("it is not said why %s lost places", l.Variety)
		}
	}
	if !newcomer || used > 38+1e-9 || math.Abs(used-a.UsedM2) > 0.01 {
		t.Errorf("newcomer %v; %v m² used, it says %v", newcomer, used, a.UsedM2)
	}
	if len(a.Short) != 1 || a.Short[0].Variety != "Newcomer" || a.Short[0].Plants != 2 {
		t.Errorf("short: %v", a.Short)
	}
	inRows := 0
	for _, r := range a.Rows {
		for _, part := range r.Parts {
			inRows += part.Count
		}
	}
	if inRows != a.Planted {
		t.Errorf("%d plants in rows, %d listed", inRows, a.Planted)
	}
	if again := planted(t, invented(t, narrowed)); !reflect.DeepEqual(a, again) && !sameButForUnknown(a, again) {
		t.Error("the same question has two answers")
	}
}

// A new variety without a wish counts as "would like".
func TestPlantingNewcomerWithoutAWish(t *testing.T) {
	a := planted(t, invented(t, func(g *garden.Garden) { narrowed(g); g.Garden.Patch.Varieties[3].Wish = "" }))
	if last := a.List[len(a.List)-1]; last.Variety != "Newcomer" || last.Wish != patch.Would {
		t.Errorf("got %+v", last)
	}
}

// sameButForUnknown compares answers as JSON, where NaN (not known) equals NaN.
func sameButForUnknown(a, b *PatchAnswer) bool {
	var one, two bytes.Buffer
	return report.WriteJSON(&one, a) == nil && report.WriteJSON(&two, b) == nil && one.String() == two.String()
}

// One in ten divisions of a dahlia never shoots (common practice: 5 to 15 %). Numbers that can't be
// predicted stay unknown.
func TestPlantsInHandShoot(t *testing.T) {
	g := invented(t, nil)
	book, err := bookOf(g.Stock, inJanuary)
	if err != nil {
		t.Fatal(err)
	}
	at := inJanuary.AddDays(60)
	hand, _, err := stockInHand(g, book, inJanuary, at)
	if err != nil {
		t.Fatal(err)
	}
	o, err := outlook.Reckon(outlook.Question{Book: book, Today: inJanuary, At: at, Stores: stores(g), Kinds: g.Kind})
	if err != nil {
		t.Fatal(err)
	}
	told := 0
	for _, v := range o.Varieties {
		h := hand[varietyKey{v.Kind, v.Name}]
		if v.Why != "" {
			if !math.IsNaN(h.plants.Low) || h.why == "" {
				t.Errorf("%s: %+v though it can't be predicted", v.Name, h)
			}
			continue
		}
		if told++; v.Kind == "dahlia" && math.Abs(h.plants.Middle-0.9*v.Good.Middle) > 1e-9 {
			t.Errorf("%s: %v plants of %v good divisions", v.Name, h.plants.Middle, v.Good.Middle)
		}
	}
	if told < 30 {
		t.Errorf("only %d varieties are predicted", told)
	}
}

func TestPlantingListsRefused(t *testing.T) {
	for says, change := range map[string]func(*garden.Garden){
		"is Gable Red meant":         func(g *garden.Garden) { g.Garden.Patch.Varieties[0].Name = "Gabel Red" },
		"is in stock":                func(g *garden.Garden) { g.Garden.Patch.Varieties[3].Name = "Gable Red" },
		"several places":             func(g *garden.Garden) { g.Places = append(g.Places, g.Places[len(g.Places)-1]) },
		"no open ground":             func(g *garden.Garden) { g.Garden.Patch.Place = "nowhere" },
		"at least 40 but at most 12": func(g *garden.Garden) { g.Garden.Patch.Varieties[0].Least = 40 },
		"too wide for a bed":         func(g *garden.Garden) { g.Garden.Patch.Width = 0.3 },
	} {
		g := invented(t, func(g *garden.Garden) { narrowed(g); change(g) })
		_, err := List(g, context.Background(), PatchQuestion{Today: inJanuary, Solver: solve.Plain})
		if err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want %q, got %v", says, err)
		}
	}
}

// The full solver and the list made without it agree: neither is better than the other's bound, and the
// list is no further from the best than its gap.
func TestPlantingProvedByTheSolver(t *testing.T) {
	if testing.Short() {
		t.Skip("the solver takes seconds to compile")
	}
	engine, err := highs.Open(context.Background(), "")
	if err != nil {
		t.Fatal(err)
	}
	defer engine.Close()
	for _, n := range []int{3, 12, 40} {
		b := manyVarieties(n)
		b.Varieties[0].Hand = odds.Exactly(math.NaN())
		p, err := b.Programme()
		if err != nil {
			t.Fatal(err)
		}
		best, err := engine.Solve(context.Background(), p, solve.Limits{Apart: 0.1}, nil)
		if err != nil {
			t.Fatal(err)
		}
		l, err := patch.Make(context.Background(), b, nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		if best.State != solve.Proved || best.Objective < l.Proof.Bound-1e-6 || l.Proof.Places < best.Bound-1e-6 || l.Proof.Places-best.Objective > l.Proof.Gap+1e-6 {
			t.Errorf("%d varieties: %+v and %v from %v, %v can't both hold", n, l.Proof, best.Objective, best.Bound, best.State)
		}
		if l.Proof.Places-best.Objective > 0.5 {
			t.Errorf("%d varieties: the list counts for %v, the best for %v", n, l.Proof.Places, best.Objective)
		}
	}
}
